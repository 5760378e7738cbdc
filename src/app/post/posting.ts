/** What the Post stage shows and how it is to be printed. Nothing here belongs to the course. */
import { useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import { PAPERS, type PageOptions } from '../../sheets/sheet.ts';
import { linkBaseOf } from '../link/link-base.ts';
import { recalledText, rememberText } from '../remembered.ts';
import type { Shareable } from './export-verbs.ts';
import { steppedZoom, type Zoom } from './page-zoom.ts';

/** What is found again when the app is opened the next time. */
interface Remembered extends Pick<PageOptions, 'paper' | 'orientation'> {
  /** What is chosen of the sheets' own options: by sheet, then by option. */
  readonly chosen: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

export interface PostingState extends Remembered {
  /** The shown sheet, by id. */
  readonly sheet: string;
  /** The shown page, 0 first. The sheet may have fewer. */
  readonly page: number;
  readonly zoom: Zoom;
  /** How large the page is shown by that zoom: so many times its size on paper. */
  readonly factor: number;
  /** Dots in an inch, of pictures of dots. */
  readonly dpi: number;
  /** What is written and waits for a press to be shared. */
  readonly shareable: Shareable | null;
  /** The wanted scale of a sheet with a drawing; the largest that fits where there is none. */
  readonly scales: Readonly<Record<string, number>>;
}

/** The settings of the stage. */
export interface Posting {
  state(): PostingState;
  subscribe(listener: () => void): () => void;
  /** Shows a sheet from its first page. */
  showSheet(sheet: string): void;
  showPage(page: number): void;
  setZoom(zoom: Zoom): void;
  /** To the next larger of the usual zooms, or the next smaller. */
  stepZoom(by: 1 | -1): void;
  /** The page is shown so large. */
  noteFactor(factor: number): void;
  setDpi(dpi: number): void;
  keepShareable(shareable: Shareable | null): void;
  setPaper(paper: PageOptions['paper']): void;
  setOrientation(orientation: PageOptions['orientation']): void;
  /** Undefined: the largest that fits. */
  setScale(sheet: string, scale: number | undefined): void;
  /** Chooses something of a sheet's own option. */
  choose(sheet: string, option: string, choice: string): void;
}

/** Where the settings are kept between visits. */
interface Keeper {
  recall(): string | null;
  remember(text: string): void;
}

const USUAL: Remembered = { paper: 'letter', orientation: 'fit', chosen: {} };
const ORIENTATIONS: readonly PageOptions['orientation'][] = ['fit', 'portrait', 'landscape'];

/** How a sheet is to be drawn. */
export function pageOptionsOf({ paper, orientation, scales, chosen }: PostingState, sheet: string): PageOptions {
  const scale = scales[sheet];
  const own = chosen[sheet];
  const linkBase = linkBaseOf(globalThis.location);
  return {
    paper,
    orientation,
    ...(scale === undefined ? {} : { scale }),
    ...(own === undefined ? {} : { chosen: own }),
    ...(linkBase === undefined ? {} : { linkBase }),
  };
}

export function createPosting({ recall, remember }: Keeper): Posting {
  const store = createStore<PostingState>()(() => ({
    ...remembered(recall()),
    sheet: 'pattern',
    page: 0,
    zoom: 'page',
    factor: 1,
    dpi: 150,
    shareable: null,
    scales: {},
  }));
  const { getState: state, setState: change } = store;
  const keep = (part: Partial<Remembered>) => {
    change(part);
    const { paper, orientation, chosen } = state();
    remember(JSON.stringify({ paper, orientation, chosen }));
  };
  return {
    state,
    subscribe: (listener) => store.subscribe(() => listener()),
    showSheet: (sheet) => change({ sheet, page: 0 }),
    showPage: (page) => change({ page }),
    setZoom: (zoom) => change({ zoom }),
    stepZoom: (by) => change({ zoom: steppedZoom(state().factor, by) }),
    noteFactor: (factor) => change({ factor }),
    setDpi: (dpi) => change({ dpi }),
    keepShareable: (shareable) => change({ shareable }),
    setPaper: (paper) => keep({ paper }),
    setOrientation: (orientation) => keep({ orientation }),
    setScale(sheet, scale) {
      const { [sheet]: _, ...others } = state().scales;
      change({ scales: scale === undefined ? others : { ...others, [sheet]: scale } });
    },
    choose(sheet, option, choice) {
      const { chosen } = state();
      keep({ chosen: { ...chosen, [sheet]: { ...chosen[sheet], [option]: choice } } });
    },
  };
}

/** What a browser has kept, as far as it can be read: it may be of another version of the app. */
function remembered(text: string | null): Remembered {
  const kept = objectIn(text);
  const paper = PAPERS.find((each) => each === kept.paper) ?? USUAL.paper;
  const orientation = ORIENTATIONS.find((each) => each === kept.orientation) ?? USUAL.orientation;
  const sheets = Object.entries(isObject(kept.chosen) ? kept.chosen : {});
  const chosen = sheets.map(([sheet, own]) => [sheet, textsOf(own)] as const);
  return { paper, orientation, chosen: Object.fromEntries(chosen) };
}

function textsOf(value: unknown): Readonly<Record<string, string>> {
  const pairs = Object.entries(isObject(value) ? value : {});
  return Object.fromEntries(pairs.flatMap(([key, text]) => (typeof text === 'string' ? [[key, text]] : [])));
}

function objectIn(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const value: unknown = JSON.parse(text ?? '{}');
    return isObject(value) ? value : {};
  } catch {
    return {};
  }
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const KEY = 'post';

export const posting = createPosting({
  recall: () => recalledText(KEY),
  remember: (text) => rememberText(KEY, text),
});

export function usePostingState<Part>(pick: (state: PostingState) => Part): Part {
  return useSyncExternalStore(posting.subscribe, () => pick(posting.state()));
}
