/** All that stands beside something in the arena, over every starter, at six sizes of the picture and several zooms. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Camera, fitCamera, zoomCamera } from '../../../../src/app/arena/camera.ts';
import { type ArenaLabels, arenaLabels } from '../../../../src/app/arena/painters/arena-labels.ts';
import { badgeBoxes } from '../../../../src/app/arena/painters/badges.ts';
import { endBoxes } from '../../../../src/app/arena/painters/ends.ts';
import { wallBoxes, wayInBox } from '../../../../src/app/arena/painters/rail.ts';
import { rulerMarks } from '../../../../src/app/arena/painters/rulers.ts';
import { lineDots, pieceDots } from '../../../../src/app/arena/painters/samples.ts';
import { findingsOf } from '../../../../src/core/checks/checks.ts';
import { readCourse } from '../../../../src/core/files/read.ts';
import { type Bounds, boundsIntersect } from '../../../../src/core/plane/ring.ts';
import { type Survey, survey } from '../../../../src/core/survey.ts';

const SIZES = [
  { width: 800, height: 405 },
  { width: 800, height: 660 },
  { width: 500, height: 980 },
  { width: 390, height: 374 },
  { width: 540, height: 230 },
  { width: 683, height: 300 },
];
/** Numbers that lie on some of the line or of a pole, in all starters together: none but in the pictures of a phone. */
const MOST_COVERING = { phone: 5, larger: 0 } as const;
const ZOOMS = [1, 1.6, 3, 7];

const STARTERS = readdirSync('seeds/starters').map((file) => {
  const reading = readCourse(readFileSync(`seeds/starters/${file}`, 'utf8'));
  if (reading.kind === 'refused') throw new Error(reading.why);
  return { file, of: survey(reading.course) };
});

function isOver(a: Bounds, b: Bounds): boolean {
  return boundsIntersect(a, b, -0.01);
}

interface Seen {
  readonly labels: ArenaLabels;
  readonly badges: readonly Bounds[];
  readonly fixed: readonly Bounds[];
}

function seen(of: Survey, camera: Camera, size: (typeof SIZES)[number]): Seen {
  const { arena, unit } = of.course;
  const badges = badgeBoxes(findingsOf(of), camera);
  const labels = arenaLabels(of, { camera, size }, { badges, kept: [], hasLine: true });
  const rulers = rulerMarks(arena, unit, camera).map(({ box }) => box);
  return { labels, badges, fixed: [...wallBoxes(arena, camera), wayInBox(arena, camera), ...rulers] };
}

/** The boxes of names, numbers and words of changes. */
function wordBoxes({ labels, words }: ArenaLabels): readonly Bounds[] {
  return [...labels, ...words].map(({ box }) => box);
}

function isIn(box: Bounds, { x, y }: { readonly x: number; readonly y: number }): boolean {
  return x > box.minX && x < box.maxX && y > box.minY && y < box.maxY;
}

describe.each(SIZES)('in a picture of $width × $height', (size) => {
  test.each(ZOOMS)('at %d times the fitted size no label covers another, a badge, a wall or the edge', (zoom) => {
    const middle = { x: size.width / 2, y: size.height / 2 };
    for (const { file, of } of STARTERS) {
      const { labels, badges, fixed } = seen(of, zoomCamera(fitCamera(of.course.arena, size), zoom, middle), size);
      const boxes = wordBoxes(labels);
      const plates = labels.ends.flatMap(({ plate }) => plate ?? []);
      const taken = [...badges, ...fixed, ...endBoxes(labels.ends), ...labels.letters.map(({ box }) => box)];
      boxes.forEach((box, i) => {
        for (const other of [...boxes.slice(i + 1), ...taken]) expect(isOver(box, other), file).toBe(false);
        const isInside = box.minX >= 0 && box.minY >= 0 && box.maxX <= size.width && box.maxY <= size.height;
        expect(isInside, file).toBe(true);
      });
      for (const plate of plates) {
        for (const other of [...fixed, ...badges]) expect(isOver(plate, other), file).toBe(false);
      }
    }
  });

  test('in the fitted arena every obstacle of the go has its number, and words keep off line and poles', () => {
    let covering = 0;
    for (const { file, of } of STARTERS) {
      const camera = fitCamera(of.course.arena, size);
      const { labels } = seen(of, camera, size);
      const shown = new Set(labels.labels.map(({ content }) => content.obstacle));
      const missing = of.obstacles.filter(({ obstacle }) => of.numbers.has(obstacle.id) && !shown.has(obstacle.id));
      expect(missing, file).toEqual([]);
      const dots = [...lineDots(of, camera), ...pieceDots(of, camera)];
      const isCovering = ({ box }: { readonly box: Bounds }) => dots.some((dot) => isIn(box, dot));
      expect(labels.words.filter(isCovering), file).toEqual([]);
      covering += labels.labels.filter(isCovering).length;
    }
    // Of about eighty in each size these remain: the whole neighbourhood of an obstacle is line and poles.
    const isPhone = size.width < 600 && size.height < 400;
    expect(covering).toBeLessThanOrEqual(MOST_COVERING[isPhone ? 'phone' : 'larger']);
  });
});
