import { must, type Refusal, refuse } from './refusal.ts';
import {
  finite,
  notNegative,
  type Pixels,
  positive,
  type Ratio,
  type SquareMillimetres,
} from './units.ts';

/*
 * The units of sensor heat and noise. Three kinds of stop are kept apart by their types: stops of
 * exposure (`Stops`), stops of dark current (`Doublings`) and stops of signal-to-noise ratio
 * (`SnrStops`); where photons rule, one stop of exposure is half a stop of signal-to-noise ratio.
 */

declare const doublingsUnit: unique symbol;
declare const snrStopsUnit: unique symbol;
declare const kelvinUnit: unique symbol;
declare const kelvinDifferenceUnit: unique symbol;
declare const kelvinRateUnit: unique symbol;
declare const electronVoltsUnit: unique symbol;
declare const electronsUnit: unique symbol;
declare const electronDifferenceUnit: unique symbol;
declare const darkRateUnit: unique symbol;
declare const responseUnit: unique symbol;
declare const snrUnit: unique symbol;
declare const dnUnit: unique symbol;
declare const dnVarianceUnit: unique symbol;
declare const gainUnit: unique symbol;
declare const codesUnit: unique symbol;

/**
 * Heat of a sensor over the air in doublings of its dark current: at the same time the rise of the
 * dark current in stops over the rested body. A difference of two is stops of dark current.
 */
export type Doublings = number & { readonly [doublingsUnit]: true };
/** A difference in log2 of the signal-to-noise ratio, or of noise; never stops of exposure. */
export type SnrStops = number & { readonly [snrStopsUnit]: true };
/** A temperature over absolute zero. */
export type Kelvin = number & { readonly [kelvinUnit]: true };
/** A difference of temperatures in K. */
export type KelvinDifference = number & { readonly [kelvinDifferenceUnit]: true };
/** How fast a temperature changes, in K/h; negative while it gets colder. */
export type KelvinPerHour = number & { readonly [kelvinRateUnit]: true };
/** An energy in eV. */
export type ElectronVolts = number & { readonly [electronVoltsUnit]: true };
/** A mean count of electrons in a pixel, or a noise as so many; zero or more. */
export type Electrons = number & { readonly [electronsUnit]: true };
/** Electrons too many (+) or too few (-). */
export type ElectronDifference = number & { readonly [electronDifferenceUnit]: true };
/** A dark current in electrons per second and pixel. */
export type ElectronsPerSecond = number & { readonly [darkRateUnit]: true };
/** Photons or electrons per µm² of pixel and lx s on it. */
export type PerUm2LuxSecond = number & { readonly [responseUnit]: true };
/** A signal-to-noise ratio; zero where there is no signal. */
export type Snr = number & { readonly [snrUnit]: true };
/** A raw value, a difference of two, or a standard deviation of them. */
export type Dn = number & { readonly [dnUnit]: true };
/** A variance of raw values. */
export type DnVariance = number & { readonly [dnVarianceUnit]: true };
/** The system gain K in raw values per electron. */
export type Gain = number & { readonly [gainUnit]: true };
/** A value of a rendered picture in codes of 0 to 255, or a standard deviation of them. */
export type Codes = number & { readonly [codesUnit]: true };

/** Any finite heat, else a refusal; below zero for a sensor colder than the air. */
export const parseDoublings = (value: number): Doublings | Refusal =>
  finite(value, 'heat-not-finite');
/** A tolerated change of noise above zero, else a refusal. */
export const parseTolerance = (value: number): SnrStops | Refusal =>
  positive(value, 'tolerance-not-positive');
/** A finite temperature above absolute zero, else a refusal. */
export const parseKelvin = (value: number): Kelvin | Refusal =>
  positive(value, 'temperature-out-of-range');
/** Any finite difference of temperatures, else a refusal. */
export const parseKelvinDifference = (value: number): KelvinDifference | Refusal =>
  finite(value, 'temperature-not-finite');
/** A finite doubling temperature above zero, else a refusal. */
export const parseDoublingTemperature = (value: number): KelvinDifference | Refusal =>
  positive(value, 'doubling-temperature-not-positive');
/** Any finite rate, else a refusal. */
export const parseKelvinPerHour = (value: number): KelvinPerHour | Refusal =>
  finite(value, 'temperature-rate-not-finite');
/** A finite energy above zero, else a refusal. */
export const parseElectronVolts = (value: number): ElectronVolts | Refusal =>
  positive(value, 'energy-not-positive');
/** A finite count of zero or more, else a refusal. */
export const parseElectrons = (value: number): Electrons | Refusal =>
  notNegative(value, 'electrons-negative');
/** A finite dark current of zero or more, else a refusal. */
export const parseElectronsPerSecond = (value: number): ElectronsPerSecond | Refusal =>
  notNegative(value, 'dark-current-negative');
/** A finite response above zero, else a refusal. */
export const parseResponse = (value: number): PerUm2LuxSecond | Refusal =>
  positive(value, 'response-not-positive');
/** A finite signal-to-noise ratio above zero, else a refusal. */
export const parseSnr = (value: number): Snr | Refusal => positive(value, 'snr-not-positive');
/** A finite standard deviation above zero, else a refusal. */
export const parseDeviation = (value: number): Dn | Refusal =>
  positive(value, 'deviation-not-positive');
/** A finite variance of zero or more, else a refusal. */
export const parseDnVariance = (value: number): DnVariance | Refusal =>
  notNegative(value, 'variance-negative');
/** A finite gain above zero, else a refusal. */
export const parseGain = (value: number): Gain | Refusal => positive(value, 'gain-not-positive');
/** A finite value of zero or more, else a refusal. */
export const parseCodes = (value: number): Codes | Refusal => notNegative(value, 'codes-negative');
/** A finite ratio of dark currents above 1, which a limit may stand at, else a refusal. */
export const parseRatioLimit = (value: number): Ratio | Refusal =>
  Number.isFinite(value) && value > 1 ? (value as Ratio) : refuse('limit-not-above-one');

/** A finite area of a sensor above zero, else a refusal. */
export const parseSquareMillimetres = (value: number): SquareMillimetres | Refusal =>
  positive(value, 'area-not-positive');
/** A shift by a finite number of pixels, zero or more, else a refusal. */
export const parseShift = (value: number): Pixels | Refusal => notNegative(value, 'shift-negative');

/** A literal heat. @throws RangeError if not finite. */
export const doublings = (value: number): Doublings => must(parseDoublings(value));
/** A literal difference of temperatures. @throws RangeError if not finite. */
export const kelvins = (value: number): KelvinDifference => must(parseKelvinDifference(value));
/** A literal count of electrons. @throws RangeError if negative. */
export const electrons = (value: number): Electrons => must(parseElectrons(value));
/** A literal dark current. @throws RangeError if negative. */
export const electronsPerSecond = (value: number): ElectronsPerSecond =>
  must(parseElectronsPerSecond(value));
/** A literal response. @throws RangeError unless above zero. */
export const response = (value: number): PerUm2LuxSecond => must(parseResponse(value));
/** A literal change of noise. @throws RangeError unless above zero. */
export const tolerance = (value: number): SnrStops => must(parseTolerance(value));
