import type { CoordinateSpace, Point } from './point.ts';
import type { Role } from './role.ts';

/**
 * The feature class of a mark. Inks are meanings, not colours: every output (screen, PDF, SVG) has its own table from
 * ink to style, so that a pattern is readable in black and white, and on the screen in both themes.
 */
export type Ink =
  | 'timber' // the body of a pole or plank
  | 'stripe' // the painted bands on a pole
  | 'marker'
  | 'metal' // gate, posts
  | 'barrel'
  | 'planting'
  | 'water'
  | 'rail' // the arena's wall
  | 'outline' // edge of anything solid
  | 'walk'
  | 'jog'
  | 'lope'
  | 'back'
  | 'side-pass'
  | 'turn'
  | 'work'
  | 'landing'
  | 'words'
  | 'faint' // help lines, grid
  | 'measure'; // tapes and their numbers

/** One thing to draw, in the units of its world. Every output draws marks and nothing else. */
export type Mark<W extends CoordinateSpace = 'ground'> = Shape<W> & {
  /** What it is to somebody who is read to; absent: part of the page's drawing. */
  readonly role?: Role;
};

type Shape<W extends CoordinateSpace> =
  | {
      readonly kind: 'line';
      readonly points: readonly Point<W>[];
      readonly ink: Ink;
      /** Stroke width in the lengths of the world; absent: a hairline. */
      readonly width?: number;
      /** Dash and gap lengths in the lengths of the world. */
      readonly dash?: readonly number[];
    }
  | { readonly kind: 'area'; readonly ring: readonly Point<W>[]; readonly ink: Ink }
  | {
      readonly kind: 'disc';
      readonly at: Point<W>;
      readonly radius: number;
      readonly ink: Ink;
      /** `rim` draws the edge only. */
      readonly fill: 'full' | 'rim';
    }
  | {
      readonly kind: 'words';
      readonly at: Point<W>;
      readonly text: string;
      /** Letter height (em) in the lengths of the world. */
      readonly size: number;
      readonly ink: Ink;
      readonly align: 'start' | 'middle' | 'end';
      readonly weight?: 'regular' | 'bold';
      /** Box on which the words stand, for numbers over a drawing. */
      readonly backing?: 'disc' | 'plate';
    };
