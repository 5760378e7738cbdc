import type { Stage } from '../desk/desk.ts';
import type { Arrangement } from './breakpoint.ts';
import { later } from './lazy-panel.ts';
import type { Panel } from './panels.tsx';
import { TapePanel } from './set/obstacle-inspector.tsx';
import { ObstacleListPanel } from './set/obstacle-list.tsx';
import { PalettePanel } from './set/palette.tsx';
import { TruckPanel } from './set/truck.tsx';
import { StripPanel } from './strip/strip.tsx';

// A course opens at Set; what the other stages show comes after it.
const OrderPanel = later(() => import('./ride/order.tsx').then((room) => room.OrderPanel));
const LegPanel = later(() => import('./ride/leg.tsx').then((room) => room.LegPanel));
const ClockPanel = later(() => import('./ride/clock.tsx').then((room) => room.ClockPanel));
const ShownPanel = later(() => import('./ride/shown.tsx').then((room) => room.ShownPanel));
const RuleBookPanel = later(() => import('./check/rulebook.tsx').then((room) => room.RuleBookPanel));
const HorsePanel = later(() => import('./check/horse.tsx').then((room) => room.HorsePanel));
const FindingsPanel = later(() => import('./check/findings.tsx').then((room) => room.FindingsPanel));
const ClassPanel = later(() => import('./post/class-form.tsx').then((room) => room.ClassPanel));
const PaperPanel = later(() => import('./post/paper.tsx').then((room) => room.PaperPanel));
const WordsPanel = later(() => import('./post/instruction-words.tsx').then((room) => room.WordsPanel));
const LayoutsPanel = later(() => import('./reset/layouts.tsx').then((room) => room.LayoutsPanel));
const DifferencesPanel = later(() => import('./reset/differences-panel.tsx').then((room) => room.DifferencesPanel));

const PANELS: Readonly<Record<Stage, readonly Panel[]>> = {
  set: [
    { id: 'palette', title: 'Add', side: 'left', body: PalettePanel, grows: true },
    { id: 'truck', title: 'Truck', side: 'left', body: TruckPanel },
    { id: 'tape', title: 'Tape', side: 'right', body: TapePanel, grows: true, opensOnChoice: true },
    { id: 'obstacles', title: 'Obstacles', side: 'right', body: ObstacleListPanel },
  ],
  ride: [
    { id: 'order', title: 'Order of the go', short: 'Order', side: 'left', body: OrderPanel, grows: true },
    {
      id: 'leg',
      title: 'How it is ridden',
      short: 'How',
      side: 'right',
      body: LegPanel,
      grows: true,
      opensOnChoice: true,
    },
    { id: 'clock', title: 'Time', side: 'left', body: ClockPanel, grows: true },
    { id: 'shown', title: 'Gaits shown', short: 'Gaits', side: 'right', body: ShownPanel },
  ],
  check: [
    { id: 'rulebook', title: 'Rule book', side: 'left', body: RuleBookPanel, grows: true },
    { id: 'horse', title: 'Horse', side: 'left', body: HorsePanel },
    { id: 'findings', title: 'Findings', side: 'right', body: FindingsPanel, grows: true },
  ],
  post: [
    { id: 'class', title: 'Class', side: 'left', body: ClassPanel, grows: true },
    { id: 'paper', title: 'Paper', side: 'right', body: PaperPanel },
    { id: 'words', title: 'Instructions', side: 'right', body: WordsPanel, grows: true },
  ],
  reset: [
    { id: 'layouts', title: 'Layouts', side: 'left', body: LayoutsPanel, grows: true },
    { id: 'differences', title: 'What differs', side: 'right', body: DifferencesPanel, grows: true },
  ],
};

/** On a small screen the findings come first at Check, and the strip is one more tab. */
export function panelsOf(stage: Stage, arrangement: Arrangement): readonly Panel[] {
  const panels = stage === 'check' && arrangement !== 'wide' ? [...PANELS.check].sort(findingsFirst) : PANELS[stage];
  if (arrangement !== 'narrow' || stage === 'post') return panels;
  return [...panels, { id: 'line', title: 'Line', side: 'right', body: StripPanel, grows: true, staysOnChoice: true }];
}

function findingsFirst(a: Panel, b: Panel): number {
  return Number(b.id === 'findings') - Number(a.id === 'findings');
}
