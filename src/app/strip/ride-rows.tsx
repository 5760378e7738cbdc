import { memo, useMemo } from 'react';
import type { Survey } from '../../core/survey.ts';
import { stripWords } from '../../words/strip.ts';
import { useTheme } from '../arena/layers/use-theme.ts';
import type { Theme } from '../arena/painters/inks.ts';
import { GapGauge } from './gauge.tsx';
import { bendSpans, changeWords, clockTicks, leadSpans } from './rows.ts';
import { STRIP_EDGE } from './strip-edge.ts';
import type { StripGap } from './track.ts';

/** Heights of the rows, pixels from the top of their own picture. */
const STRIDE = 9;
const CHANGES = 28;
const LEADS = 45;
const BEND = 74;
const BEND_HALF = 13;
const CLOCK = 104;
export const RIDE_ROWS_HEIGHT = 112;

/** Beside the rows: what each shows. */
export const RIDE_ROW_NAMES = [
  { name: stripWords.stride, y: STRIDE },
  { name: stripWords.changes, y: CHANGES },
  { name: stripWords.lead, y: LEADS },
  { name: stripWords.bend, y: BEND },
  { name: stripWords.clock, y: CLOCK },
] as const;

/** A bend is drawn up to this many times the least turn. */
const MOST_SHARE = 1.25;
const LETTER = 6.6;
const CLOCK_APART = 52;

interface Along {
  readonly survey: Survey;
  readonly scale: number;
  readonly theme: Theme;
  x(at: number): number;
}

/** The rows of the Ride stage under the track: needed stride, changes of gait, leads, bend, clock. */
export const RideRows = memo(function RideRows({
  survey,
  gaps,
  scale,
  width,
}: {
  readonly survey: Survey;
  readonly gaps: readonly StripGap[];
  readonly scale: number;
  readonly width: number;
}) {
  const theme = useTheme();
  const along: Along = { survey, scale, theme, x: (at) => STRIP_EDGE + at * scale };
  return (
    <svg className="ride-rows" width={width} height={RIDE_ROWS_HEIGHT} aria-hidden="true">
      {gaps.map(({ gap, index }) => {
        const { least, most, value } = survey.horse.gaits[gap.gait].landing;
        const { each, fits } = gap.landings;
        return (
          <GapGauge
            key={index}
            band={{ least: least ?? value, most: most ?? value }}
            value={each}
            fit={fits ? 'good' : 'off'}
            left={along.x(gap.from)}
            long={(gap.to - gap.from) * scale}
            y={STRIDE}
          />
        );
      })}
      <Changes {...along} />
      <Leads {...along} />
      <Bend {...along} />
      <Clock {...along} />
    </svg>
  );
});

/** Where the gait changes, with the room that it takes; in the colour of a fault where there is too little. */
function Changes({ survey, scale, theme, x }: Along) {
  let free = Number.NEGATIVE_INFINITY;
  return survey.line.transitions.map((change, index) => {
    const from = x(change.from);
    const long = Math.max(3, change.length * scale);
    const words = changeWords(change);
    const colour = change.fits ? theme.inks.words : theme.must;
    const half = (words.length * LETTER) / 2;
    const middle = Math.max(half + 2, from + long / 2);
    const isRoomy = middle - half > free;
    if (isRoomy) free = middle + half + 6;
    return (
      // biome-ignore lint/suspicious/noArrayIndexKey: a transition is known by its place in the go, not by its distance.
      <g key={index}>
        <rect x={from} y={CHANGES - 9} width={long} height="3" fill={colour} />
        {isRoomy && (
          <text
            x={middle}
            y={CHANGES + 5}
            textAnchor="middle"
            className={change.fits ? 'row-word' : 'row-word is-off'}
            fill={colour}
          >
            {words}
          </text>
        )}
      </g>
    );
  });
}

function Leads({ survey, scale, theme, x }: Along) {
  return leadSpans(survey.line).map(({ from, to, lead, fault }, index) => {
    const long = (to - from) * scale;
    const colour = fault === 'wrong-lead' ? theme.must : fault === 'counter-lope' ? theme.should : theme.inks.lope;
    const text = `${lead === 'left' ? 'L' : 'R'}${fault === 'wrong-lead' ? ' ✕' : fault === 'counter-lope' ? ' ?' : ''}`;
    return (
      // biome-ignore lint/suspicious/noArrayIndexKey: a stretch is known by its place in the go, not by its distance.
      <g key={index}>
        <line
          x1={x(from)}
          x2={x(to)}
          y1={LEADS}
          y2={LEADS}
          stroke={colour}
          strokeWidth={fault === null ? 2 : 4}
          strokeDasharray={fault === null ? undefined : '3 3'}
        />
        {(long > 22 || fault !== null) && (
          <text
            x={x((from + to) / 2)}
            y={LEADS + 4.5}
            textAnchor="middle"
            className="row-lead"
            fill={colour}
            stroke={theme.plate}
          >
            {text}
          </text>
        )}
      </g>
    );
  });
}

/** How much the line turns, left upwards; the dashed lines are the least turn of the gait. */
function Bend({ survey, theme, x }: Along) {
  const spans = useMemo(() => bendSpans(survey.line.elements, survey.horse), [survey]);
  const y = (share: number) => BEND - Math.max(-MOST_SHARE, Math.min(MOST_SHARE, share)) * BEND_HALF;
  const path = spans.map(({ from, to, share }, i) => {
    const before = spans[i - 1];
    const joins = before !== undefined && Math.abs(before.to - from) < 1e-6;
    return `${joins ? 'L' : 'M'}${x(from).toFixed(1)} ${y(share).toFixed(1)}L${x(to).toFixed(1)} ${y(share).toFixed(1)}`;
  });
  const tight = spans.filter(({ share }) => Math.abs(share) > 1 + 1e-6);
  const [left, right] = [x(0), x(survey.line.length)];
  return (
    <g>
      <line x1={left} x2={right} y1={BEND} y2={BEND} stroke={theme.inks.faint} strokeWidth="1" />
      {[1, -1].map((share) => (
        <line
          key={share}
          x1={left}
          x2={right}
          y1={y(share)}
          y2={y(share)}
          stroke={theme.inks.faint}
          strokeWidth="1"
          strokeDasharray="4 4"
        />
      ))}
      <path d={path.join('')} fill="none" stroke={theme.inks.words} strokeWidth="1.5" strokeLinejoin="round" />
      {tight.map(({ from, to, share }) => (
        <line
          key={`${from}`}
          x1={x(from)}
          x2={Math.max(x(to), x(from) + 2)}
          y1={y(share)}
          y2={y(share)}
          stroke={theme.must}
          strokeWidth="4"
        />
      ))}
    </g>
  );
}

function Clock({ survey, scale, theme, x }: Along) {
  const ticks = useMemo(() => clockTicks(survey.line, CLOCK_APART / scale), [survey, scale]);
  return ticks.map(({ at, time }) => (
    <g key={time}>
      <line x1={x(at)} x2={x(at)} y1={CLOCK - 12} y2={CLOCK - 7} stroke={theme.inks.faint} />
      <text x={x(at)} y={CLOCK + 4} textAnchor="middle" className="row-word" fill={theme.inks.words}>
        {`${Math.floor(time / 60)}:${String(Math.round(time % 60)).padStart(2, '0')}`}
      </text>
    </g>
  ));
}
