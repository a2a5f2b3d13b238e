import { type Refusal, refuse } from './refusal.ts';
import type { Codes, Snr } from './sensorUnits.ts';
import type { Ratio, Stops } from './units.ts';

/*
 * Noise of rendered pictures. A camera's JPEG is not sRGB of the scene: tone curve, denoising and
 * compression stand between. Its figures compare relative to each other only.
 */

/** A value of sRGB from 0 to 1. */
declare const srgbUnit: unique symbol;
export type Srgb = number & { readonly [srgbUnit]: true };

/** A value from 0 to 1, else a refusal. */
export const parseSrgb = (value: number): Srgb | Refusal =>
  value >= 0 && value <= 1 ? (value as Srgb) : refuse('srgb-out-of-range');

/** IEC 61966-2-1. */
const CURVE = { toe: 0.04045, toeSlope: 12.92, offset: 0.055, power: 2.4 };
const WHITE_CODE = 255;

/** The linear value behind a value of sRGB. */
export const srgbToLinear = (v: Srgb): Ratio =>
  (v <= CURVE.toe
    ? v / CURVE.toeSlope
    : ((v + CURVE.offset) / (1 + CURVE.offset)) ** CURVE.power) as Ratio;

/** How fast the linear value rises there: turns a deviation of values into one of light. */
export const srgbSlope = (v: Srgb): Ratio =>
  (v <= CURVE.toe
    ? 1 / CURVE.toeSlope
    : (CURVE.power / (1 + CURVE.offset)) *
      ((v + CURVE.offset) / (1 + CURVE.offset)) ** (CURVE.power - 1)) as Ratio;

/** The noise over the signal in linear light; refuses black ('no-signal'). */
export const linearRelativeNoise = (v: Srgb, deviation: Codes): Ratio | Refusal =>
  v > 0
    ? ((((deviation / WHITE_CODE) * srgbSlope(v)) / srgbToLinear(v)) as Ratio)
    : refuse('no-signal');

/**
 * The signal-to-noise ratio without trusting any curve: the slope of the value against ln exposure,
 * from two frames a known part of a stop apart, over the deviation. It undoes the tone curve, not the
 * denoising. Refuses frames at one exposure or without noise ('no-slope').
 */
export function inputReferredSnr(
  darker: Codes,
  brighter: Codes,
  apart: Stops,
  deviation: Codes,
): Snr | Refusal {
  const snr = (brighter - darker) / (apart * Math.LN2) / deviation;
  return Number.isFinite(snr) ? (snr as Snr) : refuse('no-slope');
}
