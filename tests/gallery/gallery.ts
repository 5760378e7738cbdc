/** Writes the gallery: one page, one SVG file a picture. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Figure, figures } from './figures.ts';

export interface Gallery {
  /** The page. */
  readonly file: string;
  /** Names of the pictures beside it. */
  readonly pictures: readonly string[];
  readonly figures: readonly Figure[];
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

function slug(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

const STYLE = `
body { margin: 0; font: 15px/1.45 Inter, system-ui, sans-serif; color: #1d1f1c; background: #f3f2ee; }
header, section { padding: 0 2rem; max-width: 110rem; margin: 0 auto; }
h1 { font-size: 1.6rem; margin: 1.6rem 0 0.2rem; }
h2 { font-size: 1.3rem; margin: 2.4rem 0 0.4rem; border-top: 2px solid #1d1f1c; padding-top: 0.6rem; }
h3 { font-size: 1.05rem; margin: 1.6rem 0 0.5rem; }
nav a { margin-right: 1rem; color: inherit; }
.row { display: flex; flex-wrap: wrap; gap: 1rem; align-items: flex-start; }
figure { margin: 0; padding: 0.8rem; background: #fff; border: 1px solid #d6d4cc; max-width: 27rem; }
#obstacles figure, #pieces figure { max-width: 15rem; }
figure.refused { border-style: dashed; }
figure img { display: block; max-width: 100%; max-height: 46rem; }
figcaption { font-size: 0.85rem; margin-top: 0.5rem; }
figcaption strong { display: block; }
figcaption p { margin: 0.15rem 0; }
`;

function figureHtml(figure: Figure, picture: string | undefined): string {
  const says = figure.says.map((line) => `<p>${escaped(line)}</p>`).join('');
  const image =
    picture === undefined
      ? ''
      : `<img src="${picture}" alt="${escaped(`${figure.group}, ${figure.title}`)}" loading="lazy">`;
  const kind = picture === undefined ? ' class="refused"' : '';
  return `<figure${kind}>${image}<figcaption><strong>${escaped(figure.title)}</strong>${says}</figcaption></figure>`;
}

function unique<T>(list: readonly T[]): readonly T[] {
  return [...new Set(list)];
}

/** Replaces the folder. */
export function writeGallery(folder: string): Gallery {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const all = figures();
  const pictures = all.map((figure, index) => {
    if (figure.svg === undefined) return undefined;
    const name = `${String(index + 1).padStart(3, '0')}-${slug(`${figure.group} ${figure.title}`)}.svg`;
    writeFileSync(join(folder, name), figure.svg);
    return name;
  });
  const sections = unique(all.map(({ section }) => section));
  const body = sections.map((section) => {
    const groups = unique(all.filter((figure) => figure.section === section).map(({ group }) => group));
    const rows = groups.map((group) => {
      const shown = all.flatMap((figure, index) =>
        figure.section === section && figure.group === group ? [figureHtml(figure, pictures[index])] : [],
      );
      return `<h3>${escaped(group)}</h3><div class="row">${shown.join('\n')}</div>`;
    });
    return `<section id="${slug(section)}"><h2>${escaped(section)}</h2>${rows.join('\n')}</section>`;
  });
  const links = sections.map((section) => `<a href="#${slug(section)}">${escaped(section)}</a>`).join('');
  const head = `<header><h1>Polewright gallery</h1><p>Every seed, sheet, obstacle and piece, drawn by the functions that the tests run.</p><nav>${links}</nav></header>`;
  const file = join(folder, 'index.html');
  const page = `<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>Polewright gallery</title><style>${STYLE}</style></head><body>${head}${body.join('\n')}</body></html>\n`;
  writeFileSync(file, page);
  return { file, pictures: pictures.filter((name) => name !== undefined), figures: all };
}
