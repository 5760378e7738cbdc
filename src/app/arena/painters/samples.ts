import type { PlacedPiece } from '../../../core/course/placed.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import { type Path, pathPoints } from '../../../core/plane/path.ts';
import type { Point } from '../../../core/plane/point.ts';
import type { Survey } from '../../../core/survey.ts';
import { type Camera, screenOf } from '../camera.ts';

/** Samples of the line and of the poles that labels keep off stand so far apart, pixels. */
const DOTS_APART = 8;

/** Samples of a part of the line on the screen: a drag leaves most parts as they are. */
const pathDots = memoizeByIdentity((path: Path, camera: Camera): readonly Point<'screen'>[] =>
  pathPoints(path, Math.max(0.2, DOTS_APART / camera.scale)).map((at) => screenOf(camera, at)),
);

/** Along the line of travel. */
export const lineDots = memoizeByIdentity((survey: Survey, camera: Camera): readonly Point<'screen'>[] =>
  survey.line.elements.flatMap(({ path }) => pathDots(path, camera)),
);

/** Along a long piece, and over a broad one. */
const dotsOn = memoizeByIdentity(({ pose, figure }: PlacedPiece, camera: Camera): readonly Point<'screen'>[] => {
  const [c, s] = [Math.cos(pose.angle), Math.sin(pose.angle)];
  const across = Math.max(1, Math.ceil((figure.width * camera.scale) / DOTS_APART));
  const along = Math.max(1, Math.ceil((figure.length * camera.scale) / DOTS_APART));
  const dots: Point<'screen'>[] = [];
  for (let i = 0; i <= along; i++) {
    const x = figure.length * (i / along - 0.5);
    for (let j = 0; j < across; j++) {
      const y = figure.width * ((j + 0.5) / across - 0.5);
      dots.push(screenOf(camera, { x: pose.x + c * x - s * y, y: pose.y + s * x + c * y }));
    }
  }
  return dots;
});

/** Along and over all pieces. */
export const pieceDots = memoizeByIdentity((survey: Survey, camera: Camera): readonly Point<'screen'>[] =>
  survey.pieces.flatMap((piece) => dotsOn(piece, camera)),
);
