import { memo } from 'react';
import type { Survey } from '../../core/survey.ts';
import { useLooks } from '../arena/layers.tsx';
import { WAYS, wayOf } from '../arena/ways.ts';
import { onGauge, type RibbonGap } from './ribbon.ts';
import { STRIP_EDGE } from './strip.tsx';

/** Heights on the ribbon, pixels from its top. */
const LINE_Y = 43;
const HALF = 11;
const GAUGE_Y = 63;
/** A part shorter than this has no room for its word. */
const WORD_ROOM = 46;

/** The drawn part of the strip: gaits, poles, landings, gauges. Its words are in the items and the table. */
export const RibbonPicture = memo(function RibbonPicture({
  survey,
  gaps,
  scale,
  width,
}: {
  readonly survey: Survey;
  readonly gaps: readonly RibbonGap[];
  readonly scale: number;
  readonly width: number;
}) {
  const looks = useLooks();
  const { line } = survey;
  const x = (at: number) => STRIP_EDGE + at * scale;
  const numbers = new Map(line.crossings.map((each) => [each, each.leg + 1]));
  return (
    <svg className="ribbon-picture" width={width} height="96" aria-hidden="true">
      <rect x={x(0)} y={LINE_Y - HALF} width={line.length * scale} height={2 * HALF} fill={looks.ground} />
      {line.elements.map((element) => {
        const look = WAYS[wayOf(element)];
        const colour = looks.inks[look.ink];
        const from = x(element.from);
        const long = element.length * scale;
        const key = `${element.leg} ${element.part} ${element.from} ${element.move} ${element.turn}`;
        if (element.move === 'turn') {
          return (
            <text
              key={key}
              x={from}
              y={LINE_Y + 6}
              fill={colour}
              stroke={looks.ground}
              className="strip-turn"
              textAnchor="middle"
            >
              {element.turn > 0 ? '↺' : '↻'}
            </text>
          );
        }
        const isWorded = element.part !== 'obstacle' && long > WORD_ROOM;
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
            {isWorded && (
              <text x={from + long / 2} y={LINE_Y - HALF - 4} fill={colour} textAnchor="middle" className="strip-word">
                {look.word}
              </text>
            )}
          </g>
        );
      })}
      {line.gaps.flatMap((gap) =>
        gap.landings.places.map(({ at }) => (
          <path
            key={`landing ${at}`}
            transform={`translate(${x(at)} ${LINE_Y})`}
            d="M-3.4-2.6C5.2-4.6 5.2 4.6-3.4 2.6L-1 0z"
            fill={gap.landings.fits ? looks.inks.landing : looks.ground}
            stroke={gap.landings.fits ? looks.ground : looks.must}
          />
        )),
      )}
      {[...numbers].map(([crossing]) => (
        <rect
          key={`pole ${crossing.leg} ${crossing.at}`}
          x={x(crossing.at) - 2}
          y={LINE_Y - HALF - 3}
          width="4"
          height={2 * HALF + 6}
          rx="1.5"
          fill={looks.inks.timber}
          stroke={looks.inks.outline}
          strokeWidth="0.8"
        />
      ))}
      {gaps.map((gap) => (
        <Gauge key={gap.index} gap={gap} left={x(gap.gap.from)} long={(gap.gap.to - gap.gap.from) * scale} />
      ))}
      <End x={x(0)} word="Start" />
      <End x={x(line.length)} word="End" />
    </svg>
  );
});

/** The gap's place in its band: the band is the thick middle third. */
function Gauge({ gap, left, long }: { readonly gap: RibbonGap; readonly left: number; readonly long: number }) {
  const looks = useLooks();
  if (gap.band === undefined || long < 6) return null;
  const colour = { good: looks.inks.measure, poor: looks.should, off: looks.must }[gap.fit];
  const wide = Math.max(long - 4, 4);
  const from = left + (long - wide) / 2;
  return (
    <g>
      <rect x={from} y={GAUGE_Y - 1} width={wide} height="2" fill={looks.inks.faint} />
      <rect
        x={from + wide / 3}
        y={GAUGE_Y - 2.5}
        width={wide / 3}
        height="5"
        rx="1"
        fill={looks.inks.measure}
        opacity="0.45"
      />
      <circle
        cx={from + wide * onGauge(gap.band, gap.gap.ridden)}
        cy={GAUGE_Y}
        r="3.6"
        fill={colour}
        stroke={looks.ground}
      />
    </g>
  );
}

function End({ x, word }: { readonly x: number; readonly word: string }) {
  const looks = useLooks();
  return (
    <g fill={looks.disc}>
      <rect x={x - 1} y={LINE_Y - HALF - 4} width="2" height={2 * HALF + 8} />
      <text x={x} y={GAUGE_Y + 6} textAnchor="middle" className="strip-word" fill={looks.inks.words}>
        {word}
      </text>
    </g>
  );
}
