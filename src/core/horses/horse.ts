/**
 * horses/ holds what is assumed about the horse: sizes, strides, turns and times. Every number is data in
 * assets/horses with its source and grade; nothing here is measured on a particular horse.
 */

/** The gaits in which a leg is ridden. Backing, side passing and turning on the spot are moves, not gaits. */
export type Gait = 'walk' | 'jog' | 'lope';
export const GAITS: readonly Gait[] = ['walk', 'jog', 'lope'];

/** P published · W weak source · D derived from published · M from memory · E estimate, no source. */
export type Grade = 'P' | 'W' | 'D' | 'M' | 'E';

/** A number with where it comes from. `least` and `most` bound what an editor offers. SI units. */
export interface Sourced {
  readonly value: number;
  readonly least?: number;
  readonly most?: number;
  readonly source: string;
  readonly grade: Grade;
}

/**
 * How tightly it turns: by the lean, radians from upright at the gait's speed, or by a radius, metres, with its own
 * source.
 */
export type TurnData = { readonly lean: Sourced } | { readonly radius: Sourced };

interface GaitData {
  /** Metres from one print of a foot to its next, on open ground. */
  readonly stride: Sourced;
  /** Seconds a stride takes. */
  readonly period: Sourced;
  /**
   * What one landing covers over poles, metres: a step at walk and jog, a stride at the lope. `least` and `most` are
   * the band.
   */
  readonly landing: Sourced;
  /** The tightest turn of the line; turns.ts makes a radius of it. */
  readonly leastTurn: TurnData;
  /** The turn between obstacles where there is room. */
  readonly easyTurn: TurnData;
}

export interface Horse {
  readonly id: string;
  readonly title: string;
  readonly withers: Sourced;
  /** Fore to hind hoof at a square stance. */
  readonly wheelbase: Sourced;
  /** Between the hoof centres of a pair. */
  readonly stance: Sourced;
  readonly hoof: Sourced;
  readonly bodyLength: Sourced;
  readonly bodyWidth: Sourced;
  readonly gaits: Readonly<Record<Gait, GaitData>>;
  /**
   * When the feet come down, as fractions of a stride. Walk and jog: the fore after the hind of its side, the other side
   * half a stride later. Lope: the diagonal pair and the leading fore, after the trailing hind.
   */
  readonly footfall: {
    readonly walk: { readonly fore: Sourced };
    readonly jog: { readonly fore: Sourced };
    readonly lope: { readonly diagonal: Sourced; readonly leading: Sourced };
  };
  /** By how much one horse's strides differ from each other: standard deviation, as a fraction of the stride. */
  readonly spread: Sourced;
  /** Metres of straight line that a change of lead at the lope wants. */
  readonly leadChange: Sourced;
  /** `step` metres, `period` seconds for each step, `settle` seconds before the first, `leastTurn` metres. */
  readonly back: {
    readonly step: Sourced;
    readonly period: Sourced;
    readonly settle: Sourced;
    readonly leastTurn: Sourced;
  };
  readonly sidePass: { readonly step: Sourced; readonly period: Sourced; readonly settle: Sourced };
  /** Seconds for a full turn on the spot. */
  readonly turn: Sourced;
  /** Seconds to stop and settle. */
  readonly halt: Sourced;
  /** Seconds to work the gate. */
  readonly gate: Sourced;
  /** Seconds lost in a transition to a faster and to a slower gait. */
  readonly transition: { readonly up: Sourced; readonly down: Sourced };
}

/** Metres per second on open ground. */
export function speed(horse: Horse, gait: Gait): number {
  const data = horse.gaits[gait];
  return data.stride.value / data.period.value;
}
