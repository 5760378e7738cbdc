import type { Grip } from '../../core/constraints/constraint.ts';
import { gap } from '../../core/constraints/gap.ts';
import { obstacleOf } from '../../core/course/ids.ts';
import { isDriving, type ResolvedConstraint } from '../../core/course/resolved-constraints.ts';
import type { Survey } from '../../core/survey.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { deskNames } from '../../words/desk-names.ts';
import { nameOf } from '../names.ts';

/** Parts of a length that people have words for. */
const PARTS: readonly (readonly [number, string])[] = [
  [0, deskNames.atTheEnds],
  [1, deskNames.atTheEnds],
  [1 / 2, deskNames.inTheMiddle],
  [1 / 3, deskNames.atOneThird],
  [2 / 3, deskNames.atTwoThirds],
  [1 / 4, deskNames.atOneQuarter],
  [3 / 4, deskNames.atThreeQuarters],
];

/** Where along a piece: "in the middle", "at 62%". */
export function fractionWords(at = 0.5): string {
  return PARTS.find(([part]) => Math.abs(part - at) < 1e-6)?.[1] ?? deskNames.at(Math.round(at * 100));
}

/** "pole 2", where the obstacle is known; with its obstacle where it is not. */
function gripWords(survey: Survey, grip: Grip, isOne: boolean): string {
  if ('wall' in grip) return deskNames.theWall(grip.wall);
  const name = nameOf(survey, grip.piece);
  if (!isOne) return name;
  const id = grip.piece.slice(grip.piece.indexOf('/') + 1).replaceAll('-', ' ');
  // A piece with a name of its own, such as the south pole of a box, goes by it.
  return /\d$/.test(id) ? id : `${id} ${kindWord(survey, grip.piece)}`.replace(/^(\w+) \1$/, '$1');
}

function kindWord(survey: Survey, key: string): string {
  return survey.pieces.find((piece) => piece.key === key)?.kind.title.toLowerCase() ?? '';
}

function isInside(holdings: readonly ResolvedConstraint[]): boolean {
  const owners = holdings.flatMap(({ grips }) =>
    grips.flatMap((grip) => ('piece' in grip ? [obstacleOf(grip.piece)] : [])),
  );
  return new Set(owners).size < 2 && holdings.every(({ owner }) => owner !== undefined);
}

/** The sentence of one constraint, or the summary of several alike, and a short name. `text` is the printed value. */
export function constraintWords(
  survey: Survey,
  holdings: readonly ResolvedConstraint[],
  text: string,
): { readonly says: string; readonly name: string } {
  const isOne = isInside(holdings);
  const [first, second] = holdings;
  if (first === undefined) throw new Error('constraintWords: got no constraints');
  const { kind, grips } = first;
  const names = grips.map((grip) => gripWords(survey, grip, isOne));
  const place = placeOf(first);
  const between = names.join(' to ');
  if (second === undefined) {
    const plain = capitalized(kind.sentence(names, text));
    const says = place === '' ? plain : plain.replace(/\.$/, ` ${place}.`);
    const measures = isDriving(first) ? says : deskNames.onlyMeasured(capitalized(`${kind.title}, ${between}`), text);
    return { says: measures, name: `${kind.title}${place === '' ? '' : ` ${place}`}, ${between}` };
  }
  const title = deskNames.alike(kind.title, place === '' ? '' : ` ${place}`, holdings.length);
  const pairs = holdings.map((each) => each.grips.map((grip) => gripWords(survey, grip, isOne)).join(' to '));
  return { says: `${title}: ${pairs.join(', ')}.`, name: title };
}

/** Where along the pieces a gap is taped, where that tells it from another; empty for kinds that have one place. */
function placeOf({ kind, grips }: ResolvedConstraint): string {
  if (kind !== gap) return '';
  const places = grips.map((grip) => ('wall' in grip ? '' : fractionWords(grip.at)));
  return new Set(places).size === 1 ? (places[0] ?? '') : '';
}
