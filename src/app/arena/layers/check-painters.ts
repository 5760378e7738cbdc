import type { Sweep } from '../../../core/checks/geometry/sweep.ts';
import { sweepsShown } from '../../check/sweep-words.ts';
import { visibleFindings } from '../../check/visible-findings.ts';
import { paintNarrowest, paintSweep, paintSweepStep } from '../painters/sweep-mark.ts';
import type { Scene } from './scene.ts';

function sweepsOf({ desk, view }: Scene): readonly Sweep[] {
  const { survey, chosen } = desk;
  return sweepsShown(survey, { chosen, pointed: view.pointed, findings: visibleFindings(desk) });
}

/** The ground that is swept in what is chosen and in what is pointed at. */
export function paintSweeps(context: CanvasRenderingContext2D, scene: Scene): void {
  const { theme, view } = scene;
  for (const sweep of sweepsOf(scene)) paintSweep(context, { camera: view.camera, theme, sweep });
}

/** Where it is narrowest there, and the horse on its way through. */
export function paintClearances(context: CanvasRenderingContext2D, scene: Scene): void {
  const { desk, view, theme } = scene;
  const { camera, sweepStep } = view;
  for (const sweep of sweepsOf(scene)) {
    paintNarrowest(context, desk.survey, { camera, theme, sweep });
    if (sweepStep?.obstacle !== sweep.obstacle) continue;
    paintSweepStep(context, desk.survey, { camera, theme, sweep, step: sweepStep.step });
  }
}
