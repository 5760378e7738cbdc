import type { Stage as KonvaStage } from 'konva/lib/Stage';
import type { RefObject } from 'react';
import { Layer, Shape, Stage } from 'react-konva/lib/ReactKonvaCore';

/** The canvases of a picture as React mounts them, one a layer: createPicture gives each its size and what is painted. */
export function PictureCanvases({
  count,
  stage,
}: {
  readonly count: number;
  readonly stage: RefObject<KonvaStage | null>;
}) {
  return (
    <Stage ref={stage} width={0} height={0} listening={false}>
      {Array.from({ length: count }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a canvas is known by its place among the others.
        <Layer key={i} listening={false}>
          <Shape listening={false} perfectDrawEnabled={false} />
        </Layer>
      ))}
    </Stage>
  );
}
