import { type KeyboardEvent, type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { useDesk } from '../desk-context.tsx';
import { keyPressOf } from '../key-press.ts';
import type { PagePicture } from './drawn-sheet.ts';
import { PageSheet } from './page-sheet.tsx';
import { type FrameSize, scaledZoom, zoomFactor } from './page-zoom.ts';
import { posting, usePostingState } from './posting.ts';
import { usePageGestures } from './use-page-gestures.ts';
import { usePageTurn } from './use-page-turn.ts';

/** A place on the page, as fractions of it, and where in the window it is to stay when the zoom changes. */
interface Anchor {
  readonly across: number;
  readonly down: number;
  readonly x: number;
  readonly y: number;
}

/** So much larger is the page after two clicks or taps on it. */
const CLOSER = 2.5;

/** What the keys do over the page; the arrows where there is nothing to scroll to a side. */
const KEYS: ReadonlyMap<string, 'larger' | 'smaller' | 'whole' | 'next' | 'before' | 'first' | 'last'> = new Map([
  ['+', 'larger'],
  ['=', 'larger'],
  ['-', 'smaller'],
  ['0', 'whole'],
  ['PageDown', 'next'],
  ['PageUp', 'before'],
  ['ArrowRight', 'next'],
  ['ArrowLeft', 'before'],
  ['Home', 'first'],
  ['End', 'last'],
]);

/** One page of a sheet, which is zoomed, dragged and turned. */
export function PageView({
  pages,
  isOld,
  title,
}: {
  /** None as long as none has been drawn. */
  readonly pages: readonly PagePicture[];
  /** A newer one is being drawn. */
  readonly isOld: boolean;
  readonly title: string;
}) {
  const desk = useDesk();
  const box = useRef<HTMLElement>(null);
  const paper = useRef<HTMLDivElement>(null);
  const size = useOuterSize(box);
  const zoom = usePostingState((state) => state.zoom);
  const { page, turn, show, says } = usePageTurn(pages);
  const picture = pages[page];
  const factorOf = (of: FrameSize) => zoomFactor(zoom, of, size);
  const factor = picture === undefined ? 1 : factorOf(picture);
  const keepPlace = useKeptPlace(box, paper, factor);
  useLayoutEffect(() => posting.noteFactor(factor), [factor]);
  usePageGestures(box, {
    zoom(by, about) {
      keepPlace(about);
      posting.setZoom(scaledZoom(posting.state().factor, by));
    },
    turn,
    toggle(about) {
      const isWhole = posting.state().zoom === 'page';
      if (isWhole) keepPlace(about);
      posting.setZoom(isWhole ? scaledZoom(posting.state().factor, CLOSER) : 'page');
    },
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: the page is what the box is scrolled for.
  useEffect(() => {
    // Another page is read from its beginning.
    box.current?.scrollTo(0, 0);
  }, [page]);
  const pressed = (event: KeyboardEvent<HTMLElement>) => {
    const { key, mod, alt } = keyPressOf(event);
    if (mod || alt) return;
    const isWide = event.currentTarget.scrollWidth > event.currentTarget.clientWidth;
    const verb = isWide && key.startsWith('Arrow') ? undefined : KEYS.get(key);
    // The page stands where the arena does: the keys of the stages go on from here too.
    if (verb === undefined && !(/^[1-5]$/.test(key) && desk.press(keyPressOf(event)))) return;
    event.preventDefault();
    if (verb === 'larger') posting.stepZoom(1);
    if (verb === 'smaller') posting.stepZoom(-1);
    if (verb === 'whole') posting.setZoom('page');
    if (verb === 'next') turn(1);
    if (verb === 'before') turn(-1);
    if (verb === 'first') show(0);
    if (verb === 'last') show(pages.length - 1);
  };
  return (
    <section
      ref={box}
      className={`page-view is-${typeof zoom === 'number' ? 'scaled' : zoom}${isOld ? ' is-old' : ''}`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keys.
      tabIndex={0}
      data-pane="arena"
      aria-label={title}
      aria-busy={isOld}
      onKeyDown={pressed}
    >
      <div className="page-bed">
        {picture !== undefined && <PageSheet picture={picture} alt={says(picture)} factorOf={factorOf} place={paper} />}
      </div>
    </section>
  );
}

/** The size of a box with its scroll bars: what is fitted into it must not change it. */
function useOuterSize(box: RefObject<HTMLElement | null>): FrameSize {
  const [size, setSize] = useState<FrameSize>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const measure = () =>
      setSize((before) => {
        const { offsetWidth: width, offsetHeight: height } = element;
        return before.width === width && before.height === height ? before : { width, height };
      });
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [box]);
  return size;
}

/**
 * What stays where it is in the window when the zoom changes: the middle of the box, or another place when that is told before
 * the change.
 */
function useKeptPlace(
  box: RefObject<HTMLElement | null>,
  paper: RefObject<HTMLElement | null>,
  factor: number,
): (about: { readonly x: number; readonly y: number }) => void {
  const anchor = useRef<Anchor | null>(null);
  /** The middle of the box before the change: after it, the browser may have moved a page that became smaller. */
  const middle = useRef<Anchor | null>(null);
  const last = useRef(factor);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const note = () => {
      middle.current = anchorAt(paper.current, middleOf(element));
    };
    element.addEventListener('scroll', note, { passive: true });
    return () => element.removeEventListener('scroll', note);
  }, [box, paper]);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const kept = anchor.current ?? middle.current;
    const now = paper.current?.getBoundingClientRect();
    if (factor !== last.current && kept !== null && now !== undefined) {
      element.scrollLeft += now.left + kept.across * now.width - kept.x;
      element.scrollTop += now.top + kept.down * now.height - kept.y;
    }
    [anchor.current, last.current] = [null, factor];
    middle.current = anchorAt(paper.current, middleOf(element));
  });
  return (about) => {
    anchor.current = anchorAt(paper.current, about);
  };
}

function middleOf(element: HTMLElement): { readonly x: number; readonly y: number } {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
}

function anchorAt(paper: HTMLElement | null, { x, y }: { readonly x: number; readonly y: number }): Anchor | null {
  const at = paper?.getBoundingClientRect();
  if (at === undefined || at.width === 0 || at.height === 0) return null;
  return { across: (x - at.left) / at.width, down: (y - at.top) / at.height, x, y };
}
