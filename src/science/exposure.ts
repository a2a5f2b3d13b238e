import type { Refusal } from './refusal.ts';
import {
  type Ev,
  type FNumber,
  type Iso,
  parseFNumber,
  parseIso,
  parseSeconds,
  type Seconds,
  type Stops,
} from './units.ts';

/*
 * Setting EV rises when less light is admitted; a difference in stops between two frames is
 * positive when the second renders brighter. The two signs are opposite.
 */

/**
 * The exposure value of a setting, log2(N²/t), in EV. Rises when less light is admitted.
 * Source: APEX in Exif (CIPA DC-008), from memory.
 */
export const exposureValue = (n: FNumber, t: Seconds): Ev =>
  (2 * Math.log2(n) - Math.log2(t)) as Ev;

/**
 * The exposure value of a setting referred to ISO 100, log2(N²/t) - log2(S/100), in EV: the EV
 * of the scene for which the setting would be nominal.
 */
export const ev100 = (n: FNumber, t: Seconds, s: Iso): Ev =>
  (exposureValue(n, t) - Math.log2(s / 100)) as Ev;

/** The exposure time in seconds for a scene's EV at ISO 100; refuses one beyond all numbers. */
export const timeForScene = (scene: Ev, n: FNumber, s: Iso): Seconds | Refusal =>
  parseSeconds(2 ** (2 * Math.log2(n) - Math.log2(s / 100) - scene));

/** The f-number for a scene's EV at ISO 100; refuses one beyond all numbers. */
export const fNumberForScene = (scene: Ev, t: Seconds, s: Iso): FNumber | Refusal =>
  parseFNumber(2 ** ((scene + Math.log2(t) + Math.log2(s / 100)) / 2));

/** The ISO speed for a scene's EV at ISO 100; refuses one beyond all numbers. */
export const isoForScene = (scene: Ev, n: FNumber, t: Seconds): Iso | Refusal =>
  parseIso(100 * 2 ** (exposureValue(n, t) - scene));

/** The difference of two exposure times, log2(t2/t1): positive when the second is longer. */
export const stopsBetweenTimes = (t1: Seconds, t2: Seconds): Stops => Math.log2(t2 / t1) as Stops;

/** The difference of two f-numbers, 2 log2(N1/N2): positive when the second is wider. */
export const stopsBetweenFNumbers = (n1: FNumber, n2: FNumber): Stops =>
  (2 * Math.log2(n1 / n2)) as Stops;

/** The difference of two speeds, log2(S2/S1): positive when the second is higher. */
export const stopsBetweenIsos = (s1: Iso, s2: Iso): Stops => Math.log2(s2 / s1) as Stops;

/**
 * The fade between two scene values, EV2 - EV1, in stops: positive when the scene got brighter,
 * negative at dusk.
 */
export const stopsBetweenScenes = (scene1: Ev, scene2: Ev): Stops => (scene2 - scene1) as Stops;
