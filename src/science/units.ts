import { must, type Refusal, refuse } from './refusal.ts';

/*
 * Quantities with their unit in the type. One unique symbol per unit, so that
 * two units can never stand in for one another by accident. At the border
 * (files, database) they are plain numbers whose field names carry the unit.
 */

declare const stopsUnit: unique symbol;
declare const evUnit: unique symbol;
declare const secondsUnit: unique symbol;
declare const distanceUnit: unique symbol;
declare const millimetresUnit: unique symbol;
declare const micrometresUnit: unique symbol;
declare const degreesUnit: unique symbol;
declare const fNumberUnit: unique symbol;
declare const isoUnit: unique symbol;
declare const pixelsUnit: unique symbol;
declare const apexUnit: unique symbol;
declare const luminanceUnit: unique symbol;
declare const illuminanceUnit: unique symbol;
declare const luxSecondsUnit: unique symbol;
declare const reflectedConstantUnit: unique symbol;
declare const incidentConstantUnit: unique symbol;
declare const ratioUnit: unique symbol;
declare const transmittanceUnit: unique symbol;
declare const shareUnit: unique symbol;
declare const densityUnit: unique symbol;
declare const magnificationUnit: unique symbol;
declare const cropRatioUnit: unique symbol;
declare const areaUnit: unique symbol;
declare const pixelAreaUnit: unique symbol;
declare const irradianceUnit: unique symbol;
declare const pixelsPerDegreeUnit: unique symbol;
declare const arcsecondsUnit: unique symbol;
declare const frequencyUnit: unique symbol;
declare const decibelsUnit: unique symbol;
declare const speedUnit: unique symbol;
declare const timeLimitUnit: unique symbol;
declare const utcUnit: unique symbol;
declare const minutesEastUnit: unique symbol;
declare const stopsPerMinuteUnit: unique symbol;
declare const metresUnit: unique symbol;
declare const kilometresUnit: unique symbol;
declare const arcminutesUnit: unique symbol;
declare const pressureUnit: unique symbol;
declare const temperatureUnit: unique symbol;

/** A difference in log2 of light; positive renders brighter. */
export type Stops = number & { readonly [stopsUnit]: true };
/** An absolute exposure value, log2(N²/t); it rises when less light is admitted. */
export type Ev = number & { readonly [evUnit]: true };
/** A duration in seconds. */
export type Seconds = number & { readonly [secondsUnit]: true };
/** A distance in millimetres that may be infinite: a subject, a focus setting. */
export type Distance = number & { readonly [distanceUnit]: true };
/** A finite length in millimetres. */
export type Millimetres = Distance & { readonly [millimetresUnit]: true };
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
/** A value on the APEX scale: Av, Tv, Sv or Bv. */
export type Apex = number & { readonly [apexUnit]: true };
/** A luminance L in cd/m². */
export type CandelasPerM2 = number & { readonly [luminanceUnit]: true };
/** An illuminance E in lx. */
export type Lux = number & { readonly [illuminanceUnit]: true };
/** A photometric exposure H on the sensor in lx s; zero where there is none. */
export type LuxSeconds = number & { readonly [luxSecondsUnit]: true };
/** The meter constant K for reflected light, cd s ISO/m². */
export type ReflectedConstant = number & { readonly [reflectedConstantUnit]: true };
/** The meter constant C for incident light, lx s ISO. */
export type IncidentConstant = number & { readonly [incidentConstantUnit]: true };
/** A positive number without unit: a factor, a divisor, a pupil magnification. */
export type Ratio = number & { readonly [ratioUnit]: true };
/** The part of the light that passes, above 0 and at most 1. */
export type Transmittance = number & { readonly [transmittanceUnit]: true };
/** A part of a whole, above 0 and at most 1. */
export type Share = number & { readonly [shareUnit]: true };
/** An optical density, log10 of the inverse of the transmittance; zero or more. */
export type Density = number & { readonly [densityUnit]: true };
/** The size on the sensor over the size of the subject; zero for a subject at infinity. */
export type Magnification = number & { readonly [magnificationUnit]: true };
/** The diagonal (or another side, if said so) of a body's format over the reference's. */
export type CropRatio = number & { readonly [cropRatioUnit]: true };
/** The area of a format in mm². */
export type SquareMillimetres = number & { readonly [areaUnit]: true };
/** The area of a pixel in µm². */
export type SquareMicrometres = number & { readonly [pixelAreaUnit]: true };
/** An irradiance on the sensor in µW/cm². */
export type MicrowattsPerCm2 = number & { readonly [irradianceUnit]: true };
/** A sampling of the view, on the lens axis. */
export type PixelsPerDegree = number & { readonly [pixelsPerDegreeUnit]: true };
/** A small angle in arcseconds. */
export type Arcseconds = number & { readonly [arcsecondsUnit]: true };
/** A spatial frequency on the sensor in cycles per mm. */
export type CyclesPerMm = number & { readonly [frequencyUnit]: true };
/** A power ratio as 10 log10. */
export type Decibels = number & { readonly [decibelsUnit]: true };
/** The speed of a subject across the view, in m/s. */
export type MetresPerSecond = number & { readonly [speedUnit]: true };
/** The longest time in seconds that a rule allows; infinite where it sets no limit. */
export type TimeLimit = number & { readonly [timeLimitUnit]: true };

