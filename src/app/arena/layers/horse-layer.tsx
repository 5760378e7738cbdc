import { useEffect, useRef } from 'react';
import { ridePositionAt } from '../../../core/ride/playing.ts';
import { printsOf } from '../../../core/survey.ts';
import { useDeskState } from '../../desk-context.tsx';
import { feetAt } from '../../ride/feet.ts';
import { usePlayer } from '../../ride/player-context.tsx';
import { useViewState } from '../../view.ts';
import { paintHorse } from '../painters/paint-horse.ts';
import { useTheme } from './use-theme.ts';

/**
 * The horse that rides the go, on a canvas of its own: while it plays nothing else is drawn, and React does not render.
 */
export function HorseLayer() {
  const player = usePlayer();
  const theme = useTheme();
  const { camera, size } = useViewState((state) => state);
  const survey = useDeskState((state) => state.survey);
  const isHeld = useDeskState((state) => state.gesture !== null);
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context === null || context === undefined) return;
    const ratio = window.devicePixelRatio;
    const draw = () => {
      context.setTransform(ratio, 0, 0, ratio, 0, 0);
      context.clearRect(0, 0, size.width, size.height);
      const time = player.time();
      // Before playing only the line is shown: the horse would cover the handle of the start.
      if (time === 0) return;
      const riding = ridePositionAt(survey.line, time);
      if (riding === undefined) return;
      const { horse } = survey;
      // During a drag no prints are worked out.
      const prints = isHeld ? NO_PRINTS : printsOf(survey);
      paintHorse(
        context,
        { pose: riding.pose, feet: feetAt(prints, time, { pose: riding.pose, horse }), horse },
        { camera, theme },
      );
    };
    draw();
    return player.watch(draw);
  }, [player, theme, camera, size, survey, isHeld]);
  const ratio = typeof window === 'undefined' ? 1 : window.devicePixelRatio;
  return (
    <canvas
      ref={canvas}
      className="horse-layer"
      width={Math.round(size.width * ratio)}
      height={Math.round(size.height * ratio)}
      style={{ width: size.width, height: size.height }}
    />
  );
}

const NO_PRINTS = [] as const;
