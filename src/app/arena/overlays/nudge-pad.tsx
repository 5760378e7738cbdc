import { ArrowDown, ArrowLeft, ArrowRight, ArrowUp, RotateCcw, RotateCw, X } from 'lucide-react';
import { useState } from 'react';
import { printAngle } from '../../../core/measure/angle.ts';
import { printLength } from '../../../core/measure/length.ts';
import { NUDGE_STEPS, type NudgeSize } from '../../../desk/keyboard/nudge-steps.ts';
import { boundsOfPieces, chosenPieces } from '../../../desk/selection/selection.ts';
import { handWords } from '../../../words/hand.ts';
import { useDesk, useDeskState } from '../../desk-context.tsx';
import { useView, useViewState } from '../../view.ts';
import { groundStep, type ScreenStep, screenOf } from '../camera.ts';
import { useHandState } from '../input/hand-store.ts';
import { useIsPadOpen } from './use-is-pad-open.ts';

const ARROWS = [
  { step: 'up', icon: ArrowUp },
  { step: 'left', icon: ArrowLeft },
  { step: 'right', icon: ArrowRight },
  { step: 'down', icon: ArrowDown },
] as const satisfies readonly { readonly step: ScreenStep; readonly icon: unknown }[];

const SIZES: readonly NudgeSize[] = ['small', 'middle', 'large'];

/** Small exact steps for a finger, a mouse or a keyboard: as seen on the screen, of what is chosen. */
export function NudgePad() {
  const isOpen = useIsPadOpen();
  const isDragging = useHandState(({ finger }) => finger !== null);
  return isOpen && !isDragging ? <OpenPad /> : null;
}

function OpenPad() {
  const desk = useDesk();
  const view = useView();
  const [size, setSize] = useState<NudgeSize>('small');
  const unit = useDeskState((state) => state.course.unit);
  const hasChosen = useDeskState((state) => state.chosen.length > 0);
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const camera = useViewState((state) => state.camera);
  const height = useViewState((view) => view.size.height);
  const { turned } = camera;
  const box = boundsOfPieces(chosenPieces(survey, chosen));
  // On a small screen it stands in the half where what is chosen does not lie.
  const isAbove =
    box !== null && screenOf(camera, { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }).y > height / 2;
  const steps = NUDGE_STEPS[unit];
  const { far, turn } = steps[size];
  const [farText, turnText] = [printLength(far, unit), printAngle(turn)];
  return (
    <fieldset className={isAbove ? 'nudge-pad is-above' : 'nudge-pad'}>
      <legend className="visually-hidden">{handWords.pad}</legend>
      {ARROWS.map(({ step, icon: Icon }) => (
        <button
          key={step}
          type="button"
          className={`nudge-${step}`}
          disabled={!hasChosen}
          aria-label={handWords.nudge(step, farText)}
          onClick={() => {
            const [x, y] = groundStep(turned, step);
            desk.nudge(x * far, y * far);
          }}
        >
          <Icon aria-hidden="true" />
        </button>
      ))}
      <button
        type="button"
        className="nudge-turn-left"
        disabled={!hasChosen}
        aria-label={handWords.turnLeft(turnText)}
        onClick={() => desk.turn(turn)}
      >
        <RotateCcw aria-hidden="true" />
      </button>
      <button
        type="button"
        className="nudge-turn-right"
        disabled={!hasChosen}
        aria-label={handWords.turnRight(turnText)}
        onClick={() => desk.turn(-turn)}
      >
        <RotateCw aria-hidden="true" />
      </button>
      <button type="button" className="nudge-shut" aria-label={handWords.shutPad} onClick={() => view.showPad(false)}>
        <X aria-hidden="true" />
      </button>
      <fieldset className="nudge-sizes">
        <legend className="visually-hidden">{handWords.stepSize}</legend>
        {SIZES.map((each) => (
          <button key={each} type="button" aria-pressed={each === size} onClick={() => setSize(each)}>
            {printLength(steps[each].far, unit)}
          </button>
        ))}
      </fieldset>
    </fieldset>
  );
}
