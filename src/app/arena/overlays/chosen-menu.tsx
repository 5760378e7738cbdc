import { type KeyboardEvent, useEffect, useRef } from 'react';
import { obstacleOf, pieceOf } from '../../../core/course/ids.ts';
import { chosenPieces } from '../../../desk/selection/selection.ts';
import { handWords } from '../../../words/hand.ts';
import { terms } from '../../../words/terms.ts';
import { useDesk, useDeskState } from '../../desk-context.tsx';
import { focusPane } from '../../panes.ts';
import { useViewState } from '../../view.ts';
import { useHand, useHandState } from '../input/hand-store.ts';

const STEP = Math.PI / 12;
const WIDTH = 240;
const ROW = 44;

interface MenuCommand {
  readonly title: string;
  readonly keys: string;
  run(): void;
}

/** The commands for what is chosen, where the hand asked for them. */
export function ChosenMenu() {
  const at = useHandState(({ menu }) => menu);
  const hasChosen = useDeskState((state) => state.chosen.length > 0);
  return at === null || !hasChosen ? null : <OpenMenu x={at.x} y={at.y} />;
}

function useCommands(): readonly MenuCommand[] {
  const desk = useDesk();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const isAlone = useDeskState((state) => state.isAlone);
  const pieces = chosenPieces(survey, chosen);
  const [only] = chosen;
  const isPiece = chosen.length === 1 && only !== undefined && pieceOf(only) !== undefined;
  const isPinned = pieces.length > 0 && pieces.every((each) => each.piece.fixed);
  const first = survey.pieces.find((each) => each.obstacle === only);
  const turns = [
    { title: handWords.menuTurnLeft, keys: 'R', run: () => desk.turn(STEP) },
    { title: handWords.menuTurnRight, keys: 'Shift+R', run: () => desk.turn(-STEP) },
  ];
  const erase = { title: terms.delete, keys: 'Del', run: () => desk.erase() };
  if (pieces.length === 0) return [...turns, erase];
  return [
    { title: terms.duplicate, keys: 'Ctrl+D', run: () => desk.duplicate() },
    { title: handWords.menuMirror, keys: 'M', run: () => desk.mirror() },
    ...turns,
    { title: isPinned ? handWords.menuFree : handWords.menuPin, keys: 'F', run: () => void desk.togglePinned() },
    ...(isPiece
      ? [
          {
            title: isAlone ? handWords.menuWithOthers : handWords.justThisPiece,
            keys: 'J',
            run: () => void desk.toggleAlone(),
          },
          {
            title: handWords.menuWhole,
            keys: 'Esc',
            run: () => desk.choose([obstacleOf(only)]),
          },
        ]
      : first === undefined || chosen.length > 1
        ? []
        : [{ title: handWords.menuPieces, keys: 'Enter', run: () => desk.choose([first.key]) }]),
    { title: handWords.menuMeasure, keys: 'T', run: () => desk.measure() },
    erase,
  ];
}

function OpenMenu({ x, y }: { readonly x: number; readonly y: number }) {
  const hand = useHand();
  const size = useViewState((state) => state.size);
  const commands = useCommands();
  const list = useRef<HTMLDivElement>(null);
  const shut = () => {
    hand.change({ menu: null });
    focusPane('arena');
  };
  useEffect(() => {
    list.current?.querySelector<HTMLElement>('[role="menuitem"]')?.focus({ preventScroll: true });
    const outside = (event: globalThis.PointerEvent) => {
      if (event.target instanceof Node && !list.current?.contains(event.target)) hand.change({ menu: null });
    };
    window.addEventListener('pointerdown', outside, true);
    return () => window.removeEventListener('pointerdown', outside, true);
  }, [hand]);
  const press = (event: KeyboardEvent<HTMLDivElement>) => {
    const items = [...(list.current?.querySelectorAll<HTMLElement>('[role="menuitem"]') ?? [])];
    const now = items.indexOf(document.activeElement as HTMLElement);
    const places: Readonly<Record<string, number>> = {
      ArrowDown: (now + 1) % items.length,
      ArrowUp: (now - 1 + items.length) % items.length,
      Home: 0,
      End: items.length - 1,
    };
    const place = places[event.key];
    if (place !== undefined) items[place]?.focus();
    else if (event.key === 'Escape' || event.key === 'Tab') shut();
    else if (event.key.length === 1 && event.key !== ' ') {
      items.find((item) => item.textContent?.toLowerCase().startsWith(event.key.toLowerCase()))?.focus();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const tall = commands.length * ROW + 12;
  const style = {
    left: Math.max(4, Math.min(x, size.width - WIDTH - 4)),
    top: Math.max(4, Math.min(y, size.height - tall - 4)),
    width: WIDTH,
    maxHeight: size.height - 8,
  };
  return (
    <div
      ref={list}
      className="chosen-menu"
      role="menu"
      tabIndex={-1}
      aria-label={handWords.menu}
      style={style}
      onKeyDown={press}
      onContextMenu={(event) => event.preventDefault()}
    >
      {commands.map(({ title, keys, run }) => (
        <button
          key={title}
          type="button"
          role="menuitem"
          tabIndex={-1}
          onClick={() => {
            run();
            shut();
          }}
        >
          {title}
          <span className="menu-keys" aria-hidden="true">
            {keys}
          </span>
        </button>
      ))}
    </div>
  );
}
