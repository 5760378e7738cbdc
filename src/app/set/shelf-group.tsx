import { X } from 'lucide-react';
import type { ShelfItem } from '../../core/course/shelf-item.ts';
import { setWords } from '../../words/set.ts';
import { Drawing, shelfSketch } from './drawing.tsx';
import { takeOffShelf, useShelf } from './own-shelf.ts';
import type { TilePointer } from './tile-drag.ts';

/** The designer's own shelf: what was kept there, to be placed again or taken off. */
export function ShelfGroup({ tile }: { tile(item: ShelfItem): TilePointer }) {
  const { items, errorMessage: trouble } = useShelf();
  return (
    <section aria-label={setWords.myShelf}>
      <h3>{setWords.myShelf}</h3>
      {items.length === 0 && <p className="small">{setWords.nothingYetChooseObstacle}</p>}
      <ul className="kinds">
        {items.map((item) => (
          <li key={item.id} className="own">
            <button type="button" className="kind" data-own={item.id} {...tile(item)}>
              <Drawing sketch={shelfSketch(item)} width={92} height={42} />
              <span>{item.title}</span>
            </button>
            <button
              type="button"
              className="own-away"
              aria-label={setWords.takeOffMyShelf(item.title)}
              onClick={() => void takeOffShelf(item.id)}
            >
              <X aria-hidden="true" />
            </button>
          </li>
        ))}
      </ul>
      {trouble !== undefined && (
        <p className="refusal" role="alert">
          {trouble}
        </p>
      )}
    </section>
  );
}
