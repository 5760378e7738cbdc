import { useDeskState } from '../desk-context.tsx';
import { useLooks } from './layers.tsx';
import { WAYS, type Way, wayOf } from './ways.ts';

/** Which stroke means which gait, for those that the line has. */
export function Legend() {
  const elements = useDeskState((state) => state.survey.line.elements);
  const looks = useLooks();
  const used = new Set(elements.filter((each) => each.length > 0 || each.move === 'turn').map(wayOf));
  const shown = (Object.keys(WAYS) as Way[]).filter((way) => used.has(way));
  if (shown.length === 0) return null;
  return (
    <ul className="legend" aria-label="How the line is drawn">
      {shown.map((way) => {
        const look = WAYS[way];
        return (
          <li key={way}>
            <svg width="26" height="12" aria-hidden="true">
              <line
                x1="2"
                x2="24"
                y1="6"
                y2="6"
                stroke={looks.inks[look.ink]}
                strokeWidth={look.width}
                strokeDasharray={look.dash.join(' ')}
                strokeLinecap={look.cap}
              />
            </svg>
            {look.word}
          </li>
        );
      })}
    </ul>
  );
}
