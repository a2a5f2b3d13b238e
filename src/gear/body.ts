import type { Step } from '../science/dials.ts';
import type { Stated, ThermalRange } from '../science/thermalRange.ts';
import type { Millimetres, Pixels, Seconds } from '../science/units.ts';
import type { BodyId } from './ids.ts';
import type { Letter } from './letter.ts';

/** ISO positions of a body; marks as the body shows them. */
export interface IsoDial {
  readonly lowest: string;
  readonly highest: string;
  readonly step: Step;
  /** Positions below `lowest` that the maker calls extended; null = none. */
  readonly extendedLowest: string | null;
  /** Positions above `highest` that the maker calls extended; null = none. */
  readonly extendedHighest: string | null;
  readonly missing: readonly string[];
}

/** Timed positions of a body; marks as the body shows them. */
export interface TimeDial {
  readonly shortest: string;
  readonly longest: string;
  /** Step below one second. */
  readonly step: Step;
  /** Step from one second up. */
  readonly stepFrom1s: Step;
  readonly beyond30s: 'doubling' | 'minutes';
  /** Whether '15' and '30' run 16 and 32 s, as marked, or nobody has measured it. */
  readonly longMarks: 'exact' | 'as-marked' | 'unknown';
  readonly missing: readonly string[];
}

/** How a time longer than the dial is made by hand. */
export type Bulb =
  | { readonly kind: 'none' }
  | { readonly kind: 'press-press' | 'hold'; readonly longestS: Seconds };

/** When the body takes a second, closed frame by itself after an exposure. */
export type DarkFrame =
  | { readonly kind: 'never' }
  | { readonly kind: 'always' }
  | { readonly kind: 'from'; readonly fromS: Seconds };

export interface SelfTimer {
  readonly choicesS: readonly Seconds[];
  /** The one used for this work; null = released by cable or remote. */
  readonly usedS: Seconds | null;
  readonly survivesPowerOff: boolean;
}

/** How the body names its files, so that the number can count up by itself. */
export interface FileNames {
  readonly prefix: string;
  readonly digits: number;
  /** The last number before the counter starts again at 1. */
  readonly rollsOverAfter: number;
  /** Whether a raw and its JPEG carry one number. */
  readonly rawAndJpegShareNumber: boolean;
}

export interface Bits {
  readonly depth: number;
  /** What lowers the depth (continuous release, silent shutter, ...), in the owner's words. */
  readonly loweredBy: string;
}

/** What has been measured of how a body warms, with its source; null where nobody has. */
export type MeasuredHeat = {
  readonly [K in keyof ThermalRange]: Stated<ThermalRange[K]['usual']> | null;
};

/** A camera body as its owner knows it. */
export interface Body {
  readonly id: BodyId;
  readonly name: string;
  /** The letter its rig takes unless that one is in use. */
  readonly sign: Letter;
  readonly widthMm: Millimetres;
  readonly heightMm: Millimetres;
  readonly pixelsWide: Pixels;
  readonly pixelsHigh: Pixels;
  readonly iso: IsoDial;
  readonly time: TimeDial;
  readonly bulb: Bulb;
  readonly selfTimer: SelfTimer;
  readonly darkFrame: DarkFrame;
  readonly bits: Bits;
  readonly files: FileNames;
  readonly heat: MeasuredHeat;
  /** True for the practice outing's gear, which is marked as invented and left out of backups. */
  readonly invented: boolean;
}
