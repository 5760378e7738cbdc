import type { Survey } from '../../survey.ts';
import { capitalized } from '../../text/sentence.ts';
import type { Check, RawFinding } from '../check.ts';
import { obstacleWords } from '../findings/thing-words.ts';

interface Ban {
  readonly limit: string;
  readonly what: string;
  /** What a designer calls such a thing. */
  readonly named: RegExp;
}

/** The drawing has no tyres and no fire, so the names that the designer gave are the only evidence. */
const BANS: readonly Ban[] = [
  { limit: 'forbidden.rolling', what: 'poles that roll', named: /\broll(s|ing)?\b|\bloose pole/i },
  { limit: 'forbidden.tyres', what: 'tyres', named: /\bt[yi]res?\b/i },
  {
    limit: 'forbidden.animals',
    what: 'live animals',
    named: /\b(live|llamas?|alpacas?|sheep|goats?|calf|calves|cattle|dogs?|chickens?)\b/i,
  },
  { limit: 'forbidden.hides', what: 'hides', named: /\b(hides?|pelts?|furs?)\b/i },
  { limit: 'forbidden.plastic', what: 'plastic pipes and poles', named: /\b(pvc|plastic)\b/i },
  {
    limit: 'forbidden.see-saw',
    what: 'see-saws and moving bridges',
    named: /\b(see-?saw|teeter|moving bridge|swinging bridge)/i,
  },
  { limit: 'forbidden.moving-water', what: 'water with moving parts', named: /\b(floating|fountain|sprinkler)/i },
  {
    limit: 'forbidden.fire',
    what: 'fire and smoke',
    named: /\b(fire|flares?|torch(es)?|dry ice|smoke|extinguisher)\b/i,
  },
];

/** The designer's own words about an obstacle: its name, and what its leg prints. */
function wordsOf(survey: Survey, id: string): string {
  const { obstacles, ride } = survey.layout;
  const name = obstacles.find((each) => each.id === id)?.name ?? '';
  return [name, ...ride.legs.flatMap((leg) => (leg.obstacle === id ? [leg.words ?? ''] : []))].join(' ');
}

export const forbidden: Check = {
  id: 'forbidden',
  says: 'Nothing stands in the arena that the book forbids.',
  because: 'What moves, burns, smells or gives way frightens horses, and a fright there is the fault of the course.',
  weight: 'must',
  limits: BANS.map(({ limit }) => limit),
  findings: (survey, limits) =>
    survey.obstacles.flatMap(({ obstacle: { id, pose } }) => {
      const words = wordsOf(survey, id);
      if (words.trim() === '') return [];
      return BANS.flatMap((ban): RawFinding[] => {
        const limit = limits[ban.limit];
        if (limit === undefined || !ban.named.test(words)) return [];
        const leg = survey.layout.ride.legs.findIndex((each) => each.obstacle === id);
        return [
          {
            id: `${ban.limit.replace('.', ':')}:${id}`,
            check: 'forbidden',
            weight: limit.weight ?? forbidden.weight,
            says: `${capitalized(obstacleWords(survey, id))} seems to be one of ${ban.what}, by its name; the book forbids them.`,
            because: forbidden.because,
            at: { x: pose.x, y: pose.y },
            ...(leg < 0 ? {} : { leg }),
            keys: [id],
            source: limit.source,
            proposals: [],
          },
        ];
      });
    }),
};
