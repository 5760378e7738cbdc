import { capitalized } from '../../../core/text/sentence.ts';
import { terms } from '../../../words/terms.ts';
import { useDeskState } from '../../desk-context.tsx';
import { usePlayerState } from '../../ride/player-context.tsx';
import { useTheme } from '../layers/use-theme.ts';
import { HOOF_PATHS } from '../painters/hoof.ts';

const FEET = [
  { word: capitalized(terms.leftFore), end: 'fore', isLeft: true },
  { word: capitalized(terms.rightFore), end: 'fore', isLeft: false },
  { word: capitalized(terms.leftHind), end: 'hind', isLeft: true },
  { word: capitalized(terms.rightHind), end: 'hind', isLeft: false },
] as const;

/** Which print is of which foot, while prints are shown. */
export function PrintLegend() {
  const theme = useTheme();
  const isRide = useDeskState((state) => state.stage === 'ride');
  const hasPrints = usePlayerState((state) => state.hasPrints);
  if (!isRide || !hasPrints) return null;
  return FEET.map(({ word, end, isLeft }) => (
    <li key={word}>
      <svg width="12" height="12" aria-hidden="true">
        <path
          d={HOOF_PATHS[end]}
          fill={isLeft ? theme.inks.landing : theme.ground}
          stroke={theme.inks.landing}
          strokeWidth="1.2"
        />
      </svg>
      {word}
    </li>
  ));
}
