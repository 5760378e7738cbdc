import { useEffect, useLayoutEffect, useRef } from 'react';
import { useCompared } from '../../change/compared.ts';
import { useShownPlan } from '../../change/shown-plan.tsx';
import { useDesk, useDeskState } from '../../desk-context.tsx';
import { want } from '../../later-part.ts';
import { usePlayer } from '../../ride/player-context.tsx';
import { useView } from '../../view.ts';
import { usePickRadius } from '../input/pick-radius.ts';
import { horseLayer } from './horse-layer.ts';
import { LATER_PAINTERS } from './later-painters.ts';
import { liveLayer } from './live-layer.ts';
import { createPicture, mountStage, type Picture } from './picture.ts';
import { type Moved, movedBy, type Scene } from './scene.ts';
import { stillLayer } from './still-layer.ts';
import { useTheme } from './use-theme.ts';

/** The horse has a canvas of its own, where it rides: while it plays nothing else is drawn. */
const LAYERS = [stillLayer, liveLayer] as const;
const RIDE_LAYERS = [...LAYERS, horseLayer] as const;

/**
 * The drawn arena. It listens to the desk, the view and the player itself: React renders it once. It mounts its stage
 * without react-konva, which is 46 kB of gzip that the first picture does not need (see PlainPicture).
 */
export function ArenaPicture({
  drawn,
}: {
  /** Called after each frame in which something was drawn, with the canvases from the lowest to the highest. */
  readonly drawn?: (canvases: readonly HTMLCanvasElement[]) => void;
}) {
  const desk = useDesk();
  const view = useView();
  const compared = useCompared();
  const player = usePlayer();
  const layers = useDeskState((state) => (state.stage === 'ride' ? RIDE_LAYERS : LAYERS));
  const box = useRef<HTMLDivElement>(null);
  const picture = useRef<Picture>(null);
  const given = { plan: useShownPlan(), theme: useTheme(), reach: usePickRadius(), drawn };
  const latest = useRef(given);
  useLayoutEffect(() => {
    latest.current = given;
    picture.current?.request();
  });
  useEffect(() => {
    if (box.current === null) return;
    const stage = mountStage(box.current, layers.length);
    let moved: Moved | null = null;
    const scene = (): Scene => {
      const state = desk.state();
      moved = movedBy(state, moved);
      const { plan, theme, reach } = latest.current;
      const { hasPrints } = player.state();
      const stores = { desk: state, view: view.state(), compared: compared.state(), time: player.time(), hasPrints };
      return { ...stores, ...moved, plan, theme, reach };
    };
    const made = createPicture(stage, layers, {
      scene,
      size: (of) => of.view.size,
      drawn: (canvases) => latest.current.drawn?.(canvases),
    });
    picture.current = made;
    const stops = [desk, view, compared, player, ...LATER_PAINTERS].map((store) => store.subscribe(made.request));
    stops.push(player.watch(made.request));
    return () => {
      for (const stop of stops) stop();
      picture.current = null;
      made.stop();
      stage.destroy();
    };
  }, [desk, view, compared, player, layers]);
  useEffect(() => LATER_PAINTERS.forEach(want), []);
  return <div ref={box} className="arena-picture" />;
}
