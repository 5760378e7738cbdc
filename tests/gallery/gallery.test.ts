import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { OBSTACLE_KINDS } from '../../src/core/obstacles/obstacles.ts';
import { PIECE_KINDS } from '../../src/core/pieces/pieces.ts';
import { SHEETS } from '../../src/sheets/sheets.ts';
import { writeGallery } from './gallery.ts';

const folder = mkdtempSync(join(tmpdir(), 'gallery-'));
const gallery = writeGallery(folder);

afterAll(() => rmSync(folder, { recursive: true }));

describe('the gallery', () => {
  test('shows every obstacle, every piece and every sheet on both papers', () => {
    const groups = new Set(gallery.figures.map(({ section, group }) => `${section}: ${group}`));
    for (const { title } of OBSTACLE_KINDS) expect(groups).toContain(`Obstacles: ${title}`);
    for (const { title } of PIECE_KINDS) expect(groups).toContain(`Pieces: ${title}`);
    const titles = gallery.figures.map(({ title }) => title);
    for (const title of [...SHEETS.map((sheet) => sheet.title), 'Comparison', 'Change-over', 'Day']) {
      for (const paper of ['Letter', 'A4'])
        expect(titles.some((each) => each.startsWith(`${title}, ${paper}`))).toBe(true);
    }
  });

  test('shows every seed', () => {
    const names = readdirSync('seeds/starters').filter((name) => name.endsWith('.course.json'));
    const groups = gallery.figures.filter(({ section }) => section === 'Seeds').map(({ group }) => group);
    for (const name of names) {
      expect(groups.some((group) => group.startsWith(name.replace('.course.json', '')))).toBe(true);
    }
  });

  test('has something drawn in every picture', () => {
    expect(gallery.pictures.length).toBeGreaterThan(100);
    for (const name of gallery.pictures) {
      const text = readFileSync(join(folder, name), 'utf8');
      expect(text.match(/<(path|circle|text)\b/g)?.length ?? 0, name).toBeGreaterThan(0);
      expect(text, name).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test('says why where a value is refused, and draws every usual obstacle', () => {
    const refused = gallery.figures.filter(({ svg }) => svg === undefined);
    expect(refused.length).toBeGreaterThan(0);
    for (const figure of refused) {
      expect(figure.title).not.toBe('Usual');
      expect(figure.says.join(' ')).toMatch(/Refused: \S+ .*\.$/);
    }
  });

  test('links to pictures that exist', () => {
    const page = readFileSync(gallery.file, 'utf8');
    const links = [...page.matchAll(/<img src="([^"]+)"/g)].map(([, name = '']) => name);
    expect(links.length).toBe(gallery.pictures.length);
    for (const name of links) expect(existsSync(join(folder, name)), name).toBe(true);
  });
});
