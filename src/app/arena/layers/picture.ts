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
  /** No frame is drawn any more. The stage stays with who mounted it. */
  stop(): void;
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

/** A stage in an element of the page with one layer, and on it one shape, for each canvas of a picture. */
export function mountStage(container: HTMLDivElement, count: number): Stage {
  const stage = new Stage({ container, width: 0, height: 0, listening: false });
  for (let i = 0; i < count; i += 1) {
    const layer = new Layer({ listening: false });
    layer.add(new Shape({ listening: false, perfectDrawEnabled: false }));
    stage.add(layer);
  }
  return stage;
}

/** Draws on a stage that has one layer with one shape for each of `layers`. The first frame draws all of it. */
export function createPicture<Scene>(
  stage: Stage,
  layers: readonly PictureLayer<Scene>[],
  source: Source<Scene>,
): Picture {
  let scene: Scene | null = null;
  const mounted = stage.getLayers();
  const drawnLayers = layers.map((layer, i): DrawnLayer<Scene> => {
    const node = mounted[i];
    const [shape] = node?.find<Shape>('Shape') ?? [];
    if (node === undefined || shape === undefined)
      throw new Error(`createPicture: the stage has no shape for layer ${i}`);
    const context = node.getNativeCanvasElement().getContext('2d');
    shape.sceneFunc(() => {
      if (scene !== null && context !== null) layer.paint(context, scene);
    });
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
    stop() {
      if (frame !== null) cancelAnimationFrame(frame);
    },
  };
}

function isSame(before: readonly unknown[] | null, now: readonly unknown[]): boolean {
  return before?.length === now.length && now.every((each, i) => Object.is(each, before[i]));
}
