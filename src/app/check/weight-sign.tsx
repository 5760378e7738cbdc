import type { Weight } from '../../core/checks/check.ts';

const OUTLINES: Readonly<Record<Weight, string>> = {
  must: 'M6.6 1h6.8L19 6.6v6.8L13.4 19H6.6L1 13.4V6.6z',
  should: 'M10 1 19.5 18H.5z',
  note: 'M10 1a9 9 0 1 0 0 18 9 9 0 0 0 0-18z',
};

/** The same sign as in the arena: octagon, triangle, disc; hollow where the finding is waived. */
export function WeightSign({ weight, hollow }: { readonly weight: Weight; readonly hollow?: boolean }) {
  return (
    <svg
      viewBox="0 0 20 20"
      width="18"
      height="18"
      aria-hidden="true"
      className={`weight-sign ${weight} ${hollow === true ? 'is-hollow' : ''}`}
    >
      <path d={OUTLINES[weight]} />
      <text className="weight-letter" x="10" y={weight === 'should' ? 16 : 14.5} textAnchor="middle">
        {weight === 'note' ? 'i' : '!'}
      </text>
    </svg>
  );
}
