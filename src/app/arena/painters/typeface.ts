/** The letters of the arena: those of the sheets, as styles/typeface.css serves them. */
import inter from '../../../../assets/fonts/inter-screen-widths.json' with { type: 'json' };

type LetterWeight = 'regular' | 'bold';

const FONT_FAMILY = 'Inter, system-ui, "Segoe UI", Roboto, "Helvetica Neue", sans-serif';
/** Letters of labels and numbers in the arena, pixels. Nothing is set smaller. */
export const LETTERS = 13;
/** A sign that the table has not is taken to be this wide, in em. */
const UNKNOWN = 0.66;

/** The font for a canvas. `size` in pixels. */
export function font(weight: LetterWeight, size: number = LETTERS): string {
  return `${weight === 'bold' ? 700 : 400} ${size}px ${FONT_FAMILY}`;
}

function tableOf(runs: readonly (readonly number[])[]): ReadonlyMap<number, number> {
  return new Map(
    runs.flatMap(([first = 0, ...advances]) => advances.map((each, i) => [first + i, each / inter.em] as const)),
  );
}

const WIDTHS: Readonly<Record<LetterWeight, ReadonlyMap<number, number>>> = {
  regular: tableOf(inter.regular),
  bold: tableOf(inter.bold),
};

/** How wide a text is at a size, in the unit of the size; kerning, which makes it narrower, is left out. */
export function textWidth(text: string, weight: LetterWeight, size: number = LETTERS): number {
  let sum = 0;
  for (const sign of text) sum += WIDTHS[weight].get(sign.codePointAt(0) ?? 0) ?? UNKNOWN;
  return sum * size;
}

/** Whether both weights have come; until then a browser draws in a font of its own. */
export function haveLetters(): boolean {
  return document.fonts.check(font('regular')) && document.fonts.check(font('bold'));
}

/** Asks for both weights: a canvas does not load a font by itself before it draws with it. */
export function loadLetters(): void {
  for (const weight of ['regular', 'bold'] as const) void document.fonts.load(font(weight));
}
