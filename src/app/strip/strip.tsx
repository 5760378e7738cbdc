import { ChevronDown, ChevronUp, Minus, Plus, Table2 } from 'lucide-react';
import { type PointerEvent, type RefObject, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { printDuration } from '../../core/measure/duration.ts';
import { printLength } from '../../core/measure/length.ts';
import { secondsAt } from '../../core/ride/playing.ts';
import { shellWords } from '../../words/shell.ts';
import { stripWords } from '../../words/strip.ts';
import { terms } from '../../words/terms.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { usePlayer } from '../ride/player-context.tsx';
import { useView, useViewState } from '../view.ts';
import { Cursor } from './cursor.tsx';
import { LineTable } from './line-table.tsx';
import { RIDE_ROW_NAMES, RIDE_ROWS_HEIGHT, RideRows } from './ride-rows.tsx';
import { STRIP_EDGE } from './strip-edge.ts';
import { type StripFold, useStripFold } from './strip-fold.ts';
import { gapSentence, type StripGap, type StripLeg, stripGaps, stripLegs } from './track.ts';
import { StripItems } from './track-items.tsx';
import { StripPicture } from './track-picture.tsx';

const ZOOM_STEP = 1.5;
/** Pixels a metre of the line. */
const MOST_SCALE = 90;

/** The strip: the line of travel as a straight track, to scale. */
export function RideStrip() {
  const isRide = useDeskState((state) => state.stage === 'ride');
  const { isFolded, fold } = useStripFold();
  const looks = ['strip', ...(isRide ? ['is-whole'] : []), ...(isFolded ? ['is-folded'] : [])].join(' ');
  return (
    <section className={looks} aria-label={stripWords.rideStrip} data-pane="strip">
      <StripPanel folding={{ isFolded, fold }} />
    </section>
  );
}

export function StripPanel({ folding }: { readonly folding?: StripFold }) {
  const survey = useDeskState((state) => state.survey);
  /** 1: the whole line is seen. */
  const [zoom, setZoom] = useState(1);
  const [room, setRoom] = useState(0);
  const [isTable, setTable] = useState(false);
  const isFolded = folding?.isFolded ?? false;
  const legs = useMemo(() => stripLegs(survey), [survey]);
  const gaps = useMemo(() => stripGaps(survey), [survey]);
  if (legs.length === 0) {
    return <p className="strip-empty">{stripWords.noLine}</p>;
  }
  const whole = Math.max(room - 2 * STRIP_EDGE, 1) / Math.max(survey.line.length, 1);
  const most = Math.max(1, MOST_SCALE / whole);
  const near = Math.min(zoom, most);
  return (
    <>
      <div className="strip-head">
        <h2>{stripWords.theGo}</h2>
        <p className="strip-total">
          {stripWords.about(printLength(survey.line.length, survey.course.unit), printDuration(survey.line.clock.go))}
        </p>
        <Readout legs={legs} gaps={gaps} />
        {!isTable && !isFolded && (
          <>
            <button
              type="button"
              className="quiet"
              disabled={near <= 1}
              onClick={() => setZoom(Math.max(1, near / ZOOM_STEP))}
              aria-label={stripWords.showMoreLine}
            >
              <Minus aria-hidden="true" />
            </button>
            <button
              type="button"
              className="quiet"
              disabled={near >= most}
              onClick={() => setZoom(Math.min(most, near * ZOOM_STEP))}
              aria-label={stripWords.showLineLarger}
            >
              <Plus aria-hidden="true" />
            </button>
          </>
        )}
        {!isFolded && (
          <button type="button" className="quiet worded" aria-pressed={isTable} onClick={() => setTable(!isTable)}>
            <Table2 aria-hidden="true" />
            <span>{stripWords.table}</span>
          </button>
        )}
        {folding !== undefined && <FoldButton {...folding} />}
      </div>
      {isFolded ? null : isTable ? (
        <LineTable legs={legs} gaps={gaps} />
      ) : (
        <StripChart legs={legs} gaps={gaps} scale={whole * near} room={near > 1 ? room : null} measured={setRoom} />
      )}
    </>
  );
}

function FoldButton({ isFolded, fold }: StripFold) {
  const Icon = isFolded ? ChevronUp : ChevronDown;
  return (
    <button
      type="button"
      className="quiet"
      aria-expanded={!isFolded}
      aria-label={isFolded ? shellWords.showStrip : shellWords.foldStrip}
      onClick={() => fold(!isFolded)}
    >
      <Icon aria-hidden="true" />
    </button>
  );
}

/** The full sentence of what is pointed at. */
function Readout({ legs, gaps }: { readonly legs: readonly StripLeg[]; readonly gaps: readonly StripGap[] }) {
  const pointed = useViewState((state) => state.pointed);
  const unit = useDeskState((state) => state.course.unit);
  const off = gaps.filter((gap) => gap.fit === 'off').length;
  const poor = gaps.filter((gap) => gap.fit === 'poor').length;
  const leg = pointed?.kind === 'leg' ? legs.find((each) => each.leg === pointed.leg) : undefined;
  const gap = pointed?.kind === 'gap' ? gaps[pointed.gap] : undefined;
  const says =
    gap !== undefined
      ? gapSentence(gap, unit)
      : leg !== undefined
        ? stripWords.legRead(
            leg.leg + 1,
            leg.title,
            printLength(leg.over - leg.from, unit),
            printLength(leg.to - leg.over, unit),
            Math.round(leg.seconds),
          )
        : off > 0
          ? stripWords.gapsOutOfRange(terms.gaps(off))
          : poor > 0
            ? stripWords.gapsAllowed(terms.gaps(poor))
            : gaps.length > 0
              ? stripWords.allGapsInRange
              : '';
  return <p className={off > 0 && gap === undefined && leg === undefined ? 'readout is-off' : 'readout'}>{says}</p>;
}

function StripChart({
  legs,
  gaps,
  scale,
  room,
  measured,
}: {
  readonly legs: readonly StripLeg[];
  readonly gaps: readonly StripGap[];
  readonly scale: number;
  readonly room: number | null;
  /** Told how wide the strip is, in pixels. */
  measured(width: number): void;
}) {
  const desk = useDesk();
  const view = useView();
  const player = usePlayer();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const isRide = useDeskState((state) => state.stage === 'ride');
  const scroller = useRef<HTMLDivElement>(null);
  const width = survey.line.length * scale + 2 * STRIP_EDGE;
  const seek = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0 || (event.target instanceof Element && event.target.closest('button') !== null)) return;
    const x = event.clientX - event.currentTarget.getBoundingClientRect().left - STRIP_EDGE;
    player.seek(secondsAt(survey.line, Math.min(survey.line.length, Math.max(0, x / scale))));
  };
  const first = legs.find((leg) => chosen.some((key) => key.split('/')[0] === leg.obstacle));
  const from = first === undefined ? undefined : first.over * scale;
  useLayoutEffect(() => {
    const box = scroller.current;
    if (box === null) return;
    const measure = () => measured(box.clientWidth);
    const watcher = new ResizeObserver(measure);
    watcher.observe(box);
    measure();
    return () => watcher.disconnect();
  }, [measured]);
  useScrollAnchor(scroller, scale, room);
  const isWhole = room === null;
  useEffect(() => {
    const box = scroller.current;
    // Where the whole line is seen there is nothing to scroll, and the page need not lay itself out to say so.
    if (box === null || from === undefined || isWhole) return;
    if (from > box.scrollLeft + 40 && from < box.scrollLeft + box.clientWidth - 160) return;
    box.scrollTo({ left: Math.max(0, from - box.clientWidth / 3) });
  }, [from, isWhole]);
  return (
    <div className={isRide ? 'strip-frame has-rows' : 'strip-frame'}>
      {isRide && <RowNames />}
      <div className="strip-scroller" ref={scroller} onPointerLeave={() => view.point(null)}>
        <div
          className="strip-chart"
          style={{ width, ...(isRide ? { height: CHART_HEIGHT + RIDE_ROWS_HEIGHT } : {}) }}
          onPointerDown={isRide ? seek : undefined}
        >
          <StripPicture survey={survey} gaps={gaps} scale={scale} width={width} />
          {isRide && <RideRows survey={survey} gaps={gaps} scale={scale} width={width} />}
          {isRide && <Cursor scale={scale} />}
          <StripItems legs={legs} gaps={gaps} scale={scale} choose={(id) => desk.choose([id])} />
        </div>
      </div>
    </div>
  );
}

