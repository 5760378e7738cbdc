import { type PointerEvent, useRef, useState } from 'react';
import type { ShelfItem } from '../../core/course/shelf-item.ts';
import type { Point } from '../../core/plane/point.ts';
import { groundOf } from '../arena/camera.ts';
import { useDesk } from '../desk-context.tsx';
import { useView } from '../view.ts';
import { Drawing, shelfSketch, sketchOf } from './drawing.tsx';
import { KindTiles } from './kind-tiles.tsx';
import { ShelfGroup, type TilePointer } from './shelf-group.tsx';

/** A pointer that has gone further than this drags; before that it may still be a click. Pixels. */
const DRAG_FROM = 6;

/** What is taken from the list: a kind, or an obstacle of the designer's own. */
type Goods = { readonly kind: string } | { readonly item: ShelfItem };

interface Carried {
  readonly goods: Goods;
  readonly x: number;
  readonly y: number;
}

/** All obstacle kinds: a click puts one on free ground in view, a drag puts it where it is let go. */
export function PalettePanel() {
  const desk = useDesk();
  const view = useView();
  const [carried, setCarried] = useState<Carried | null>(null);
  const [refusal, setRefusal] = useState('');
  const began = useRef<Carried | null>(null);
  /** A pointer that dragged also clicks when it is let go, since its button has captured it. */
  const hasDragged = useRef(false);

  const place = (goods: Goods, at: Point) => {
    const why = 'item' in goods ? desk.placeFromShelf(goods.item.obstacle, at) : desk.place(goods.kind, {}, at);
    setRefusal(why ?? '');
  };
  const click = (goods: Goods) => {
    const { camera, size } = view.state();
    const { arena } = desk.state().course;
    const within = (value: number, most: number) => Math.min(most, Math.max(0, value));
    const middle = groundOf(camera, { x: size.width / 2, y: size.height / 2 });
    place(goods, { x: within(middle.x, arena.length), y: within(middle.y, arena.width) });
  };
  const down = (event: PointerEvent<HTMLButtonElement>, goods: Goods) => {
    if (event.button !== 0) return;
    hasDragged.current = false;
    began.current = { goods, x: event.clientX, y: event.clientY };
  };
  const move = (event: PointerEvent<HTMLButtonElement>) => {
    const start = began.current;
    if (start === null) return;
    if (carried === null && Math.hypot(event.clientX - start.x, event.clientY - start.y) < DRAG_FROM) return;
    hasDragged.current = true;
    event.currentTarget.setPointerCapture(event.pointerId);
    setCarried({ goods: start.goods, x: event.clientX, y: event.clientY });
  };
  const stop = () => {
    began.current = null;
    setCarried(null);
  };
  const up = (event: PointerEvent<HTMLButtonElement>) => {
    const goods = carried?.goods;
    stop();
    if (goods === undefined) return;
    const arena = document.querySelector('.arena-ground');
    const box = arena?.getBoundingClientRect();
    if (box === undefined) return;
    const at: Point<'screen'> = { x: event.clientX - box.left, y: event.clientY - box.top };
    if (at.x < 0 || at.y < 0 || at.x > box.width || at.y > box.height) return;
    place(goods, groundOf(view.state().camera, at));
  };
  const clicked = (goods: Goods) => {
    if (!hasDragged.current) click(goods);
    hasDragged.current = false;
  };
  const tile = (goods: Goods): TilePointer => ({
    onPointerDown: (event) => down(event, goods),
    onPointerMove: move,
    onPointerUp: up,
    onPointerCancel: stop,
    onClick: () => clicked(goods),
  });

  return (
    <div className="palette">
      <p className="lead">Click to add, or drag one to its place.</p>
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
  readonly carried: Carried;
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
