import type { PagePicture } from './drawn-sheet.ts';

const PLACE = 'print-run';

/**
 * Prints pages by the browser, each on paper of its own size. They are put into the page for as long as that takes: a browser
 * prints what is on the page, and not all print a frame by itself.
 */
export function printPages(pages: readonly PagePicture[]): void {
  layOut(pages);
  window.addEventListener('afterprint', clear, { once: true });
  window.print();
}

/** Puts the pages there for somebody who prints by the browser's own menu. Answers how to stop that. */
export function offerToPrint(pages: readonly PagePicture[]): () => void {
  const before = () => layOut(pages);
  window.addEventListener('beforeprint', before);
  window.addEventListener('afterprint', clear);
  return () => {
    window.removeEventListener('beforeprint', before);
    window.removeEventListener('afterprint', clear);
    clear();
  };
}

function layOut(pages: readonly PagePicture[]): void {
  if (pages.length === 0) return;
  clear();
  const place = document.createElement('div');
  place.id = PLACE;
  const sizes = [...new Set(pages.map(sizeOf))];
  const rules = sizes.map((size, index) => `@page paper-${index} { size: ${size}; margin: 0 }`);
  const style = document.createElement('style');
  style.textContent = ['@page { margin: 0 }', ...rules].join('\n');
  place.append(style);
  for (const page of pages) {
    const paper = document.createElement('div');
    paper.className = 'printed-page';
    paper.style.setProperty('page', `paper-${sizes.indexOf(sizeOf(page))}`);
    // The page's own drawing, whose words are escaped where it is made. The letters are those of the app.
    paper.innerHTML = page.svg.join('');
    place.append(paper);
  }
  document.body.append(place);
}

function clear(): void {
  document.getElementById(PLACE)?.remove();
}

function sizeOf({ width, height }: PagePicture): string {
  return [width, height].map((side) => `${side}mm`).join(' ');
}
