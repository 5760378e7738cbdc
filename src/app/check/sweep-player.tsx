import { Pause, Play } from 'lucide-react';
import { useEffect, useId, useState } from 'react';
import type { Sweep } from '../../core/checks/geometry/sweep.ts';
import { checkWords } from '../../words/check.ts';
import { useView, useViewState } from '../view.ts';

/** Between two places of the motion while it plays, milliseconds. */
const PACE = 60;

/** Shows the horse going through, place after place: by itself, or by the slider. */
export function SweepPlayer({ sweep }: { readonly sweep: Sweep }) {
  const view = useView();
  const id = useId();
  const shown = useViewState((state) => state.sweepStep);
  const [isPlaying, setPlaying] = useState(false);
  const last = sweep.motion.length - 1;
  const step = shown?.obstacle === sweep.obstacle ? Math.min(shown.step, last) : 0;
  const show = (to: number) => view.showSweepStep({ obstacle: sweep.obstacle, step: to });
  useEffect(() => {
    if (!isPlaying) return undefined;
    const timer = setInterval(() => {
      const now = view.state().sweepStep;
      const at = now?.obstacle === sweep.obstacle ? now.step : 0;
      if (at >= last) setPlaying(false);
      else view.showSweepStep({ obstacle: sweep.obstacle, step: at + 1 });
    }, PACE);
    return () => clearInterval(timer);
  }, [isPlaying, last, sweep.obstacle, view]);
  useEffect(() => () => view.showSweepStep(null), [view]);
  if (last < 1) return null;
  const toggle = () => {
    if (!isPlaying && step >= last) show(0);
    setPlaying(!isPlaying);
  };
  return (
    <div className="sweep-player">
      <button type="button" className="button" onClick={toggle}>
        {isPlaying ? <Pause aria-hidden="true" /> : <Play aria-hidden="true" />}
        {isPlaying ? checkWords.stop : checkWords.showGoingThrough}
      </button>
      <label htmlFor={id} className="visually-hidden">
        {checkWords.whereHorseOnWay}
      </label>
      <input
        id={id}
        type="range"
        min={0}
        max={last}
        value={step}
        aria-valuetext={checkWords.placeOf(step + 1, last + 1)}
        onChange={(event) => {
          setPlaying(false);
          show(Number(event.target.value));
        }}
      />
    </div>
  );
}
