import { useComparedState } from '../../change/compared.ts';
import { useShownPlan } from '../../change/shown-plan.tsx';
import { useViewState } from '../../view.ts';
import { paintCarries } from '../painters/paint-carries.ts';
import { PaintedLayer } from './painted-layer.tsx';
import { useTheme } from './use-theme.ts';

/** What a crew carries where, at Change. */
export function CarriesLayer() {
  const theme = useTheme();
  const { camera, size } = useViewState((state) => state);
  const focused = useComparedState((state) => state.focusedCarry);
  const shown = useShownPlan();
  if (shown === null) return null;
  return <PaintedLayer draw={(context) => paintCarries(context, shown.plan, { camera, theme, size, focused })} />;
}
