import type { Band } from '../../core/checks/check.ts';
import type { Metres } from '../../core/measure/quantity.ts';
import { useTheme } from '../arena/layers/use-theme.ts';
import { onGauge, type StripGap } from './track.ts';

/** A value's place in its band: the band is the thick middle third. */
export function GapGauge({
  band,
  value,
  fit,
  left,
  long,
  y,
}: {
  readonly band: Band;
  readonly value: Metres;
  readonly fit: StripGap['fit'];
  readonly left: number;
  readonly long: number;
  readonly y: number;
}) {
  const theme = useTheme();
  if (long < 6) return null;
  const colour = { good: theme.inks.measure, poor: theme.should, off: theme.must }[fit];
  const wide = Math.max(long - 4, 4);
  const from = left + (long - wide) / 2;
  return (
    <g>
      <rect x={from} y={y - 1} width={wide} height="2" fill={theme.inks.faint} />
      <rect
        x={from + wide / 3}
        y={y - 2.5}
        width={wide / 3}
        height="5"
        rx="1"
        fill={theme.inks.measure}
        opacity="0.45"
      />
      <circle cx={from + wide * onGauge(band, value)} cy={y} r="3.6" fill={colour} stroke={theme.ground} />
    </g>
  );
}
