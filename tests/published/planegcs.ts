/**
 * planegcs, the constraint solver of an open CAD program, as an oracle. Every scene gets an instance of its own: on one
 * whose heap has been used before, the same input can give other results.
 */
import {
  DebugMode,
  type GcsWrapper,
  make_gcs_wrapper,
  type SketchParam,
  type SketchPrimitive,
} from '@salusoft89/planegcs';

/** A primitive without its id: the ids are given out in order. */
type Fresh<T> = T extends { id: string } ? Omit<T, 'id'> : never;

/** A sketch being written: it gives out the ids. */
export interface Sketch {
  add(primitive: Fresh<SketchPrimitive>): string;
  param(name: string, value: number): void;
}

export interface Oracle {
  readonly wrapper: GcsWrapper;
  /** True when it says that everything holds; then the points are where it puts them. */
  solve(): boolean;
  point(id: string): { readonly x: number; readonly y: number };
  close(): void;
}

export async function planegcs(write: (sketch: Sketch) => void): Promise<Oracle> {
  const wrapper = await make_gcs_wrapper();
  wrapper.debug_mode = DebugMode.NoDebug;
  const params: SketchParam[] = [];
  const primitives: SketchPrimitive[] = [];
  write({
    add(primitive) {
      const id = String(primitives.length + 1);
      // The spread of one member of a union with its id put back is that member again, which the compiler cannot see.
      primitives.push({ ...primitive, id } as SketchPrimitive);
      return id;
    },
    param: (name, value) => params.push({ type: 'param', name, value }),
  });
  wrapper.push_primitives_and_params([...params, ...primitives]);
  return {
    wrapper,
    solve() {
      const status = wrapper.solve();
      wrapper.apply_solution();
      return status === 0 || status === 1;
    },
    point(id) {
      const found = wrapper.sketch_index.get_primitive(id);
      if (found?.type !== 'point') throw new Error(`${id} is no point of the sketch`);
      return found;
    },
    close: () => wrapper.destroy_gcs_module(),
  };
}

export interface Pole {
  /** Its −x and its +x end, and the line through them. */
  readonly from: string;
  readonly to: string;
  readonly line: string;
}

/** A rigid pole as two points at a fixed distance. */
export function drawnPole(
  sketch: Sketch,
  { x, y, angle }: { x: number; y: number; angle: number },
  { length, fixed }: { length: number; fixed: boolean },
): Pole {
  const [c, s] = [(Math.cos(angle) * length) / 2, (Math.sin(angle) * length) / 2];
  const from = sketch.add({ type: 'point', x: x - c, y: y - s, fixed });
  const to = sketch.add({ type: 'point', x: x + c, y: y + s, fixed });
  const line = sketch.add({ type: 'line', p1_id: from, p2_id: to });
  if (!fixed) sketch.add({ type: 'p2p_distance', p1_id: from, p2_id: to, distance: length });
  return { from, to, line };
}

/** A point that stays at a fraction along a pole. */
export function pointOn(sketch: Sketch, pole: Pole, where: { x: number; y: number; fromEnd: number }): string {
  const id = sketch.add({ type: 'point', x: where.x, y: where.y, fixed: false });
  sketch.add({ type: 'point_on_line_pl', p_id: id, l_id: pole.line });
  sketch.add({ type: 'p2p_distance', p1_id: pole.from, p2_id: id, distance: where.fromEnd });
  return id;
}
