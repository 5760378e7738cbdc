import { describe, expect, test } from 'vitest';
import { buildObstacle } from '../../../../src/core/obstacles/build.ts';
import { freeObstacle, passageThrough } from '../../../../src/core/obstacles/custom/grouped.ts';
import { markerPiece as markerKind } from '../../../../src/core/pieces/marker.ts';
import { completeValues } from '../../../../src/core/pieces/params.ts';
import type { Piece } from '../../../../src/core/pieces/piece.ts';
import { polePiece } from '../../../../src/core/pieces/pole.ts';
import { compose, pose } from '../../../../src/core/plane/pose.ts';

function poleAt(id: string, x: number, y: number, angle: number): Piece {
  return { id, kind: 'pole', values: completeValues(polePiece.params), pose: pose(x, y, angle) };
}
const marker: Piece = { id: 'cone', kind: 'marker', values: completeValues(markerKind.params), pose: pose(0, 2) };
const upright = Math.PI / 2;

describe('a passage through loose poles', () => {
  const pieces = [poleAt('a', 0, 0, upright), poleAt('b', 1, 0, -upright), poleAt('c', 2, 0, upright), marker];

  test('crosses each in its middle, towards where it goes, however the pole lies', () => {
    const ways = (order: string[]) =>
      passageThrough(pieces, order)?.stations.map(
        (station) => station.kind === 'cross' && [station.piece, station.way],
      );
    // Riding along +x goes to the −y side of a pole that points up, and to the +y side of one that points down.
    expect(ways(['a', 'b', 'c'])).toEqual([
      ['a', -1],
      ['b', 1],
      ['c', -1],
    ]);
    expect(ways(['c', 'b', 'a'])).toEqual([
      ['c', 1],
      ['b', -1],
      ['a', 1],
    ]);
  });

  test('passes over what is no pole or is not there; nothing left is no passage', () => {
    expect(passageThrough(pieces, ['cone', 'gone', 'a'])?.stations).toHaveLength(1);
    expect(passageThrough(pieces, ['cone'])).toBeUndefined();
    expect(passageThrough(pieces, [])).toBeUndefined();
  });

  test.each([
    [0.6, 'walk'],
    [1.0, 'jog'],
    [1.9, 'lope'],
  ])('is likely meant for the gait that its poles are apart for: %s m, %s', (apart, gait) => {
    const two = [poleAt('a', 0, 0, upright), poleAt('b', apart, 0, upright)];
    expect(passageThrough(two, ['a', 'b'])?.gaits).toEqual([
      gait,
      ...['walk', 'jog', 'lope'].filter((g) => g !== gait),
    ]);
  });
});

describe('pieces gathered into an obstacle', () => {
  test('stay where they lie, are named by kind in the order given, and are held by nothing', () => {
    const fan = buildObstacle('fan-1', 'fan', {}, pose(20, 10, 0.4), -1);
    if ('why' in fan) throw new Error(fan.why);
    const lying = [...fan.pieces, marker].map((piece) => ({ piece, pose: compose(fan.pose, piece.pose) }));
    const own = freeObstacle('free-1', lying, 'My fan');
    expect(own).toMatchObject({ id: 'free-1', kind: 'free', name: 'My fan', values: {}, side: 1, constraints: [] });
    expect(own.pieces.map(({ id }) => id)).toEqual(['pole-1', 'pole-2', 'pole-3', 'marker-1']);
    own.pieces.forEach((piece, i) => {
      const there = compose(own.pose, piece.pose);
      expect(there.x).toBeCloseTo(lying[i]?.pose.x ?? Number.NaN, 12);
      expect(there.y).toBeCloseTo(lying[i]?.pose.y ?? Number.NaN, 12);
      expect(there.angle).toBeCloseTo(lying[i]?.pose.angle ?? Number.NaN, 12);
    });
    expect(own.passages.map(({ id, stations }) => [id, stations.length])).toEqual([
      ['forward', 3],
      ['return', 3],
    ]);
  });

  test('without a pole have no way; without a piece are a mistake', () => {
    expect(freeObstacle('free-1', [{ piece: marker, pose: marker.pose }], 'Cone').passages).toEqual([]);
    expect(() => freeObstacle('free-1', [], 'Nothing')).toThrow('free-1 needs at least one piece');
  });
});
