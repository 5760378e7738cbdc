import { RotateCcw, RotateCw } from 'lucide-react';
import { type PointerEvent, type RefObject, useEffect, useId, useMemo, useRef, useState } from 'react';
import type { Radians } from '../../core/measure/quantity.ts';
import type { Point } from '../../core/plane/point.ts';
import { normalizeAngle } from '../../core/plane/pose.ts';
import type { Ground } from '../../core/setout/ground.ts';
import { partPieceWords } from '../../core/setout/words/place-words.ts';
import { andList } from '../../core/text/sentence.ts';
import { setoutWords } from '../../words/setout.ts';
import type { Act, PartActs } from './acts.ts';
import { type ActPicture, LETTER_RADIUS, type PicturePiece, type PictureSize, pictureOf } from './picture.ts';

const QUARTER: Radians = Math.PI / 2;
const EIGHTH: Radians = Math.PI / 4;
const NO_SIZE: PictureSize = { width: 0, height: 0 };
/** Half the length of the bar at the end of a tape, pixels. */
const BAR = 8;

function useSize(box: RefObject<HTMLElement | null>): PictureSize {
  const [size, setSize] = useState(NO_SIZE);
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const measure = () => setSize({ width: element.clientWidth, height: element.clientHeight });
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    measure();
    return () => watcher.disconnect();
  }, [box]);
  return size;
}

/** "north", for a heading on the ground. */
function facingWords(facing: Radians): string {
  const eighths = Math.round(facing / EIGHTH);
  return setoutWords.ways[((eighths % 8) + 8) % 8] ?? '';
}

/** A part with what is held, what is laid and the tape, and two buttons that turn it. It can also be turned by dragging. */
export function PartPicture({
  ground,
  part,
  act,
  facing,
  turn,
}: {
  readonly ground: Ground;
  readonly part: PartActs;
  readonly act: Act;
  /** The direction on the ground that is up. */
  readonly facing: Radians;
  turn(facing: Radians): void;
}) {
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box);
  const drag = useTurnDrag(box, facing, turn);
  const picture = useMemo(
    () => (size.width === 0 ? null : pictureOf(ground, part, { act, facing, size })),
    [ground, part, act, facing, size],
  );
  const quarter = (by: 1 | -1) => turn(normalizeAngle((Math.round(facing / QUARTER) + by) * QUARTER));
  return (
    <div className="setout-picture" ref={box} {...drag}>
      {picture !== null && (
        <svg
          width={size.width}
          height={size.height}
          viewBox={`0 0 ${size.width} ${size.height}`}
          role="img"
          aria-label={pictureWords(part, act, facing)}
        >
          <Drawn picture={picture} />
        </svg>
      )}
      <div className="setout-turn">
        <button type="button" aria-label={setoutWords.turnLeft} onClick={() => quarter(-1)}>
          <RotateCcw aria-hidden="true" />
        </button>
        <span>{setoutWords.facing(facingWords(facing))}</span>
        <button type="button" aria-label={setoutWords.turnRight} onClick={() => quarter(1)}>
          <RotateCw aria-hidden="true" />
        </button>
      </div>
    </div>
  );
}

/** The picture in words, for those who do not see it. */
function pictureWords(part: PartActs, act: Act, facing: Radians): string {
  const { names } = part;
  const told = (key: string) => {
    const letters = part.part.letters.get(key);
    const thing = partPieceWords(names, key);
    return letters === undefined ? thing : `${thing} (${letters.join(', ')})`;
  };
  const held = act.step.held.filter((key) => !key.startsWith('wall '));
  return setoutWords.picture(
    facingWords(facing),
    held.length === 0 ? setoutWords.nothingHeld : setoutWords.isHeld(andList(held.map(told))),
    setoutWords.isLaid(told(act.step.piece)),
  );
}

function path(points: readonly Point<'screen'>[]): string {
  return `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
}

function Drawn({ picture: { walls, pieces, tape, guide } }: { readonly picture: ActPicture }) {
  const hatch = useId();
  const laid = pieces.find(({ role }) => role === 'laid');
  // Across the piece, however it lies: along it the hatching would look like an edge.
  const slant = 45 + ((laid?.turn ?? 0) * 180) / Math.PI;
  return (
    <>
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform={`rotate(${slant})`}>
          <path d="M0 0V6" className="setout-hatch" />
        </pattern>
      </defs>
      <path d={`${path(walls)}Z`} className="setout-walls" />
      {pieces.map(({ key, role, ring }) => (
        <path
          key={key}
          d={`${path(ring)}Z`}
          className={`setout-piece is-${role}`}
          {...(role === 'laid' && { style: { fill: `url(#${CSS.escape(hatch)})` } })}
        />
      ))}
      {guide !== undefined && <path d={path(guide)} className="setout-guide" />}
      {tape !== undefined && <Tape tape={tape} />}
      {pieces.map((piece) => (
        <Letters key={piece.key} piece={piece} />
      ))}
    </>
  );
}

function Tape({ tape: [zero, read] }: { readonly tape: readonly [Point<'screen'>, Point<'screen'>] }) {
  const long = Math.hypot(read.x - zero.x, read.y - zero.y) || 1;
  const [nx, ny] = [-(read.y - zero.y) / long, (read.x - zero.x) / long];
  const bar = ({ x, y }: Point<'screen'>) =>
    path([
      { x: x + BAR * nx, y: y + BAR * ny },
      { x: x - BAR * nx, y: y - BAR * ny },
    ]);
  return (
    <>
      <path d={path([zero, read])} className="setout-tape is-halo" />
      <path d={path([zero, read])} className="setout-tape" />
      <path d={bar(read)} className="setout-tape" />
      <circle cx={zero.x} cy={zero.y} r={5} className="setout-zero" />
    </>
  );
}

/** Letters at the ends: in full discs where the piece is held, in rings where it is laid. */
function Letters({ piece: { letters, role } }: { readonly piece: PicturePiece }) {
  return letters.map(({ text, at }) => (
    <g key={text} className={`setout-letter is-${role}`}>
      <circle cx={at.x} cy={at.y} r={LETTER_RADIUS} />
      <text x={at.x} y={at.y} textAnchor="middle" dominantBaseline="central">
        {text}
      </text>
    </g>
  ));
}

/** Turns the picture about its middle while a finger or the mouse drags it. */
function useTurnDrag(box: RefObject<HTMLElement | null>, facing: Radians, turn: (facing: Radians) => void) {
  const start = useRef<{ readonly pointer: number; readonly angle: Radians; readonly facing: Radians } | null>(null);
  const angleOf = ({ clientX, clientY }: PointerEvent): Radians => {
    const { left, top, width, height } = box.current?.getBoundingClientRect() ?? new DOMRect();
    return Math.atan2(clientY - top - height / 2, clientX - left - width / 2);
  };
  const end = () => {
    start.current = null;
  };
  return {
    onPointerDown(event: PointerEvent<HTMLElement>) {
      if (event.button !== 0 || (event.target as Element).closest('button') !== null) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      start.current = { pointer: event.pointerId, angle: angleOf(event), facing };
    },
    onPointerMove(event: PointerEvent<HTMLElement>) {
      const from = start.current;
      // What is dragged clockwise on the screen turns the person the other way: up is then more to the left on the ground.
      if (from?.pointer === event.pointerId) turn(normalizeAngle(from.facing + angleOf(event) - from.angle));
    },
    onPointerUp: end,
    onPointerCancel: end,
  };
}
