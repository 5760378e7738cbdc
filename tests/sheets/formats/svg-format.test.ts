import { XMLParser } from 'fast-xml-parser';
import * as fontkit from 'fontkit';
import { describe, expect, test } from 'vitest';
import { survey } from '../../../src/core/survey.ts';
import { svgFormat } from '../../../src/sheets/formats/svg-format.ts';
import { pattern } from '../../../src/sheets/pattern.ts';
import { sheetById } from '../../../src/sheets/sheets.ts';
import { SEEDS } from '../samples.ts';
import { LETTER, RESOURCES, UNWATCHED } from './resources.ts';

const novice = SEEDS['larkhollow-novice'];
if (novice === undefined) throw new Error('the novice starter is missing');
const job = { course: novice, sheets: [{ sheet: pattern, options: LETTER }], dpi: 300 } as const;

interface Parsed {
  readonly svg: Readonly<Record<string, unknown>> & { readonly style: string; readonly text: readonly unknown[] };
}

async function written(sheet = pattern): Promise<readonly { name: string; type: string; text: string }[]> {
  const files = await svgFormat.write({ ...job, sheets: [{ sheet, options: LETTER }] }, RESOURCES, UNWATCHED);
  if ('kind' in files) throw new Error(files.why);
  return files.map(({ name, type, bytes }) => ({ name, type, text: new TextDecoder().decode(bytes) }));
}

describe('a sheet as SVG', () => {
  test('is one file of good XML in millimetres, with all of its words', async () => {
    const [file, ...others] = await written();
    expect(others).toEqual([]);
    expect(file).toMatchObject({ name: 'saturday-novice-trail-pattern.svg', type: 'image/svg+xml' });
    const { svg } = new XMLParser({ ignoreAttributes: false }).parse(file?.text ?? '', true) as Parsed;
    const drawn = pattern.draw(survey(novice), LETTER);
    if (drawn.kind === 'too-big') throw new Error(drawn.why);
    const [page] = drawn.pages;
    expect(svg['@_width']).toBe(`${page.width}mm`);
    expect(svg['@_viewBox']).toBe(`0 0 ${page.width} ${page.height}`);
    expect(svg.text).toHaveLength(page.marks.filter(({ kind }) => kind === 'words').length);
  });

  test('carries its letters as fonts that can be read', async () => {
    const [file] = await written();
    const faces = [...(file?.text ?? '').matchAll(/base64,([A-Za-z0-9+/=]+)\)/g)].map(([, data = '']) => data);
    expect(faces).toHaveLength(2);
    for (const face of faces) {
      const font = fontkit.create(Buffer.from(face, 'base64'));
      if (!('hasGlyphForCodePoint' in font)) throw new Error('a collection of fonts');
      for (const sign of 'Aa09½′″°') expect(font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0), sign).toBe(true);
    }
  });

  test('of several pages is several files, numbered', async () => {
    const files = await written(sheetById('setout'));
    expect(files.length).toBeGreaterThan(1);
    expect(files.map(({ name }) => name)).toEqual(files.map((_, i) => `saturday-novice-trail-setout-${i + 1}.svg`));
  });

  test('is given up before the next sheet', async () => {
    const gone = AbortSignal.abort(new Error('given up'));
    await expect(svgFormat.write(job, RESOURCES, { ...UNWATCHED, signal: gone })).rejects.toThrow('given up');
  });
});
