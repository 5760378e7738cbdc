import { findingsOf } from '../checks/checks.ts';
import { unwaivedFindings } from '../checks/results/waived.ts';
import type { Course } from '../course/course.ts';
import { removeLeg } from '../course/edit-ride.ts';
import { chooseLayout } from '../course/layouts.ts';
import { printDuration } from '../measure/duration.ts';
import { type Survey, survey } from '../survey.ts';
import { andList } from '../text/sentence.ts';
import { classEntryOf } from './day-problem.ts';
import { obstacleLabel } from './difference-words.ts';
import { layoutSurvey } from './layout-survey.ts';

/** An obstacle that takes much of a layout's time and can be left out of its go. */
export interface SlowObstacle {
  readonly layout: string;
  readonly leg: string;
  readonly says: string;
  edit(course: Course): Course;
}

/** So many of the slowest of a layout are tried. */
const TRIED = 3;

function mustIds(study: Survey): ReadonlySet<string> {
  return new Set(unwaivedFindings(findingsOf(study)).flatMap(({ id, weight }) => (weight === 'must' ? [id] : [])));
}

/**
 * For each layout of the day the slowest obstacle without which no class that rides it has more that must be mended. It is
 * left out of the go and stays on the ground.
 */
export function slowestObstacles(course: Course): readonly SlowObstacle[] {
  const classes = course.day?.classes ?? [];
  return [...new Set(classes.map(({ layout }) => layout))].flatMap((layout): readonly SlowObstacle[] => {
    const riding = classes.filter((each) => each.layout === layout);
    const studies = riding.map((each) => layoutSurvey(course, layout, classEntryOf(each, course)));
    const [first] = studies;
    if (first === undefined || first.layout.ride.legs.length < 2) return [];
    const slowest = first.classClock.legs.toSorted((a, b) => b.own - a.own).slice(0, TRIED);
    for (const { leg: index, own } of slowest) {
      const leg = first.layout.ride.legs[index];
      const obstacle = first.layout.obstacles.find(({ id }) => id === leg?.obstacle);
      if (leg === undefined || obstacle === undefined) continue;
      const isFit = studies.every((study) => {
        const known = mustIds(study);
        return [...mustIds(survey(removeLeg(study.course, leg.id)))].every((id) => known.has(id));
      });
      if (!isFit) continue;
      const whom = andList(riding.map(({ title }) => title));
      const label = obstacleLabel(obstacle, first.layout);
      return [
        {
          layout,
          leg: leg.id,
          says: `${label} of ${first.layout.title}, ${printDuration(own)} a go, left out for ${whom}.`,
          edit: (of) => chooseLayout(removeLeg(chooseLayout(of, layout), leg.id), of.current),
        },
      ];
    }
    return [];
  });
}
