import { duration, type Ev, ev, type Seconds } from '../../../src/science/units.ts';
import type { Chance } from './chance.ts';

/*
 * What hands, eyes and a meter do, and by how much they are off. Sizes are common practice without a
 * source, or our own assumption.
 */

/** Acts that take a time of their own: the usual one in seconds. */
const ACTS = { swap: 90, dial: 15, settle: 5, tap: 3, reading: 15, 'test-frame': 30 } as const;
export type Act = keyof typeof ACTS;

/** How an exposure goes. */
export interface Going {
  /** The shutter opens so many seconds after it is said to. */
  readonly openLateS: number;
  /** A hand that closes the shutter does so so many seconds after it means to. */
  readonly closeLateS: number;
  /** It runs longer than meant: in bulb by so many seconds, on the dial by a position. */
  readonly overrunS: Seconds | null;
  /** Somebody walks through it, or it is moved: it is made anew. */
  readonly spoilt: boolean;
}

/** One pair of hands on one evening. */
export interface Hands {
  /** How long an act takes this time. */
  takes(act: Act): Seconds;
  exposure(): Going;
}

export const handsOf = (chance: Chance): Hands => ({
  takes: (act) => duration(ACTS[act] * Math.exp(0.3 * chance.normal())),
  exposure: () => ({
    openLateS: 0.3 * chance.normal(),
    closeLateS: 0.2 * chance.normal(),
    overrunS: chance.onceIn(20) ? duration(chance.between(2, 20)) : null,
    spoilt: chance.onceIn(30),
  }),
});

/** A meter that reads a scene by a constant of its own and errs by a sixth of a stop each time. */
export type Meter = (scene: Ev) => Ev;

const ERRS_BY = 1 / 6;
const BIAS = 0.3;

export function meterOf(chance: Chance): Meter {
  const bias = BIAS * chance.normal();
  return (scene) => ev(scene + bias + ERRS_BY * chance.normal());
}
