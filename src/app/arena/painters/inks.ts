import type { Ink } from '../../../core/plane/mark.ts';

/** The screen style of each ink, and of the few things that only the screen shows. */
export interface Theme {
  readonly inks: Readonly<Record<Ink, string>>;
  readonly ground: string;
  readonly beyond: string;
  readonly grid: string;
  readonly railSide: string;
  /** Numbers along the walls, on what is beyond them. */
  readonly ruler: string;
  /** What a thing throws on the ground, and the light and the dark side of a round one. They are laid over other colours. */
  readonly shadow: string;
  readonly shine: string;
  readonly shade: string;
  /** The marks of the harrow on the footing, laid over it. */
  readonly rake: string;
  readonly chosen: string;
  readonly pointed: string;
  readonly guide: string;
  readonly disc: string;
  readonly onDisc: string;
  readonly plate: string;
  readonly must: string;
  readonly should: string;
  readonly note: string;
  readonly horse: { readonly coat: string; readonly edge: string; readonly blanket: string; readonly saddle: string };
  /** The first and the second layout that the shown one is compared with. */
  readonly ghosts: readonly [string, string];
}

export const LIGHT: Theme = {
  inks: {
    timber: '#a8713a',
    stripe: '#fffdf6',
    marker: '#d4581a',
    metal: '#5b6670',
    barrel: '#2f5f86',
    planting: '#4e8a3e',
    water: '#6aa9c4',
    rail: '#7a5a36',
    outline: '#4a3a26',
    walk: '#8a5a00',
    jog: '#0d6a73',
    lope: '#7a2e63',
    back: '#8c2a1c',
    'side-pass': '#34508f',
    turn: '#34508f',
    work: '#4a4f55',
    landing: '#3b3a33',
    words: '#22302b',
    faint: '#9a8c6e',
    measure: '#1d5a4a',
  },
  ground: '#efe3c8',
  beyond: '#e2ddd0',
  grid: '#00000012',
  railSide: '#d3b88c',
  ruler: '#5a5a4c',
  shadow: '#3a28104d',
  shine: '#fffbef80',
  shade: '#3a281026',
  rake: '#8a6a340d',
  chosen: '#1d5a4a',
  pointed: '#e0a526',
  guide: '#b0206e',
  disc: '#22302b',
  onDisc: '#ffffff',
  plate: '#fbf6e9e6',
  must: '#a8321f',
  should: '#9a6a00',
  note: '#3d5c72',
  horse: { coat: '#a8713a', edge: '#46301a', blanket: '#1d5a4a', saddle: '#5e3c1e' },
  ghosts: ['#3a4aa8', '#84307f'],
};

export const DARK: Theme = {
  inks: {
    timber: '#c79558',
    stripe: '#f3ead6',
    marker: '#f07c3c',
    metal: '#9aa7b1',
    barrel: '#6ba0ca',
    planting: '#7fb86d',
    water: '#4f8ca8',
    rail: '#a17d51',
    outline: '#e6cda0',
    walk: '#f0b84d',
    jog: '#5fd0d8',
    lope: '#e59ad0',
    back: '#ff9c8a',
    'side-pass': '#a9bfff',
    turn: '#a9bfff',
    work: '#c5cbd1',
    landing: '#efe6d0',
    words: '#f1ebdd',
    faint: '#8d8063',
    measure: '#8fd8bf',
  },
  ground: '#4a4130',
  beyond: '#1b201d',
  grid: '#ffffff14',
  railSide: '#8d7048',
  ruler: '#aeb1a2',
  shadow: '#0b080380',
  shine: '#fff6dc4d',
  shade: '#1a100433',
  rake: '#f0dcae09',
  chosen: '#8fe0c4',
  pointed: '#ffd469',
  guide: '#ff8fc8',
  disc: '#f1ebdd',
  onDisc: '#1c231f',
  plate: '#2b2a20e6',
  must: '#ff8f7a',
  should: '#f3c14f',
  note: '#a8cbe3',
  horse: { coat: '#b88650', edge: '#1c1208', blanket: '#3f8f78', saddle: '#54361b' },
  ghosts: ['#b9c6ff', '#f0b4ea'],
};
