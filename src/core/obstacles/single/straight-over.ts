import type { Metres } from '../../measure/quantity.ts';
import { poseStation } from '../parts.ts';
import type { Passage } from '../passage.ts';

/** Along a piece's x axis at a walk, from `far` before its middle to as far behind it; and the same from its +x end. */
export function straightOver(piece: string, far: Metres, title: string): Passage[] {
  const along = (from: number, angle: number) => [
    poseStation(piece, { x: from, y: 0, angle }),
    poseStation(piece, { x: -from, y: 0, angle }),
  ];
  return [
    { id: 'forward', title, gaits: ['walk'], stations: along(-far, 0) },
    { id: 'return', title: `${title} from the other end`, gaits: ['walk'], stations: along(far, Math.PI) },
  ];
}
