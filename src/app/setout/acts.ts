/** A plan of set-out as the companion shows it: one thing to do at a time. */
import type { ObservationKind } from '../../core/constraints/constraint.ts';
import type { Observation, SetOut, SetOutPart, SetOutStep } from '../../core/setout/setout.ts';
import type { PartNames } from '../../core/setout/words/place-words.ts';
import { partNames, partTitle, stepWords } from '../../core/setout/words/setout-words.ts';
import type { Survey } from '../../core/survey.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { setoutWords } from '../../words/setout.ts';
import { partPrint } from './drawing-print.ts';

/** One thing to do: an observation of a step, what is done when it lies, or one of its checks. */
export interface Act {
  /** Unique in the plan, and the same for the same place in it: `fan-1/pole-2:tape-1`. */
  readonly id: string;
  readonly kind: 'tape' | 'last' | 'check';
  readonly step: SetOutStep;
  /** Absent: nothing is observed. */
  readonly of?: Observation;
  /** "Tape 1 of 3" */
  readonly head: string;
  /** The largest on the screen: what the tape reads, or a word where it reads nothing. */
  readonly figure: string;
  /** What the figure measures, in words; the whole sentence where there is no figure. */
  readonly measure: string;
  /** Whether the figure is a length that the tape shows. */
  readonly isRead: boolean;
  readonly says: readonly string[];
  /** That the place is badly determined, and what would be better. */
  readonly note?: string;
  /** How far off a check may be, in words. */
  readonly within?: string;
}

/** A step with its sentences. */
export interface StepActs {
  readonly step: SetOutStep;
  /** What is laid, what is held. */
  readonly lead: readonly string[];
  readonly acts: readonly Act[];
}

/** A part with all that is done in it. */
export interface PartActs {
  readonly part: SetOutPart;
  readonly names: PartNames;
  readonly title: string;
  /** By which its ticks are remembered. */
  readonly print: string;
  readonly steps: readonly StepActs[];
  readonly acts: readonly Act[];
}

/** What stands in large letters where the tape has nothing to read. */
const WORDS: Partial<Record<ObservationKind, string>> = {
  level: setoutWords.level,
  'in-line': setoutWords.inLine,
  square: setoutWords.square,
  against: setoutWords.against,
  ahead: setoutWords.squareAcross,
};

function wordOf({ kind, reading }: Observation): string {
  return kind === 'square' && Math.abs(reading) > 1e-4 ? setoutWords.angle : (WORDS[kind] ?? '');
}

function stepActs(names: PartNames, step: SetOutStep): StepActs {
  const { lay, hold, tapes, turn, raise, secure, checks, weak } = stepWords(names, step);
  const act = (kind: Act['kind'], number: number) => ({ id: `${step.piece}:${kind}-${number}`, kind, step });
  const taped = step.observations.map((of, i): Act => {
    const { says, figure, measure } = tapes[i] ?? { says: '', measure: '' };
    return {
      ...act('tape', i + 1),
      of,
      head: setoutWords.tapeOf(i + 1, step.observations.length),
      figure: figure?.replace('−', '') ?? wordOf(of),
      isRead: figure !== undefined,
      measure,
      says: [says],
      // Said once, with the last tape.
      ...(i === step.observations.length - 1 && weak !== undefined && { note: weak }),
    };
  });
  const endings = [turn, ...raise, secure].filter((each) => each !== undefined);
  const last: readonly Act[] =
    endings.length === 0
      ? []
      : [
          {
            ...act('last', 1),
            head: setoutWords.last,
            figure: setoutWords.makeItStay,
            isRead: false,
            measure: endings.join(' '),
            says: endings,
          },
        ];
  const checked = step.checks.map((of, i): Act => {
    const { says, figure, measure, within } = checks[i] ?? { says: '', measure: '', within: '' };
    return {
      ...act('check', i + 1),
      of,
      head: setoutWords.checkOf(i + 1, step.checks.length),
      figure: figure?.replace('−', '') ?? wordOf(of),
      isRead: figure !== undefined,
      measure,
      says: [says],
      within,
    };
  });
  return {
    step,
    lead: [lay, ...(hold === undefined ? [] : [hold])],
    acts: [...taped, ...last, ...checked],
  };
}

/** All parts of a plan, or those that hold one of these obstacles. */
export function partActs(survey: Survey, plan: SetOut, obstacles: readonly string[] = []): readonly PartActs[] {
  const wanted = plan.parts.filter((part) => part.obstacles.some((id) => obstacles.includes(id)));
  return (wanted.length === 0 ? plan.parts : wanted).map((part): PartActs => {
    const names = partNames(survey, plan, part);
    const steps = part.steps.map((step) => stepActs(names, step));
    return {
      part,
      names,
      title: capitalized(partTitle(names)),
      print: partPrint(part),
      steps,
      acts: steps.flatMap(({ acts }) => acts),
    };
  });
}

/** Where an act stands: its part and its step by index, and the acts before and after it. */
export interface ActPlace {
  readonly part: number;
  readonly step: number;
  readonly act: Act;
  readonly before?: string;
  readonly after?: string;
}

/** The place of an act by its id; the first act where there is no such, undefined where there is none at all. */
export function actPlace(parts: readonly PartActs[], id: string | undefined): ActPlace | undefined {
  const all = parts.flatMap(({ steps }, part) =>
    steps.flatMap(({ acts }, step) => acts.map((act) => ({ part, step, act }))),
  );
  const at = Math.max(
    0,
    all.findIndex(({ act }) => act.id === id),
  );
  const here = all[at];
  if (here === undefined) return undefined;
  const [before, after] = [all[at - 1]?.act.id, all[at + 1]?.act.id];
  return { ...here, ...(before !== undefined && { before }), ...(after !== undefined && { after }) };
}
