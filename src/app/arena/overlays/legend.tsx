import { ChevronDown, List } from 'lucide-react';
import { useState } from 'react';
import { arenaWords } from '../../../words/arena.ts';
import { useWantsPlan } from '../../change/shown-plan.tsx';
import { useDeskState } from '../../desk-context.tsx';
import { useTheme } from '../layers/use-theme.ts';
import { TRAVEL_STYLES, type TravelKind, travelKind } from '../painters/travel-styles.ts';
import { CarryLegend } from './carry-legend.tsx';
import { GhostLegend, useGhostTitles } from './ghost-legend.tsx';
import { PrintLegend } from './print-legend.tsx';
import { useFurniture } from './use-furniture.ts';

/** Which stroke means which gait, for those that the line has. */
export function ArenaLegend() {
  const elements = useDeskState((state) => state.survey.line.elements);
  const theme = useTheme();
  const furniture = useFurniture();
  // Where it would cover the ground or make it smaller it is folded until it is opened.
  const [isUnfolded, setUnfolded] = useState<boolean | null>(null);
  const used = new Set(elements.filter((each) => each.length > 0 || each.move === 'turn').map(travelKind));
  const shown = (Object.keys(TRAVEL_STYLES) as TravelKind[]).filter((way) => used.has(way));
  const ghosts = useGhostTitles();
  const wantsPlan = useWantsPlan();
  // What is compared is told at once, where there is some width for it.
  const isTold = (wantsPlan || ghosts.length > 0) && !furniture.isNarrow;
  const isOpen = furniture.isLegendOpen || (isUnfolded ?? isTold);
  if (!wantsPlan && shown.length === 0 && ghosts.length === 0) return null;
  return (
    <div className={`legend is-${furniture.buttons}${isOpen ? '' : ' is-folded'}`}>
      {!furniture.isLegendOpen && (
        <button
          type="button"
          className="legend-fold"
          aria-expanded={isOpen}
          aria-label={isOpen ? arenaWords.foldTheLegend : arenaWords.showLegendLine}
          onClick={() => setUnfolded(!isOpen)}
        >
          {isOpen ? <ChevronDown aria-hidden="true" /> : <List aria-hidden="true" />}
          {!isOpen && furniture.buttons === 'below' && arenaWords.legend}
        </button>
      )}
      {isOpen && (
        <ul aria-label={wantsPlan ? arenaWords.howCarriesDrawn : arenaWords.howLineDrawn}>
          {wantsPlan && <CarryLegend />}
          {(wantsPlan ? [] : shown).map((way) => {
            const look = TRAVEL_STYLES[way];
            return (
              <li key={way}>
                <svg width="26" height="12" aria-hidden="true">
                  <line
                    x1="2"
                    x2="24"
                    y1="6"
                    y2="6"
                    stroke={theme.inks[look.ink]}
                    strokeWidth={look.width}
                    strokeDasharray={look.dash.join(' ')}
                    strokeLinecap={look.cap}
                  />
                </svg>
                {look.word}
              </li>
            );
          })}
          <PrintLegend />
          {!wantsPlan && <GhostLegend titles={ghosts} />}
        </ul>
      )}
    </div>
  );
}
