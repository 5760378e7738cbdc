import { useEffect, useRef } from 'react';
import type { Point } from '../../../core/plane/point.ts';
import type { DeskState } from '../../../desk/desk.ts';
import { chosenWallDistances } from '../../../desk/placing/wall-distances.ts';
import { useDesk } from '../../desk-context.tsx';
import { useView } from '../../view.ts';
import type { ScreenSize } from '../camera.ts';
import { useHand, useHandState } from '../input/hand-store.ts';

/** Its side, how far above the finger its middle is, and how much it enlarges. Pixels. */
const SIDE = 132;
const ABOVE = 128;
const ENLARGED = 2;

/** Where the middle of the loupe is: above the finger; beside it where there is no room, and never off the picture. */
export function loupePlace(finger: Point<'screen'>, { width, height }: ScreenSize): Point<'screen'> {
  const half = SIDE / 2;
  const within = (value: number, most: number) => Math.max(half + 4, Math.min(most - half - 4, value));
  if (finger.y - ABOVE >= half) return { x: within(finger.x, width), y: finger.y - ABOVE };
  const side = finger.x > width / 2 ? -1 : 1;
  return { x: within(finger.x + side * ABOVE, width), y: within(finger.y - ABOVE, height) };
}

/** The number that matters while a finger drags: of its snap, the gap beside the piece, or the nearest wall. */
export function loupeWords(
  state: Pick<DeskState, 'guides' | 'survey' | 'chosen'>,
  print: (far: number) => string,
): string {
  const [guide] = state.guides;
  if (guide !== undefined) return guide.says;
  const gaps = state.survey.line.gaps.filter(({ keys }) => keys.some((key) => state.chosen.includes(key)));
  if (gaps.length > 0) return gaps.map(({ taped }) => print(taped)).join(' · ');
  const walls = chosenWallDistances(state).filter(({ near }) => near);
  return walls.map(({ text, wall }) => `${text} ${wall}`).join(' · ');
}

/** What lies under a finger that drags, enlarged beside it. Drawn from the canvases that are there already. */
export function Loupe({ print }: { readonly print: (far: number) => string }) {
  const isShown = useHandState(({ finger }) => finger !== null);
  return isShown ? <ShownLoupe print={print} /> : null;
}

function ShownLoupe({ print }: { readonly print: (far: number) => string }) {
  const desk = useDesk();
  const view = useView();
  const hand = useHand();
  const glass = useRef<HTMLCanvasElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const words = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    const draw = () => {
      const { finger, canvases } = hand.state();
      const context = glass.current?.getContext('2d') ?? null;
      if (finger === null || context === null || box.current === null || words.current === null) return;
      const { size } = view.state();
      const { x, y } = loupePlace(finger, size);
      box.current.style.transform = `translate(${x - SIDE / 2}px, ${y - SIDE / 2}px)`;
      words.current.textContent = loupeWords(desk.state(), print);
      context.clearRect(0, 0, SIDE, SIDE);
      const seen = SIDE / ENLARGED;
      for (const canvas of canvases) {
        const ratio = size.width === 0 ? 1 : canvas.width / size.width;
        const [left, top] = [(finger.x - seen / 2) * ratio, (finger.y - seen / 2) * ratio];
        context.drawImage(canvas, left, top, seen * ratio, seen * ratio, 0, 0, SIDE, SIDE);
      }
    };
    draw();
    return hand.subscribe(draw);
  }, [desk, view, hand, print]);
  return (
    <div ref={box} className="loupe" aria-hidden="true">
      <canvas ref={glass} width={SIDE} height={SIDE} />
      <p ref={words} />
    </div>
  );
}
