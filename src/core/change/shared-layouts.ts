import type { Finding } from '../checks/check.ts';
import { findingsOf } from '../checks/checks.ts';
import { unwaivedFindings } from '../checks/results/waived.ts';
import type { ClassEntry, Course, DayClass, Layout, Leg } from '../course/course.ts';
import { changeClass } from '../course/edit-day.ts';
import { addObstacle, freshId } from '../course/edit-obstacles.ts';
import { changeLeg, removeLeg } from '../course/edit-ride.ts';
import { branchLayout, chooseLayout } from '../course/layouts.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { type Survey, survey } from '../survey.ts';
import { classEntryOf } from './day-problem.ts';
import { obstacleLabel } from './difference-words.ts';
import { difficulty } from './difficulty.ts';
import { layoutById, layoutSurvey } from './layout-survey.ts';
import { pairedObstacles } from './paired-obstacles.ts';

/** A layout with less than this share of the difficulty of a class's own is no course for that class. Estimate. */
const LEAST_SHARE = 0.75;

/** A way in which one class can ride the layout of another. */
export interface SharedLayout {
  /** The class that would ride it, and the layout that it would ride. */
  readonly class: string;
  readonly layout: string;
  readonly how: 'as-is' | 'left-out' | 'added';
  /** What is left out of the go, or added. */
  readonly obstacle?: Obstacle;
  readonly says: string;
  /** Of the layout as the class would ride it, and of its own. */
  readonly difficulty: { readonly shared: number; readonly own: number };
  /** The course in which the class rides it: a branch of the layout where something is left out or added. */
  edit(course: Course): Course;
}

/** What is changed in a layout so that another class can ride it. */
interface Variant {
  readonly how: SharedLayout['how'];
  readonly obstacle?: Obstacle;
  change(course: Course): Course;
}

const AS_IS: Variant = { how: 'as-is', change: (course) => course };

/** What speaks against a class riding a layout: what must be mended, and what is above its level. */
function objections(study: Survey): readonly Finding[] {
  return unwaivedFindings(findingsOf(study)).filter(({ weight, check }) => weight === 'must' || check === 'level');
}

/** The layout with one of the legs left out of the go that something speaks against; the obstacle stays where it lies. */
function leftOut({ layout }: Survey, against: readonly Finding[]): readonly Variant[] {
  const faulty = new Set(against.flatMap(({ leg }) => leg ?? []));
  return layout.ride.legs.flatMap((leg, i): readonly Variant[] => {
    const obstacle = layout.obstacles.find(({ id }) => id === leg.obstacle);
    if (obstacle === undefined || !faulty.has(i)) return [];
    return [{ how: 'left-out', obstacle, change: (course) => removeLeg(course, leg.id) }];
  });
}

/** The leg of an obstacle as it is ridden elsewhere, without what belongs to the ground there. */
function riddenAs({ passage, gait, approach, lead }: Leg) {
  return { passage, gait, approach, ...(lead === undefined ? {} : { lead }) };
}

/** The layout with one obstacle of the class's own added in its place, ridden last, where something is missing. */
function added(study: Survey, own: Survey, against: readonly Finding[]): readonly Variant[] {
  if (against.every(({ leg }) => leg !== undefined)) return [];
  return pairedObstacles(study.layout, own.layout).came.flatMap((obstacle): readonly Variant[] => {
    const leg = own.layout.ride.legs.find((each) => each.obstacle === obstacle.id);
    if (leg === undefined) return [];
    const change = (course: Course): Course => {
      const more = addObstacle(course, { ...obstacle, id: freshId(course, obstacle.kind) });
      const last = layoutById(more, more.current).ride.legs.at(-1);
      return last === undefined ? more : changeLeg(more, last.id, riddenAs(leg));
    };
    return [{ how: 'added', obstacle, change }];
  });
}

/** Whether a go shows every gait that another shows. */
function showsGaitsOf({ line: own }: Survey, { line }: Survey): boolean {
  return own.shown.every(
    ({ gait, total }) => total === 0 || line.shown.some((each) => each.gait === gait && each.total > 0),
  );
}

/** A class, and what it rides now. */
interface Rider {
  readonly of: DayClass;
  readonly entry: ClassEntry;
  readonly own: Survey;
}

function sentence({ of, own }: Rider, { layout }: Survey, { how, obstacle }: Variant): string {
  const named = (of: Layout): string => (obstacle === undefined ? '' : obstacleLabel(obstacle, of));
  switch (how) {
    case 'as-is':
      return `${of.title} can ride ${layout.title} as it is, in place of ${own.layout.title}.`;
    case 'left-out':
      return `${of.title} can ride ${layout.title} without ${named(layout)}, in place of ${own.layout.title}.`;
    case 'added':
      return `${of.title} can ride ${layout.title} with ${named(own.layout)} of ${own.layout.title} added at its place.`;
  }
}

/** A branch of a layout with the change made in it, ridden by the class; what was shown is shown still. */
function branched(course: Course, { of }: Rider, { layout, variant }: { layout: Layout; variant: Variant }): Course {
  const shown = course.current;
  const copy = branchLayout(course, { of: layout.id, title: `${layout.title} for ${of.title}` });
  const changed = variant.change(copy);
  return chooseLayout(changeClass(changed, of.id, { layout: changed.current }), shown);
}

function shared(rider: Rider, study: Survey, variant: Variant): SharedLayout | undefined {
  const after = variant === AS_IS ? study : survey(variant.change(study.course));
  if (after.layout.ride.legs.length === 0 || objections(after).length > 0) return undefined;
  if (!showsGaitsOf(rider.own, after)) return undefined;
  const points = { shared: difficulty(after).total, own: difficulty(rider.own).total };
  if (points.shared < LEAST_SHARE * points.own) return undefined;
  const { layout } = study;
  const { how, obstacle } = variant;
  return {
    ...{ class: rider.of.id, layout: layout.id, how },
    ...(obstacle === undefined ? {} : { obstacle }),
    says: sentence(rider, study, variant),
    difficulty: points,
    edit: (course) =>
      how === 'as-is'
        ? changeClass(course, rider.of.id, { layout: layout.id })
        : branched(course, rider, { layout, variant }),
  };
}

/** The first way that is fit: as it is, without one obstacle, with one more; of several the hardest. */
function bestShared(rider: Rider, study: Survey): SharedLayout | undefined {
  const against = objections(study);
  const ways = [() => [AS_IS], () => leftOut(study, against), () => added(study, rider.own, against)];
  for (const variants of ways) {
    const found = variants().flatMap((variant) => shared(rider, study, variant) ?? []);
    const [best] = found.sort((a, b) => b.difficulty.shared - a.difficulty.shared);
    if (best !== undefined) return best;
  }
  return undefined;
}

/**
 * For each class of the day and each layout that another class rides: how it could ride that, if it can without anything
 * that must be mended or is above its level, and if that shows the gaits of its own and asks nearly as much.
 */
export function sharedLayouts(course: Course): readonly SharedLayout[] {
  const classes = course.day?.classes ?? [];
  const ridden = [...new Set(classes.map(({ layout }) => layout))];
  return classes.flatMap((of) => {
    const entry = classEntryOf(of, course);
    const rider = { of, entry, own: layoutSurvey(course, of.layout, entry) };
    return ridden
      .filter((layout) => layout !== of.layout)
      .flatMap((layout) => bestShared(rider, layoutSurvey(course, layout, entry)) ?? []);
  });
}