/** An instant in milliseconds since 1970-01-01 UTC. */
export type UtcMs = number & { readonly [utcUnit]: true };
/** Minutes that a clock is ahead of UTC; negative west of Greenwich. */
export type MinutesEast = number & { readonly [minutesEastUnit]: true };
/** A fade in stops a minute; negative while it gets darker. */
export type StopsPerMinute = number & { readonly [stopsPerMinuteUnit]: true };
/** A height above the sea in metres, negative below it. */
export type Metres = number & { readonly [metresUnit]: true };
/** A distance in space in kilometres. */
export type Kilometres = number & { readonly [kilometresUnit]: true };
/** A small angle in arcminutes. */
export type Arcminutes = number & { readonly [arcminutesUnit]: true };
/** An air pressure in hectopascals. */
export type Hectopascals = number & { readonly [pressureUnit]: true };
/** A temperature in degrees Celsius. */
export type Celsius = number & { readonly [temperatureUnit]: true };

/** A finite number above zero in a unit, else a refusal by the rule. */
export const positive = <T extends number>(value: number, rule: string): T | Refusal =>
  Number.isFinite(value) && value > 0 ? (value as T) : refuse(rule);

/** A finite number of zero or more in a unit, else a refusal by the rule. */
export const notNegative = <T extends number>(value: number, rule: string): T | Refusal =>
  Number.isFinite(value) && value >= 0 ? (value as T) : refuse(rule);

/** Any finite number in a unit, else a refusal by the rule. */
export const finite = <T extends number>(value: number, rule: string): T | Refusal =>
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
  notNegative(value, 'duration-negative');
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
/** A distance above zero in mm, infinity allowed, else a refusal. */
export const parseDistance = (value: number): Distance | Refusal =>
  value > 0 ? (value as Distance) : refuse('distance-not-positive');
/** A distance above zero given in metres, in mm; infinity allowed, else a refusal. */
export const parseMetres = (value: number): Distance | Refusal => parseDistance(1000 * value);
/** A finite time above zero given in milliseconds, in seconds, else a refusal. */
export const parseMilliseconds = (value: number): Seconds | Refusal => parseSeconds(value / 1000);
/** Any finite value on the APEX scale, else a refusal. */
export const parseApex = (value: number): Apex | Refusal => finite(value, 'apex-not-finite');
/** A finite luminance above zero, else a refusal. */
export const parseLuminance = (value: number): CandelasPerM2 | Refusal =>
  positive(value, 'luminance-not-positive');
/** A finite illuminance above zero, else a refusal. */
export const parseLux = (value: number): Lux | Refusal =>
  positive(value, 'illuminance-not-positive');
/** A finite photometric exposure of zero or more, else a refusal. */
export const parseLuxSeconds = (value: number): LuxSeconds | Refusal =>
  notNegative(value, 'photometric-exposure-negative');
/** A finite meter constant K above zero, else a refusal. */
export const parseReflectedConstant = (value: number): ReflectedConstant | Refusal =>
  positive(value, 'meter-constant-not-positive');
/** A finite meter constant C above zero, else a refusal. */
export const parseIncidentConstant = (value: number): IncidentConstant | Refusal =>
  positive(value, 'meter-constant-not-positive');
/** A finite number above zero, else a refusal. */
export const parseRatio = (value: number): Ratio | Refusal => positive(value, 'ratio-not-positive');
/** A part above 0 and at most 1, else a refusal. */
export const parseTransmittance = (value: number): Transmittance | Refusal =>
  value > 0 && value <= 1 ? (value as Transmittance) : refuse('transmittance-out-of-range');
