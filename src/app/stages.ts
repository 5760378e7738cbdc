import { lazy } from 'react';
import type { Stage } from '../desk/desk.ts';
import type { Arrangement } from './arrangement.ts';
import { FindingsPanel } from './check/findings.tsx';
import { HorsePanel } from './check/horse.tsx';
import { RuleBookPanel } from './check/rulebook.tsx';
import type { Panel } from './panels.tsx';
import { ClockPanel } from './ride/clock.tsx';
import { LegPanel } from './ride/leg.tsx';
import { OrderPanel } from './ride/order.tsx';
import { ObstacleListPanel } from './set/obstacle-list.tsx';
import { PalettePanel } from './set/palette.tsx';
import { TapePanel } from './set/tape.tsx';
import { TruckPanel } from './set/truck.tsx';
import { StripPanel } from './strip/strip.tsx';

// What the first stages do not show is loaded when somebody goes there.
const ClassPanel = lazy(() => import('./post/class-form.tsx').then((room) => ({ default: room.ClassPanel })));
const WordsPanel = lazy(() => import('./post/instruction-words.tsx').then((room) => ({ default: room.WordsPanel })));
const PaperPanel = lazy(() => import('./post/paper.tsx').then((room) => ({ default: room.PaperPanel })));
const LayoutsPanel = lazy(() => import('./reset/layouts.tsx').then((room) => ({ default: room.LayoutsPanel })));
const DifferencesPanel = lazy(() =>
  import('./reset/differences-panel.tsx').then((room) => ({ default: room.DifferencesPanel })),
);

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
      short: 'How ridden',
      side: 'right',
      body: LegPanel,
      grows: true,
      opensOnChoice: true,
    },
    { id: 'clock', title: 'Time', side: 'right', body: ClockPanel },
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
