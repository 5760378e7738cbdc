import { Footprints, Pause, Play, SkipBack, SkipForward } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import type { Seconds } from '../../core/measure/quantity.ts';
import { rideWords } from '../../words/ride.ts';
import { terms } from '../../words/terms.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { momentAt } from './moment.ts';
import { RATES } from './player.ts';
import { usePlayer, usePlayerState } from './player-context.tsx';
import { timelineOf } from './timeline.ts';

/** Step of the slider, seconds. */
const SLIDER_STEP = 0.1;

/** Plays the go: the horse in the arena and the cursor on the strip follow. */
export function PlayBar() {
  const player = usePlayer();
  const isPlaying = usePlayerState((state) => state.isPlaying);
  const rate = usePlayerState((state) => state.rate);
  const hasPrints = usePlayerState((state) => state.hasPrints);
  const line = useDeskState((state) => state.survey.line);
  const isEmpty = line.clock.go <= 0;
  return (
    <fieldset className="play-bar" disabled={isEmpty}>
      <legend className="visually-hidden">{rideWords.playTheRide}</legend>
      <div className="play-row">
        <div className="play-keys">
          <button
            type="button"
            className="quiet"
            aria-label={rideWords.oneLandingBack}
            title={rideWords.oneLandingBack}
            onClick={() => player.step(-1)}
          >
            <SkipBack aria-hidden="true" />
          </button>
          <button
            type="button"
            className="button play"
            aria-label={isPlaying ? rideWords.pause : rideWords.playTheRide}
            title={isPlaying ? rideWords.pause : rideWords.playTheRide}
            onClick={() => (isPlaying ? player.pause() : player.play())}
          >
            {isPlaying ? <Pause aria-hidden="true" /> : <Play aria-hidden="true" />}
          </button>
          <button
            type="button"
            className="quiet"
            aria-label={rideWords.oneLandingOn}
            title={rideWords.oneLandingOn}
            onClick={() => player.step(1)}
          >
            <SkipForward aria-hidden="true" />
          </button>
        </div>
        <TimeSlider whole={line.clock.go} />
        <Now />
        <div className="play-rates">
          {RATES.map((each) => (
            <button
              key={each}
              type="button"
              className="quiet"
              aria-pressed={rate === each}
              aria-label={each === 1 ? rideWords.trueSpeed : rideWords.timesAsFast(each)}
              onClick={() => player.run(each)}
            >
              ×{each}
            </button>
          ))}
        </div>
        <button
          type="button"
          className="quiet worded prints-button"
          aria-label={terms.hoofPrints}
          title={terms.hoofPrints}
          aria-pressed={hasPrints}
          onClick={() => player.showPrints(!hasPrints)}
        >
          <Footprints aria-hidden="true" />
          <span>{terms.hoofPrints}</span>
        </button>
      </div>
    </fieldset>
  );
}

/** `1:05`. */
function clockFace(time: Seconds): string {
  const whole = Math.round(time);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** Moved by hand, outside React: nothing is rendered while it plays. */
function TimeSlider({ whole }: { readonly whole: Seconds }) {
  const player = usePlayer();
  const desk = useDesk();
  const slider = useRef<HTMLInputElement>(null);
  const face = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    let announced = '';
    const seen = (time: Seconds) => {
      if (slider.current !== null) slider.current.value = String(time);
      const now = clockFace(time);
      if (now === announced) return;
      announced = now;
      if (face.current !== null) face.current.textContent = now;
      const moment = momentAt(desk.state().survey, time);
      const words = moment === undefined ? '' : `: ${moment.going}, ${moment.where}`;
      slider.current?.setAttribute('aria-valuetext', rideWords.timeOfWhole(Math.round(time), Math.round(whole), words));
    };
    seen(player.time());
    return player.watch(seen);
  }, [player, desk, whole]);
  return (
    <div className="play-time">
      <input
        ref={slider}
        type="range"
        aria-label={rideWords.timeInGo}
        min={0}
        max={Math.max(whole, SLIDER_STEP)}
        step={SLIDER_STEP}
        defaultValue={0}
        onInput={(event) => player.seek(Number(event.currentTarget.value))}
      />
      <span className="play-face">
        <span ref={face}>0:00</span> / {clockFace(whole)}
      </span>
    </div>
  );
}

/** What the horse does now. Read out after a step, and while playing only where the next number begins. */
function Now() {
  const player = usePlayer();
  const survey = useDeskState((state) => state.survey);
  const isPlaying = usePlayerState((state) => state.isPlaying);
  const steps = usePlayerState((state) => state.steps);
  const [shown, setShown] = useState('');
  const [announced, setAnnounced] = useState('');
  const where = useRef('');
  useEffect(() => {
    const seen = (time: Seconds) => {
      const moment = momentAt(survey, time);
      setShown(moment === undefined ? '' : `${moment.going}, ${moment.where}`);
      if (moment === undefined || moment.where === where.current) return;
      where.current = moment.where;
      if (player.state().isPlaying) setAnnounced(`${moment.going}, ${moment.where}`);
    };
    seen(player.time());
    return player.watch(seen);
  }, [player, survey]);
  useEffect(() => {
    if (steps === 0 || isPlaying) return;
    const time = player.time();
    const moment = momentAt(survey, time);
    const { cuePoints: stops } = timelineOf(survey.line);
    const place = stops.findIndex((stop) => Math.abs(stop - time) < 1e-6) + 1;
    if (moment !== undefined) setAnnounced(rideWords.stopOf(place, stops.length, moment.going, moment.where));
  }, [player, survey, steps, isPlaying]);
  return (
    <>
      <p className="play-now" title={shown}>
        {shown}
      </p>
      <p className="visually-hidden" aria-live="polite" data-ride-told>
        {announced}
      </p>
    </>
  );
}
