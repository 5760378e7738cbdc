import { memo, useMemo } from 'react';
import type { Survey } from '../../core/survey.ts';
import { useTheme } from '../arena/layers/use-theme.ts';
import { TRAVEL_STYLES, travelKind } from '../arena/painters/travel-styles.ts';
import { GapGauge } from './gauge.tsx';
import { STRIP_EDGE } from './strip-edge.ts';
import type { StripGap } from './track.ts';
import { type StripLabel, stripLabels, stripWords } from './track-labels.ts';

/** Heights on the track, pixels from its top. */
const LINE_Y = 43;
const HALF = 11;
const GAUGE_Y = 63;
/** Where the two rows of words stand. */
const ROWS = [81, 93] as const;

/** The drawn part of the strip: gaits, poles, landings, gauges. Its words are in the items and the table. */
export const StripPicture = memo(function StripPicture({
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
  const { line } = survey;
  const { unit } = survey.course;
  const x = (at: number) => STRIP_EDGE + at * scale;
  const labels = useMemo(
    () =>
      stripLabels({ gaps, words: stripWords(line.elements), length: line.length }, { scale, edge: STRIP_EDGE, unit }),
    [gaps, line, scale, unit],
  );
  const fillOf = ({ about }: StripLabel) => {
    if (about === 'end') return theme.inks.words;
    if ('way' in about) return theme.inks[TRAVEL_STYLES[about.way].ink];
    return { good: theme.inks.words, poor: theme.should, off: theme.must }[about.fit];
  };
  return (
    <svg className="strip-picture" width={width} height="96" aria-hidden="true">
      <rect x={x(0)} y={LINE_Y - HALF} width={line.length * scale} height={2 * HALF} fill={theme.ground} />
      {line.elements.map((element, index) => {
        const look = TRAVEL_STYLES[travelKind(element)];
        const colour = theme.inks[look.ink];
        const from = x(element.from);
        const long = element.length * scale;
        // Not by its distance along the line: after a drag all have another, and would be made anew.
        const key = `${index} ${element.move}`;
        if (element.move === 'turn') {
          return (
            <text
              key={key}
              x={from}
              y={LINE_Y + 6}
              fill={colour}
              stroke={theme.ground}
              className="strip-turn"
              textAnchor="middle"
            >
              {(element.turn || (element.path[0]?.curvature ?? 0)) > 0 ? '↺' : '↻'}
            </text>
          );
        }
        return (
          <g key={key}>
            {element.part === 'obstacle' && (
              <rect x={from} y={LINE_Y - HALF} width={long} height={2 * HALF} fill={colour} opacity="0.16" />
            )}
            <line
              x1={from}
              x2={from + long}
              y1={LINE_Y}
              y2={LINE_Y}
              stroke={colour}
              strokeWidth={look.width}
              strokeDasharray={look.dash.join(' ')}
              strokeLinecap={look.cap}
            />
          </g>
        );
      })}
      {line.gaps.flatMap((gap, index) =>
        gap.landings.places.map(({ at }, place) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: a landing is known by its place in its gap.
            key={`landing ${index} ${place}`}
            transform={`translate(${x(at)} ${LINE_Y})`}
            d="M-3.4-2.6C5.2-4.6 5.2 4.6-3.4 2.6L-1 0z"
            fill={gap.landings.fits ? theme.inks.landing : theme.ground}
            stroke={gap.landings.fits ? theme.ground : theme.must}
          />
        )),
      )}
      {line.crossings.map((crossing, index) => (
        <rect
          // biome-ignore lint/suspicious/noArrayIndexKey: a crossing is known by its place in the go.
          key={`pole ${index}`}
          x={x(crossing.at) - 2}
          y={LINE_Y - HALF - 3}
          width="4"
          height={2 * HALF + 6}
          rx="1.5"
          fill={theme.inks.timber}
          stroke={theme.inks.outline}
          strokeWidth="0.8"
        />
      ))}
      {gaps.map(
        ({ index, gap, band, fit }) =>
          band !== undefined && (
            <GapGauge
              key={index}
              band={band}
              value={gap.ridden}
              fit={fit}
              left={x(gap.from)}
              long={(gap.to - gap.from) * scale}
              y={GAUGE_Y}
            />
          ),
      )}
      <End x={x(0)} />
      <End x={x(line.length)} />
      {labels.map((label) => (
        <text
          key={label.key}
          x={label.x}
          y={ROWS[label.row]}
          textAnchor="middle"
          className={wordClass(label)}
          fill={fillOf(label)}
        >
          {label.text}
        </text>
      ))}
    </svg>
  );
});

/** A fault is shown by stroke weight too, not by colour alone. */
function wordClass({ about }: StripLabel): string {
  return about !== 'end' && 'fit' in about && about.fit === 'good' ? 'strip-size' : 'strip-word';
}

function End({ x }: { readonly x: number }) {
  const theme = useTheme();
  return <rect x={x - 1} y={LINE_Y - HALF - 4} width="2" height={2 * HALF + 8} fill={theme.disc} />;
}
