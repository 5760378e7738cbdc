import { FOOT, INCH, type LengthUnit, type Metres, type Radians } from '../../core/measure/quantity.ts';

export type NudgeSize = 'small' | 'middle' | 'large';

/** How far a nudge of each size moves and turns what is chosen. */
export interface NudgeStep {
  readonly far: Metres;
  readonly turn: Radians;
}

const DEGREE = Math.PI / 180;

/** The steps of the nudge pad; arrow keys take the small one, and with shift they go by `coarse` of the shortcuts. */
export const NUDGE_STEPS: Readonly<Record<LengthUnit, Readonly<Record<NudgeSize, NudgeStep>>>> = {
  ft: {
    small: { far: INCH, turn: DEGREE },
    middle: { far: 6 * INCH, turn: 5 * DEGREE },
    large: { far: FOOT, turn: 15 * DEGREE },
  },
  m: {
    small: { far: 0.01, turn: DEGREE },
    middle: { far: 0.1, turn: 5 * DEGREE },
    large: { far: 0.5, turn: 15 * DEGREE },
  },
};
