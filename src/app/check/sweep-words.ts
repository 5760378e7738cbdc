import type { Finding } from '../../core/checks/check.ts';
import { pieceWords } from '../../core/checks/findings/thing-words.ts';
import type { Sweep } from '../../core/checks/geometry/sweep.ts';
import { printLength } from '../../core/measure/length.ts';
import type { Survey } from '../../core/survey.ts';
import { checkWords } from '../../words/check.ts';
import type { Pointed } from '../view.ts';
import { SWEEPS_PART } from './later-checks.ts';

/** Checks of how wide a place is in which a horse backs or turns: how it goes round there belongs beside them. */
const ABOUT_ROOM: ReadonlySet<string> = new Set(['back-clearance', 'back-width', 'back-raised-width', 'box-side']);

/** `4 1/4" to spare at pole 2 of the back-through L (obstacle 4)`. */
export function clearanceWords({ clear, key }: Sweep, survey: Survey): string {
  const room = printLength(Math.abs(clear), survey.course.unit);
  const piece = pieceWords(survey, key);
  return clear < 0 ? checkWords.tooLittleAt(room, piece) : checkWords.toSpareAt(room, piece);
}

/** The sweep of an obstacle where it is narrowest; absent where nobody backs or turns in it, or sweeps are not loaded yet. */
export function narrowestSweep(obstacle: string, survey: Survey): Sweep | undefined {
  return SWEEPS_PART.now()
    ?.sweepsOf(survey)
    .filter((sweep) => sweep.obstacle === obstacle)
    .reduce<Sweep | undefined>(
      (least, each) => (least === undefined || each.clear < least.clear ? each : least),
      undefined,
    );
}

/** Whose sweep is drawn for a finding; absent: nobody's. */
function sweptObstacle({ check, keys }: Finding): string | undefined {
  return ABOUT_ROOM.has(check) ? keys[0]?.split('/')[0] : undefined;
}

/** The sentence in the card: how much room the assumed horse has there. */
export function sweepFor(finding: Finding, survey: Survey): string | undefined {
  const obstacle = sweptObstacle(finding);
  const sweep = obstacle === undefined ? undefined : narrowestSweep(obstacle, survey);
  if (sweep === undefined) return undefined;
  const doing = sweep.move === 'turn' ? checkWords.turning : checkWords.backing;
  return checkWords.sweepRead(doing, survey.horse.title.toLowerCase(), clearanceWords(sweep, survey));
}

/** The sweeps to draw: of the obstacles that are chosen, and of what is pointed at. */
export function sweepsShown(
  survey: Survey,
  {
    chosen,
    pointed,
    findings,
  }: { readonly chosen: readonly string[]; readonly pointed: Pointed; readonly findings: readonly Finding[] },
): readonly Sweep[] {
  const finding = pointed?.kind === 'finding' ? findings.find(({ id }) => id === pointed.id) : undefined;
  const ids = [...chosen.map((key) => key.split('/')[0]), finding === undefined ? undefined : sweptObstacle(finding)];
  return [...new Set(ids)].flatMap((id) => (id === undefined ? [] : (narrowestSweep(id, survey) ?? [])));
}
