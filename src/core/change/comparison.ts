import type { Course } from '../course/course.ts';
import { printDuration, printMinutes } from '../measure/duration.ts';
import { printLength } from '../measure/length.ts';
import { FOOT, type LengthUnit } from '../measure/quantity.ts';
import { layoutSurvey } from './layout-survey.ts';
import { MEASURES, type Measure } from './measures.ts';

/** One layout by one measure. */
export interface MeasuredValue {
  readonly layout: string;
  readonly value: number | null;
  /** As people read it. */
  readonly text: string;
  /** Better than every layout that reads otherwise; never where all read alike or neither is better. */
  readonly best: boolean;
}

/** One measure over all layouts that are compared. */
export interface ComparedMeasure {
  readonly measure: Measure;
  readonly values: readonly MeasuredValue[];
  /** Whether the layouts differ in it, as people read it. */
  readonly differs: boolean;
}

/** Layouts side by side. */
export interface Comparison {
  readonly layouts: readonly { readonly id: string; readonly title: string }[];
  readonly measures: readonly ComparedMeasure[];
}

/** From here on nobody compares inches, metres. */
const LONG = 10;

function roundLength(value: number, lengths: LengthUnit): string {
  return lengths === 'ft' ? `${Math.round(value / FOOT)}'` : `${value.toFixed(1)} m`;
}

/** A value of a measure in the words of a table; a dash where there is nothing to measure. */
export function measureText({ unit }: Pick<Measure, 'unit'>, value: number | null, lengths: LengthUnit): string {
  if (value === null) return '–';
  switch (unit) {
    case 'length':
      return value < LONG ? printLength(value, lengths) : roundLength(value, lengths);
    case 'seconds':
      return printDuration(value);
    case 'minutes':
      return printMinutes(value);
    case 'fraction':
      return `${(100 * value).toFixed(1)} %`;
    case 'points':
      return value.toFixed(1);
    case 'count':
      return String(value);
  }
}

function comparedMeasure(measure: Measure, course: Course, layouts: readonly string[]): ComparedMeasure {
  const read = layouts.map((layout) => {
    const value = measure.value(layoutSurvey(course, layout));
    return { layout, value, text: measureText(measure, value, course.unit) };
  });
  const differs = new Set(read.map(({ text }) => text)).size > 1;
  const known = read.flatMap(({ value }) => (value === null ? [] : [value]));
  const top = measure.better === 'less' ? Math.min(...known) : Math.max(...known);
  // What reads the same is as good.
  const topText = measureText(measure, known.length === 0 ? null : top, course.unit);
  const isRanked =
    measure.better !== null && new Set(known.map((each) => measureText(measure, each, course.unit))).size > 1;
  const values = read.map((each) => ({ ...each, best: isRanked && each.value !== null && each.text === topText }));
  return { measure, values, differs };
}

/**
 * The layouts by every measure, or by those given, with the best marked. The same values as the surveys of the layouts
 * give. Throws when a layout is not in the course.
 */
export function comparison(
  course: Course,
  layouts: readonly string[],
  measures: readonly Measure[] = MEASURES,
): Comparison {
  return {
    layouts: layouts.map((id) => {
      const { layout } = layoutSurvey(course, id);
      return { id, title: layout.title };
    }),
    measures: measures.map((measure) => comparedMeasure(measure, course, layouts)),
  };
}
