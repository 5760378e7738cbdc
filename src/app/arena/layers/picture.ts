/**
 * layers/ draws the arena: each layer is one canvas, painted by one function from the scene. Nothing here renders by
 * React: a change at the desk or of the view asks for a frame, and the frame draws the layers whose inputs changed.
 */
import { Layer } from 'konva/lib/Layer';
import { Shape } from 'konva/lib/Shape';
import { Stage } from 'konva/lib/Stage';
import type { ScreenSize } from '../camera.ts';

/** One canvas of a picture. */
export interface PictureLayer<Scene> {
  /** What it is painted from: it is painted anew when one of these is another object or value. */
  inputs(scene: Scene): readonly unknown[];
  paint(context: CanvasRenderingContext2D, scene: Scene): void;
}

export interface Picture {
  /** The scene changed: what differs is drawn in the next frame, once for all changes until then. */
  request(): void;
  destroy(): void;
}

interface Source<Scene> {
  /** Read once a frame. */
  scene(): Scene;
  size(scene: Scene): ScreenSize;
  /** Called after a frame in which something was drawn, with the canvases from the lowest to the highest. */
  drawn?(canvases: readonly HTMLCanvasElement[]): void;
}

interface DrawnLayer<Scene> {
  readonly layer: PictureLayer<Scene>;
  readonly node: Layer;
  inputs: readonly unknown[] | null;
}

/** A picture in an element of the page. The first frame draws all of it. */
export function createPicture<Scene>(
  container: HTMLDivElement,
  layers: readonly PictureLayer<Scene>[],
  source: Source<Scene>,
): Picture {
  const stage = new Stage({ container, width: 0, height: 0, listening: false });
  let scene: Scene | null = null;
  const drawnLayers = layers.map((layer): DrawnLayer<Scene> => {
    const node = new Layer({ listening: false });
    const context = node.getNativeCanvasElement().getContext('2d');
    const paint = () => {
      if (scene !== null && context !== null) layer.paint(context, scene);
    };
    node.add(new Shape({ sceneFunc: paint, listening: false, perfectDrawEnabled: false }));
    stage.add(node);
    return { layer, node, inputs: null };
  });
  const canvases = drawnLayers.map(({ node }) => node.getNativeCanvasElement());

  let frame: number | null = null;
  const draw = (): void => {
    frame = null;
    scene = source.scene();
    const size = source.size(scene);
    const isOtherSize = size.width !== stage.width() || size.height !== stage.height();
    // A canvas that gets another size is empty: it is drawn in the same frame.
    if (isOtherSize) stage.size(size);
    let isDrawn = false;
    for (const each of drawnLayers) {
      const inputs = each.layer.inputs(scene);
      if (!isOtherSize && isSame(each.inputs, inputs)) continue;
      each.inputs = inputs;
      each.node.draw();
      isDrawn = true;
    }
    if (isDrawn) source.drawn?.(canvases);
  };
  const request = (): void => {
    frame ??= requestAnimationFrame(draw);
  };
  request();
  return {
    request,
    destroy() {
      if (frame !== null) cancelAnimationFrame(frame);
      stage.destroy();
    },
  };
}

function isSame(before: readonly unknown[] | null, now: readonly unknown[]): boolean {
  return before?.length === now.length && now.every((each, i) => Object.is(each, before[i]));
}
