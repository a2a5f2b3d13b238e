import type { Arcminutes, Celsius, Degrees, Hectopascals } from './units.ts';

/*
 * How much the air lifts the sun and the moon. Near the horizon real refraction varies by minutes
 * of arc with the weather, so that a real sunset is uncertain by half a minute of time at low and
 * by several minutes at high latitude (from memory): seconds would be false precision.
 */

/** The weather for which the formulas hold as they stand. */
export const USUAL_PRESSURE = 1010 as Hectopascals;
export const USUAL_TEMPERATURE = 10 as Celsius;

const tanDegrees = (angle: number): number => Math.tan((angle * Math.PI) / 180);

const forWeather = (arcminutes: number, pressure: Hectopascals, temperature: Celsius): Arcminutes =>
  ((arcminutes * pressure * 283) / (1010 * (273 + temperature))) as Arcminutes;

/**
 * Refraction in arcminutes, positive up, at a true (airless) altitude.
 * Source: Saemundsson 1986, as Meeus, Astronomical Algorithms, 2nd ed. 1998, eq. 16.4. For
 * altitudes from about -1 degree up; it agrees with the other formula within 0.1 arcminute.
 */
export const refractionAtTrue = (
  altitude: Degrees,
  pressure: Hectopascals,
  temperature: Celsius,
): Arcminutes =>
  forWeather(1.02 / tanDegrees(altitude + 10.3 / (altitude + 5.11)), pressure, temperature);

/**
 * Refraction in arcminutes, positive up, at an apparent (refracted) altitude.
 * Source: Bennett 1982, as Meeus, eq. 16.3: good to 0.07 arcminute from 0 to 90 degrees.
 */
export const refractionAtApparent = (
  altitude: Degrees,
  pressure: Hectopascals,
  temperature: Celsius,
): Arcminutes =>
  forWeather(1 / tanDegrees(altitude + 7.31 / (altitude + 4.4)), pressure, temperature);

/** The apparent altitude of a body at a true (airless) altitude from about -1 degree up. */
export const apparentAltitude = (
  altitude: Degrees,
  pressure: Hectopascals,
  temperature: Celsius,
): Degrees => (altitude + refractionAtTrue(altitude, pressure, temperature) / 60) as Degrees;
