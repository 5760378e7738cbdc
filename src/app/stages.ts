import type { Stage } from '../desk/input.ts';
import { appWords } from '../words/app.ts';
import { terms } from '../words/terms.ts';
import type { Breakpoint } from './breakpoint.ts';
import { CHECKS_PART } from './check/later-checks.ts';
import { INSTRUMENTS_PART } from './later-instruments.ts';
import { lazyComponent } from './lazy-panel.tsx';
import type { Panel } from './panels.tsx';

// A course opens with its arena; the panels come after that, those of Set first.
// What is added keeps to the rule book, which comes with the checks, and snaps.
const PalettePanel = lazyComponent(() =>
  Promise.all([import('./set/palette.tsx'), CHECKS_PART.load(), INSTRUMENTS_PART.load()]).then(
    ([module]) => module.PalettePanel,
  ),
);
const TruckPanel = lazyComponent(() => import('./set/truck.tsx').then((module) => module.TruckPanel));
const InspectorPanel = lazyComponent(() =>
  import('./set/obstacle-inspector.tsx').then((module) => module.InspectorPanel),
);
const ObstacleListPanel = lazyComponent(() =>
  import('./set/obstacle-list.tsx').then((module) => module.ObstacleListPanel),
);
const StripPanel = lazyComponent(() => import('./strip/strip.tsx').then((module) => module.StripPanel));
const OrderPanel = lazyComponent(() => import('./ride/order.tsx').then((module) => module.OrderPanel));
const LegPanel = lazyComponent(() => import('./ride/leg.tsx').then((module) => module.LegPanel));
const ClockPanel = lazyComponent(() => import('./ride/clock.tsx').then((module) => module.ClockPanel));
const ShownPanel = lazyComponent(() => import('./ride/shown.tsx').then((module) => module.ShownPanel));
const RuleBookPanel = lazyComponent(() => import('./check/rulebook.tsx').then((module) => module.RuleBookPanel));
const HorsePanel = lazyComponent(() => import('./check/horse.tsx').then((module) => module.HorsePanel));
const FindingsPanel = lazyComponent(() => import('./check/findings.tsx').then((module) => module.FindingsPanel));
const ClassPanel = lazyComponent(() => import('./post/class-form.tsx').then((module) => module.ClassPanel));
const EntriesPanel = lazyComponent(() => import('./go/entries-panel.tsx').then((module) => module.EntriesPanel));
const PaperPanel = lazyComponent(() => import('./post/paper.tsx').then((module) => module.PaperPanel));
const WordsPanel = lazyComponent(() => import('./post/instruction-words.tsx').then((module) => module.WordsPanel));
const SetOutPanel = lazyComponent(() => import('./setout/setout-panel.tsx').then((module) => module.SetOutPanel));
const ScorePanel = lazyComponent(() => import('./score/score-panel.tsx').then((module) => module.ScorePanel));
const LayoutsPanel = lazyComponent(() => import('./change/layouts.tsx').then((module) => module.LayoutsPanel));
const ComparePanel = lazyComponent(() => import('./change/compare-panel.tsx').then((module) => module.ComparePanel));
const DayPanel = lazyComponent(() => import('./day/day-panel.tsx').then((module) => module.DayPanel));
const ChangeOverPanel = lazyComponent(() =>
  import('./change/change-over-panel.tsx').then((module) => module.ChangeOverPanel),
);

const PANELS: Readonly<Record<Stage, readonly Panel[]>> = {
  set: [
    { id: 'palette', title: appWords.add, side: 'left', body: PalettePanel, grows: true },
    { id: 'truck', title: appWords.truck, side: 'left', body: TruckPanel },
    { id: 'tape', title: appWords.tape, side: 'right', body: InspectorPanel, grows: true, opensOnChoice: true },
    { id: 'obstacles', title: appWords.obstacles, side: 'right', body: ObstacleListPanel },
  ],
  ride: [
    { id: 'order', title: terms.orderOfObstacles, short: appWords.order, side: 'left', body: OrderPanel, grows: true },
    {
      id: 'leg',
      title: appWords.howItIsRidden,
      short: appWords.how,
      side: 'right',
      body: LegPanel,
      grows: true,
      opensOnChoice: true,
    },
    { id: 'clock', title: appWords.time, side: 'left', body: ClockPanel, grows: true },
    { id: 'shown', title: appWords.gaitsShown, short: appWords.gaits, side: 'right', body: ShownPanel, isRead: true },
  ],
  check: [
    { id: 'rulebook', title: appWords.ruleBook, side: 'left', body: RuleBookPanel, grows: true },
    { id: 'horse', title: appWords.horse, side: 'left', body: HorsePanel },
    { id: 'findings', title: appWords.findings, side: 'right', body: FindingsPanel, grows: true },
  ],
  post: [
    { id: 'class', title: appWords.class, side: 'left', body: ClassPanel, grows: true, isTab: true },
    { id: 'entries', title: terms.entries, side: 'left', body: EntriesPanel, grows: true, isTab: true },
    { id: 'set-out', title: appWords.setOut, side: 'left', body: SetOutPanel, grows: true, isTab: true },
    { id: 'score', title: appWords.score, side: 'left', body: ScorePanel, grows: true, isTab: true },
    { id: 'paper', title: appWords.paper, side: 'right', body: PaperPanel },
    { id: 'words', title: appWords.instructions, short: appWords.words, side: 'right', body: WordsPanel, grows: true },
  ],
  change: [
    { id: 'layouts', title: appWords.layouts, side: 'left', body: LayoutsPanel, grows: true, isTab: true },
    { id: 'day', title: appWords.day, side: 'left', body: DayPanel, grows: true, isTab: true },
    { id: 'compare', title: appWords.compare, side: 'right', body: ComparePanel, grows: true, isTab: true },
    {
      id: 'change-over',
      title: 'Change-over',
      short: appWords.crew,
      side: 'right',
      body: ChangeOverPanel,
      grows: true,
      isTab: true,
    },
  ],
};

/** On a small screen the findings come first at Check, and the strip is one more tab. */
export function panelsOf(stage: Stage, arrangement: Breakpoint): readonly Panel[] {
  const panels = stage === 'check' && arrangement !== 'wide' ? [...PANELS.check].sort(findingsFirst) : PANELS[stage];
  if (arrangement !== 'narrow' || stage === 'post') return panels;
  return [
    ...panels,
    { id: 'line', title: appWords.line, side: 'right', body: StripPanel, grows: true, staysOnChoice: true },
  ];
}

function findingsFirst(a: Panel, b: Panel): number {
  return Number(b.id === 'findings') - Number(a.id === 'findings');
}
