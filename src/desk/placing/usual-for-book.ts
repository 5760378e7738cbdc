/** What is usual for a new obstacle under the rule book of the course. */
import { isInBand } from '../../core/checks/rulebooks/band.ts';
import { INCH } from '../../core/measure/quantity.ts';
import { buildKind, usualValues } from '../../core/obstacles/build.ts';
import type { ObstacleKind } from '../../core/obstacles/obstacle.ts';
import { GAP_ITSELF } from '../../core/obstacles/traits.ts';
import type { Values } from '../../core/pieces/params.ts';
import type { DeskState } from '../desk.ts';

/**
 * The values that were asked for, with a gap inside the band that the book prints for the obstacle's gait, where nobody
 * asked for a gap and the usual one is outside: the nearest whole inch or two centimetres inside.
 */
export function usualForBook(
  { course, bandAsked }: Pick<DeskState, 'course' | 'bandAsked'>,
  kind: ObstacleKind,
  asked: Values,
): Values {
  // Only where the parameter is the taped gap itself can a band for gaps be set.
  const key = kind.gapParam === GAP_ITSELF ? kind.gapParam.param : undefined;
  if (key === undefined || Object.hasOwn(asked, key)) return asked;
  const values = usualValues(kind, asked);
  const gap = values[key];
  const band = bandAsked(['gap', values.gait, 'recommended'].join('.')) ?? bandAsked(['gap', values.gait].join('.'));
  if (band === undefined || typeof gap !== 'number') return asked;
  if (isInBand(band, gap)) return asked;
  const step = course.unit === 'ft' ? INCH : 0.02;
  const { least = 0, most = Number.POSITIVE_INFINITY } = band;
  const inside = gap < least ? Math.ceil(least / step - 1e-9) * step : Math.floor(most / step + 1e-9) * step;
  const suited = { ...asked, [key]: inside };
  return isInBand(band, inside) && buildKind(kind, suited).kind === 'built' ? suited : asked;
}