/** A finite density of zero or more, else a refusal. */
export const parseDensity = (value: number): Density | Refusal =>
  notNegative(value, 'density-negative');
/** A finite magnification of zero or more, else a refusal. */
export const parseMagnification = (value: number): Magnification | Refusal =>
  notNegative(value, 'magnification-negative');
/** A finite crop ratio above zero, else a refusal. */
export const parseCropRatio = (value: number): CropRatio | Refusal =>
  positive(value, 'crop-ratio-not-positive');
/** A finite area above zero, else a refusal. */
export const parseSquareMicrometres = (value: number): SquareMicrometres | Refusal =>
  positive(value, 'area-not-positive');
/** A finite irradiance above zero, else a refusal. */
export const parseIrradiance = (value: number): MicrowattsPerCm2 | Refusal =>
  positive(value, 'irradiance-not-positive');
/** A finite speed of zero or more, else a refusal. */
export const parseSpeed = (value: number): MetresPerSecond | Refusal =>
  notNegative(value, 'speed-negative');
/** An instant that a date can name, in milliseconds since 1970-01-01 UTC, else a refusal. */
export const parseUtc = (value: number): UtcMs | Refusal =>
  Math.abs(value) <= 8.64e15 ? (value as UtcMs) : refuse('instant-out-of-range');
/** A whole number of minutes within a day of UTC, else a refusal. */
export const parseMinutesEast = (value: number): MinutesEast | Refusal =>
  Number.isInteger(value) && Math.abs(value) < 1440
    ? (value as MinutesEast)
    : refuse('zone-offset-out-of-range');
/** Any finite fade, else a refusal. */
export const parseStopsPerMinute = (value: number): StopsPerMinute | Refusal =>
  finite(value, 'fade-not-finite');
/** Any finite height above the sea, else a refusal. */
export const parseHeight = (value: number): Metres | Refusal => finite(value, 'height-not-finite');
/** A finite pressure above zero, else a refusal. */
export const parseHectopascals = (value: number): Hectopascals | Refusal =>
  positive(value, 'pressure-not-positive');
/** A finite temperature above absolute zero, else a refusal. */
export const parseCelsius = (value: number): Celsius | Refusal =>
  Number.isFinite(value) && value > -273.15
    ? (value as Celsius)
    : refuse('temperature-out-of-range');

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
/** A literal distance in mm. @throws RangeError unless above zero; infinity allowed. */
export const distance = (value: number): Distance => must(parseDistance(value));
/** A literal ratio. @throws RangeError unless finite and above zero. */
export const ratio = (value: number): Ratio => must(parseRatio(value));
/** A literal transmittance. @throws RangeError unless above 0 and at most 1. */
export const transmittance = (value: number): Transmittance => must(parseTransmittance(value));
/** A literal magnification. @throws RangeError if negative or not finite. */
export const magnification = (value: number): Magnification => must(parseMagnification(value));
/** A literal meter constant K. @throws RangeError unless above zero. */
export const reflectedConstant = (value: number): ReflectedConstant =>
  must(parseReflectedConstant(value));
/** A literal meter constant C. @throws RangeError unless above zero. */
export const incidentConstant = (value: number): IncidentConstant =>
  must(parseIncidentConstant(value));
/** A literal instant. @throws RangeError unless a date can name it. */
export const utc = (value: number): UtcMs => must(parseUtc(value));
/** A literal zone offset. @throws RangeError unless whole and within a day. */
export const minutesEast = (value: number): MinutesEast => must(parseMinutesEast(value));
/** A literal height above the sea. @throws RangeError if not finite. */
export const metres = (value: number): Metres => must(parseHeight(value));

/** An instant so many seconds later, or earlier if negative. */
export const later = (instant: UtcMs, secondsOn: number): UtcMs =>
  (instant + 1000 * secondsOn) as UtcMs;
/** Minutes from one instant to another; negative if the second is earlier. */
export const minutesBetween = (from: UtcMs, to: UtcMs): number => (to - from) / 60_000;

/** A part of a whole in percent. */
export const percent = (part: Transmittance | Share): number => 100 * part;

/** The sum of differences in stops; zero for none. */
export const addStops = (...terms: readonly Stops[]): Stops =>
  terms.reduce((sum, term) => sum + term, 0) as Stops;
