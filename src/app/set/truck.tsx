import { useDeskState } from '../desk-context.tsx';

/** What the truck still holds, and what the layout takes beyond it. */
export function TruckPanel() {
  const truck = useDeskState((state) => state.survey.truck);
  if (truck.length === 0) {
    return <p className="empty">The course has no truck list: take what you need.</p>;
  }
  return (
    <ul className="truck">
      {truck.map((use) => {
        const over = use.left < 0 || use.stock === null;
        const count = use.stock?.count ?? 0;
        return (
          <li key={use.stock?.id ?? use.title} className={over ? 'is-over' : ''}>
            <span className="truck-title">{use.title}</span>
            <span className="truck-left">
              {use.stock === null ? `${use.used} not on it` : over ? `${-use.left} too few` : `${use.left} left`}
            </span>
            {count > 0 && (
              <span className="bar" aria-hidden="true">
                <span style={{ width: `${Math.min(100, (100 * use.used) / count)}%` }} />
              </span>
            )}
          </li>
        );
      })}
    </ul>
  );
}
