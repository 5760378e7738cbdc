import { visibleFindings } from '../../check/visible-findings.ts';
import { paintBadges } from '../painters/badges.ts';
import { paintBends, paintChosen, paintCrossings, paintHandles } from '../painters/handles.ts';
import { paintMarks } from '../painters/marks.ts';
import { paintGap } from '../painters/tape-mark.ts';
import { CHECK_PAINTERS } from './later-painters.ts';
import type { Scene } from './scene.ts';

/** What is chosen with its handles, what is pointed at, the findings, and the snaps of a gesture. */
export function paintOverlay(context: CanvasRenderingContext2D, scene: Scene): void {
  const { desk, view, theme, reach } = scene;
  const { survey, chosen, stage } = desk;
  const { camera, pointed } = view;
  const findings = visibleFindings(desk);
  const sweeps = stage === 'check' && desk.gesture === null ? CHECK_PAINTERS.now() : undefined;
  sweeps?.paintSweeps(context, scene);
  paintChosen(context, survey, { camera, theme, chosen });
  paintHandles(context, { survey, chosen }, { camera, theme, reach: reach / camera.scale });
  if (survey.layout.ride.legs.length > 0 || stage === 'ride') {
    paintBends(context, survey, { camera, theme, chosen, withBends: stage === 'ride' });
  }
  paintCrossings(context, { survey, chosen, stage }, { camera, theme });
  const gap = pointed?.kind === 'gap' ? survey.line.gaps[pointed.gap] : undefined;
  if (gap !== undefined) paintGap(context, gap.ends, { camera, theme });
  paintBadges(context, findings, { camera, theme, pointed });
  sweeps?.paintClearances(context, scene);
  const drawing = { ...theme, inks: { ...theme.inks, measure: theme.guide, faint: theme.guide } };
  for (const guide of desk.guides) paintMarks(context, guide.marks, { camera, theme: drawing });
}
