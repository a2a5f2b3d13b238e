import type { Refusal } from './refusal.ts';
import {
  type Apex,
  type CandelasPerM2,
  type FNumber,
  type Iso,
  parseFNumber,
  parseIso,
  parseLuminance,
  parseSeconds,
  type ReflectedConstant,
  type Seconds,
} from './units.ts';

/*
 * The additive scale of Exif: Ev = Av + Tv = Bv + Sv. Source: Exif/APEX (CIPA DC-008, annex on
 * APEX), from memory; Sv = log2(S/3.125): W3C Exif vocabulary 2003/12, comment of
 * brightnessValue. An older text writes Sv = log2(0.3 S), which makes ISO 100 4.91 instead of 5.
 */

/** The speed whose Sv is zero. */
const ISO_AT_ZERO = 3.125;

/** One foot-lambert in cd/m²: Bv in Exif counts from it. Source: unit tables; libexif. */
const FOOT_LAMBERT = 1 / (Math.PI * 0.3048 ** 2);

/** Av = 2 log2 N. */
export const apertureValue = (n: FNumber): Apex => (2 * Math.log2(n)) as Apex;

/** Tv = -log2 t, t in seconds. */
export const timeValue = (t: Seconds): Apex => -Math.log2(t) as Apex;

/** Sv = log2(S / 3.125): ISO 100 is 5. */
export const speedValue = (s: Iso): Apex => Math.log2(s / ISO_AT_ZERO) as Apex;

/** N = 2^(Av/2); refuses a value beyond all numbers. */
export const fNumberFromApertureValue = (av: Apex): FNumber | Refusal =>
  parseFNumber(2 ** (av / 2));

/** t = 2^-Tv in seconds; refuses a value beyond all numbers. */
export const timeFromTimeValue = (tv: Apex): Seconds | Refusal => parseSeconds(2 ** -tv);

/** S = 3.125 * 2^Sv; refuses a value beyond all numbers. */
export const isoFromSpeedValue = (sv: Apex): Iso | Refusal => parseIso(ISO_AT_ZERO * 2 ** sv);

/**
 * The luminance in cd/m² behind an Exif brightness value, 2^Bv foot-lamberts; refuses a value
 * beyond all numbers. Never mix it with a luminance from settings and K = 12.5: the same scene
 * reads 0.2234 EV apart.
 */
export const luminanceFromBrightnessValue = (bv: Apex): CandelasPerM2 | Refusal =>
  parseLuminance(FOOT_LAMBERT * 2 ** bv);

/** The meter constant that Bv and Sv together imply, 10.707 cd s ISO/m², not 12.5. */
export const APEX_REFLECTED_CONSTANT = (FOOT_LAMBERT * ISO_AT_ZERO) as ReflectedConstant;
