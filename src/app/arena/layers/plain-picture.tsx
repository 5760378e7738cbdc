import type { Stage } from 'konva/lib/Stage';
import { useEffect, useLayoutEffect, useRef } from 'react';
import type { ScreenSize } from '../camera.ts';
import { createPicture, type Picture, type PictureLayer } from './picture.ts';
import { PictureCanvases } from './picture-canvases.tsx';

/** A picture of what React knows: drawn in the next frame when the scene is another one. `layers` stay the same. */
export function PlainPicture<Scene>({
  layers,
  scene,
  size,
}: {
  readonly layers: readonly PictureLayer<Scene>[];
  readonly scene: Scene;
  readonly size: ScreenSize;
}) {
  const stage = useRef<Stage>(null);
  const picture = useRef<Picture>(null);
  const latest = useRef({ scene, size });
  useLayoutEffect(() => {
    latest.current = { scene, size };
    picture.current?.request();
  });
  useEffect(() => {
    if (stage.current === null) return;
    const made = createPicture(stage.current, layers, {
      scene: () => latest.current.scene,
      size: () => latest.current.size,
    });
    picture.current = made;
    return () => {
      picture.current = null;
      made.stop();
    };
  }, [layers]);
  return <PictureCanvases count={layers.length} stage={stage} />;
}
