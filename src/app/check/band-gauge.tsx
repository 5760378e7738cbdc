import type { Finding } from '../../core/checks/check.ts';
import { measuredWords, valueWords } from '../../core/checks/findings/finding-words.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { GAUGE_WIDTH, gaugeLayout } from './gauge.ts';
import { type Behind, quantityOf } from './limit-behind.ts';

const TRACK = 26;
const THICK = 10;
const ROW = 15;

/** What is allowed as a bar, what was measured as a needle over it, and both in numbers. */
export function BandGauge({
  finding,
  behind,
  unit,
}: {
  readonly finding: Finding;
  readonly behind: Behind | undefined;
  readonly unit: LengthUnit;
}) {
  const { measured, allowed } = finding;
  if (measured === undefined || allowed === undefined) return null;
  const quantity = quantityOf(finding, behind);
  const print = (value: number) => valueWords(quantity, value, unit);
  const text = behind === undefined ? print(measured) : measuredWords(behind.limit, measured, unit);
  const gauge = gaugeLayout(measured, allowed, { print, text });
  if (gauge === undefined) return null;
  const { bands, needle } = gauge;
  const below = TRACK + THICK + ROW;
  const height = below + 4 + (bands.some(({ row }) => row === 1) ? ROW : 0);
  return (
    <svg className="gauge" viewBox={`0 0 ${GAUGE_WIDTH} ${height}`} role="img" aria-label={gauge.about}>
      <rect className="gauge-track" x="2" y={TRACK} width={GAUGE_WIDTH - 4} height={THICK} rx="2" />
      {bands.map(({ from, to, label, at, row, isOpenBelow, isOpenAbove }) => (
        <g key={label}>
          <rect className="gauge-band" x={from} y={TRACK} width={to - from} height={THICK} />
          {!isOpenBelow && <path className="gauge-end" d={`M${from} ${TRACK - 3}v${THICK + 6}`} />}
          {!isOpenAbove && <path className="gauge-end" d={`M${to} ${TRACK - 3}v${THICK + 6}`} />}
          <text x={at} y={below + row * ROW} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      <path
        className={`gauge-needle ${finding.weight}`}
        d={`M${needle} ${TRACK + THICK + 1}v${-THICK - 2}l-5 -8h10l-5 8z`}
      />
      <text className="gauge-measured" x={gauge.measuredAt} y="12" textAnchor="middle">
        {gauge.measured}
      </text>
    </svg>
  );
}
