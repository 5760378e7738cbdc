import type { Survey } from '../../survey.ts';
import { andList } from '../../text/sentence.ts';
import type { GapError } from '../setout.ts';
import { namedPlace, namedUnit, type PartNames, partPieceWords } from './place-words.ts';
import { readingWords } from './reading-words.ts';
import { gapPlaceWords } from './setout-words.ts';
import { tapedBand } from './taped-band.ts';

/** Gaps that are as long, at the same place of their poles, and have to stay in the same band. */
export interface GapGroup {
  /** "6' 0"", inside to inside. */
  readonly figure: string;
  /** "5' 9" to 6' 3"". */
  readonly band: string;
  /** The book or practice asks for it; else it is kept near the plan. */
  readonly isAsked: boolean;
  /** Where they are taped, all of them: "4' 0" in from ends B–D and D–F". */
  readonly where: string;
  readonly isRidden: boolean;
  readonly gaps: readonly GapError[];
}

/** Where one gap is taped, in two parts: what is the same for its like, and its own ends or poles. */
interface GapPlace {
  readonly how: string;
  readonly pair: string;
}

function gapPlace(names: PartNames, gap: GapError): GapPlace {
  const [a, b] = gap.keys.map((piece, i) => namedPlace(names, { piece, at: gap.at[i] ?? 0.5 }));
  const [first, second] = gap.keys.map((key) => partPieceWords(names, key));
  if (a?.kind === 'end' && b?.kind === 'end') return { how: 'at ends', pair: `${a.letter}–${b.letter}` };
  if (a?.kind === 'middle' && b?.kind === 'middle') {
    const numbers = [first, second].map((words) => /^pole (\d+)$/.exec(words ?? '')?.[1]);
    const pair = numbers.every(Boolean) ? `poles ${numbers.join('–')}` : `${first} to ${second}`;
    return { how: 'at the middles of', pair };
  }
  if (a?.kind === 'along' && b?.kind === 'along') {
    const [from, to] = [a, b].map((each) => readingWords(each.from, namedUnit(names)));
    if (from === to && a.stripe === b.stripe) {
      const stripe = a.stripe === undefined ? '' : ` (${a.stripe})`;
      return { how: `${from} in${stripe} from ends`, pair: `${a.letter}–${b.letter}` };
    }
  }
  return { how: '', pair: gapPlaceWords(names, gap).replace(', inside to inside', '') };
}

/** Gaps in groups, those on the line of travel first; each gap stands in one of them. */
export function gapGroups(names: PartNames, survey: Survey, gaps: readonly GapError[]): readonly GapGroup[] {
  const unit = namedUnit(names);
  const groups = new Map<
    string,
    { told: Omit<GapGroup, 'where' | 'gaps'>; how: string; pairs: string[]; gaps: GapError[] }
  >();
  for (const gap of gaps) {
    const { least, most, from } = tapedBand(survey, gap);
    const { how, pair } = gapPlace(names, gap);
    const figure = readingWords(gap.plan, unit);
    const band = `${readingWords(least, unit)} to ${readingWords(most, unit)}`;
    const told = { figure, band, isAsked: from === 'limit', isRidden: gap.isRidden };
    const key = JSON.stringify([told, how]);
    const group = groups.get(key) ?? { told, how, pairs: [], gaps: [] };
    group.pairs.push(pair);
    group.gaps.push(gap);
    groups.set(key, group);
  }
  return [...groups.values()]
    .map(
      ({ told, how, pairs, gaps: own }): GapGroup => ({ ...told, where: `${how} ${andList(pairs)}`.trim(), gaps: own }),
    )
    .toSorted((a, b) => Number(b.isRidden) - Number(a.isRidden));
}