/** Height of the track, pixels, as in styles/strip.css; the rows of the Ride stage lie below it. */
const CHART_HEIGHT = 96;
/** Heights of the named rows of the track itself. */
const ROWS = [
  { name: stripWords.gait, y: 43 },
  { name: stripWords.gap, y: 64 },
] as const;

/** What each row of the strip shows; the table says the same in words. */
function RowNames() {
  const rows = [...ROWS, ...RIDE_ROW_NAMES.map(({ name, y }) => ({ name, y: y + CHART_HEIGHT }))];
  return (
    <div className="row-names" aria-hidden="true">
      {rows.map(({ name, y }) => (
        <span key={name} style={{ top: y }}>
          {name}
        </span>
      ))}
    </div>
  );
}

/**
 * What is in the middle of the strip stays there when the scale changes. `room` is how wide the strip is in pixels; null:
 * the whole line is seen, and nothing is read from the page, which would have to lay itself out for it.
 */
function useScrollAnchor(scroller: RefObject<HTMLDivElement | null>, scale: number, room: number | null): void {
  const before = useRef(scale);
  useLayoutEffect(() => {
    const box = scroller.current;
    if (box === null || before.current === scale) return;
    if (room === null) {
      before.current = scale;
      return;
    }
    const half = room / 2;
    const at = (box.scrollLeft + half - STRIP_EDGE) / before.current;
    before.current = scale;
    box.scrollLeft = at * scale + STRIP_EDGE - half;
  }, [scroller, scale, room]);
}
