import type { Band } from '../../core/checks/check.ts';
import type { Metres } from '../../core/measure/quantity.ts';
import { useLooks } from '../arena/layers/layers.tsx';
import { onGauge, type RibbonGap } from './track.ts';

/** A value's place in its band: the band is the thick middle third. */
export function Gauge({
  band,
  value,
  fit,
  left,
  long,
  y,
}: {
  readonly band: Band;
  readonly value: Metres;
  readonly fit: RibbonGap['fit'];
  readonly left: number;
  readonly long: number;
  readonly y: number;
}) {
  const looks = useLooks();
  if (long < 6) return null;
  const colour = { good: looks.inks.measure, poor: looks.should, off: looks.must }[fit];
  const wide = Math.max(long - 4, 4);
  const from = left + (long - wide) / 2;
  return (
    <g>
      <rect x={from} y={y - 1} width={wide} height="2" fill={looks.inks.faint} />
      <rect
        x={from + wide / 3}
        y={y - 2.5}
        width={wide / 3}
        height="5"
        rx="1"
        fill={looks.inks.measure}
        opacity="0.45"
      />
      <circle cx={from + wide * onGauge(band, value)} cy={y} r="3.6" fill={colour} stroke={looks.ground} />
    </g>
  );
}
