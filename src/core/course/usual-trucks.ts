/** What trucks usually carry, and the poles of one by length. */
import { FOOT, feet, type Metres } from '../measure/quantity.ts';
import { barrelPiece } from '../pieces/barrel.ts';
import { bridgePiece } from '../pieces/bridge.ts';
import { gatePiece } from '../pieces/gate.ts';
import { mailboxPiece } from '../pieces/mailbox.ts';
import { markerPiece } from '../pieces/marker.ts';
import { plantPiece } from '../pieces/plant.ts';
import { polePiece } from '../pieces/pole.ts';
import { postPiece } from '../pieces/post.ts';
import { waterBoxPiece } from '../pieces/water-box.ts';
import type { Stock } from './course.ts';

/** So many poles of one length. */
export interface PoleCount {
  readonly length: Metres;
  readonly count: number;
}

/** Lines of poles alone, in the order given; a length of which there are none has no line. */
export function poleLines(poles: readonly PoleCount[]): readonly Stock[] {
  return poles
    .filter(({ count }) => count > 0)
    .map(({ length, count }) => {
      const size = Math.round((length / FOOT) * 100) / 100;
      return { id: `poles-${size}`, title: `Poles, ${size} ft`, kind: polePiece.id, values: { length }, count };
    });
}

/** Poles, longest first, and the rest of what a show's truck often carries. Counts are an estimate: every show has its own. */
export const SHOW_POLES: readonly PoleCount[] = [
  { length: feet(12), count: 16 },
  { length: feet(10), count: 8 },
  { length: feet(8), count: 12 },
];
export const SHOW_FURNITURE: readonly Stock[] = [
  { id: 'markers', title: 'Markers', kind: markerPiece.id, values: {}, count: 12 },
  { id: 'gate', title: 'Gate', kind: gatePiece.id, values: {}, count: 1 },
  { id: 'bridge', title: 'Bridge', kind: bridgePiece.id, values: {}, count: 1 },
  { id: 'barrels', title: 'Barrels', kind: barrelPiece.id, values: {}, count: 2 },
  { id: 'posts', title: 'Posts', kind: postPiece.id, values: {}, count: 6 },
  { id: 'plants', title: 'Plants', kind: plantPiece.id, values: {}, count: 8 },
  { id: 'water-box', title: 'Water box', kind: waterBoxPiece.id, values: {}, count: 1 },
  { id: 'mailbox', title: 'Mailbox', kind: mailboxPiece.id, values: {}, count: 1 },
];

/** What lies in many a yard at home. Counts are an estimate. */
export const HOME_POLES: readonly PoleCount[] = [
  { length: feet(12), count: 0 },
  { length: feet(10), count: 6 },
  { length: feet(8), count: 6 },
];
export const HOME_FURNITURE: readonly Stock[] = [
  { id: 'markers', title: 'Markers', kind: markerPiece.id, values: {}, count: 6 },
  { id: 'barrels', title: 'Barrels', kind: barrelPiece.id, values: {}, count: 2 },
];
