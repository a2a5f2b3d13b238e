import { must, type Refusal, refuse } from './refusal.ts';

/*
 * Quantities with their unit in the type. One unique symbol per unit, so that
 * two units can never stand in for one another by accident. At the border
 * (files, database) they are plain numbers whose field names carry the unit.
 */

declare const stopsUnit: unique symbol;
declare const evUnit: unique symbol;
declare const secondsUnit: unique symbol;
declare const millimetresUnit: unique symbol;
declare const micrometresUnit: unique symbol;
declare const degreesUnit: unique symbol;
declare const fNumberUnit: unique symbol;
declare const isoUnit: unique symbol;
declare const pixelsUnit: unique symbol;

/** A difference in log2 of light; positive renders brighter. */
export type Stops = number & { readonly [stopsUnit]: true };
/** An absolute exposure value, log2(N²/t); it rises when less light is admitted. */
export type Ev = number & { readonly [evUnit]: true };
/** A duration in seconds. */
export type Seconds = number & { readonly [secondsUnit]: true };
/** A length in millimetres. */
export type Millimetres = number & { readonly [millimetresUnit]: true };
/** A length in micrometres: pixel pitch, blur, wavelength. */
export type Micrometres = number & { readonly [micrometresUnit]: true };
/** An angle in degrees. */
export type Degrees = number & { readonly [degreesUnit]: true };
/** A relative aperture N (focal length over entrance pupil). */
export type FNumber = number & { readonly [fNumberUnit]: true };
/** An ISO arithmetic speed S. */
export type Iso = number & { readonly [isoUnit]: true };
/** A count of pixels, which may be fractional after scaling. */
export type Pixels = number & { readonly [pixelsUnit]: true };

const positive = <T extends number>(value: number, rule: string): T | Refusal =>
  Number.isFinite(value) && value > 0 ? (value as T) : refuse(rule);

const finite = <T extends number>(value: number, rule: string): T | Refusal =>
  Number.isFinite(value) ? (value as T) : refuse(rule);

/** Any finite difference in stops, else a refusal. */
export const parseStops = (value: number): Stops | Refusal => finite(value, 'stops-not-finite');
/** Any finite EV, else a refusal. */
export const parseEv = (value: number): Ev | Refusal => finite(value, 'ev-not-finite');
/** A finite duration above zero, else a refusal. */
export const parseSeconds = (value: number): Seconds | Refusal =>
  positive(value, 'time-not-positive');
/** A finite duration of zero or more (an allowance, a wait, a lead-in), else a refusal. */
export const parseDuration = (value: number): Seconds | Refusal =>
  Number.isFinite(value) && value >= 0 ? (value as Seconds) : refuse('duration-negative');
/** A finite length above zero, else a refusal. */
export const parseMillimetres = (value: number): Millimetres | Refusal =>
  positive(value, 'length-not-positive');
/** A finite length above zero, else a refusal. */
export const parseMicrometres = (value: number): Micrometres | Refusal =>
  positive(value, 'length-not-positive');
/** Any finite angle, else a refusal. */
export const parseDegrees = (value: number): Degrees | Refusal => finite(value, 'angle-not-finite');
/** A finite f-number above zero, else a refusal. */
export const parseFNumber = (value: number): FNumber | Refusal =>
  positive(value, 'f-number-not-positive');
/** A finite speed above zero, else a refusal. */
export const parseIso = (value: number): Iso | Refusal => positive(value, 'iso-not-positive');
/** A finite count above zero, else a refusal. */
export const parsePixels = (value: number): Pixels | Refusal =>
  positive(value, 'pixels-not-positive');

/** A literal in stops. @throws RangeError if not finite. */
export const stops = (value: number): Stops => must(parseStops(value));
/** A literal in EV. @throws RangeError if not finite. */
export const ev = (value: number): Ev => must(parseEv(value));
/** A literal in seconds. @throws RangeError unless above zero. */
export const seconds = (value: number): Seconds => must(parseSeconds(value));
/** A literal duration, zero allowed. @throws RangeError if negative. */
export const duration = (value: number): Seconds => must(parseDuration(value));
/** A literal in millimetres. @throws RangeError unless above zero. */
export const millimetres = (value: number): Millimetres => must(parseMillimetres(value));
/** A literal in micrometres. @throws RangeError unless above zero. */
export const micrometres = (value: number): Micrometres => must(parseMicrometres(value));
/** A literal in degrees. @throws RangeError if not finite. */
export const degrees = (value: number): Degrees => must(parseDegrees(value));
/** A literal f-number. @throws RangeError unless above zero. */
export const fNumber = (value: number): FNumber => must(parseFNumber(value));
/** A literal ISO speed. @throws RangeError unless above zero. */
export const iso = (value: number): Iso => must(parseIso(value));
/** A literal pixel count. @throws RangeError unless above zero. */
export const pixels = (value: number): Pixels => must(parsePixels(value));

/** The sum of differences in stops; zero for none. */
export const addStops = (...terms: readonly Stops[]): Stops =>
  terms.reduce((sum, term) => sum + term, 0) as Stops;
