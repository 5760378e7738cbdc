import type { Context as KonvaContext } from 'konva/lib/Context';
import { Shape } from 'konva/lib/Shape';
import { Layer, Shape as PaintedShape } from 'react-konva/lib/ReactKonvaCore';

// Named so that the bundler keeps the one shape the core build does not register by itself.
void Shape;

type Draw = (context: CanvasRenderingContext2D) => void;

/** One canvas, painted by one function: nothing on it listens or can be dragged. */
export function PaintedLayer({ draw }: { readonly draw: Draw }) {
  return (
    <Layer listening={false}>
      <PaintedShape
        sceneFunc={(context: KonvaContext) => draw(context._context)}
        listening={false}
        perfectDrawEnabled={false}
      />
    </Layer>
  );
}
