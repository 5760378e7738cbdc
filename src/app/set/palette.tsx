import { useState } from 'react';
import type { ShelfItem } from '../../core/course/shelf-item.ts';
import type { Point } from '../../core/plane/point.ts';
import { handWords } from '../../words/hand.ts';
import { groundOf } from '../arena/camera.ts';
import { PICK_RADIUS, usePickRadius } from '../arena/input/pick-radius.ts';
import { useDesk } from '../desk-context.tsx';
import { useView } from '../view.ts';
import { Drawing, shelfSketch, sketchOf } from './drawing.tsx';
import { KindTiles } from './kind-tiles.tsx';
import { ShelfGroup } from './shelf-group.tsx';
import { type Carried, useTileDrag } from './tile-drag.ts';

/** What is taken from the list: a kind, or an obstacle of the designer's own. */
type Goods = { readonly kind: string } | { readonly item: ShelfItem };

/** All obstacle kinds: a click puts one on free ground in view, a drag puts it where it is let go. */
export function PalettePanel() {
  const desk = useDesk();
  const view = useView();
  const isCoarse = usePickRadius() === PICK_RADIUS.finger;
  const [refusal, setRefusal] = useState('');
  const [told, setTold] = useState('');

  const place = (goods: Goods, at: Point) => {
    const why = 'item' in goods ? desk.placeFromShelf(goods.item.obstacle, at) : desk.place(goods.kind, {}, at);
    setRefusal(why ?? '');
    setTold('');
  };
  const { carried, tile } = useTileDrag<Goods>({
    taken(goods) {
      const { camera, size } = view.state();
      const { arena } = desk.state().course;
      const within = (value: number, most: number) => Math.min(most, Math.max(0, value));
      const middle = groundOf(camera, { x: size.width / 2, y: size.height / 2 });
      place(goods, { x: within(middle.x, arena.length), y: within(middle.y, arena.width) });
    },
    dropped(goods, { x, y }) {
      const box = document.querySelector('.arena-ground')?.getBoundingClientRect();
      if (box === undefined || x < box.left || y < box.top || x > box.right || y > box.bottom) {
        setTold(handWords.tileLetGoOutside);
        return;
      }
      place(goods, groundOf(view.state().camera, { x: x - box.left, y: y - box.top }));
    },
    putBack: () => setTold(handWords.tilePutBack),
  });

  return (
    <div className="palette">
      <p className="lead">{isCoarse ? handWords.tilesByFinger : handWords.tilesByMouse}</p>
      <p className="palette-told" role="status">
        {told}
      </p>
      <KindTiles tile={(kind) => tile({ kind })} />
      <ShelfGroup tile={(item) => tile({ item })} />
      {refusal !== '' && (
        <p className="refusal" role="alert">
          {refusal}
        </p>
      )}
      {carried !== null && (
        <Ghost carried={carried} scale={view.state().camera.scale} turned={view.state().camera.turned} />
      )}
    </div>
  );
}

/** What the pointer carries, to the arena's scale. */
function Ghost({
  carried,
  scale,
  turned,
}: {
  readonly carried: Carried<Goods>;
  readonly scale: number;
  readonly turned: boolean;
}) {
  const { goods } = carried;
  const sketch = 'item' in goods ? shelfSketch(goods.item) : sketchOf(goods.kind);
  if (sketch === null) return null;
  const { bounds } = sketch;
  const side = Math.hypot(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY) * scale + 16;
  const style = {
    left: carried.x - side / 2,
    top: carried.y - side / 2,
    transform: turned ? 'rotate(-90deg)' : 'none',
  };
  return (
    <div className="ghost" style={style}>
      <Drawing sketch={sketch} width={side} height={side} scale={scale} />
    </div>
  );
}
