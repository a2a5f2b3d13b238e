import type { Step } from '../science/dials.ts';
import type { Millimetres, Stops } from '../science/units.ts';
import type { LensId } from './ids.ts';

/** F-number positions of a lens; marks as engraved or shown. */
export interface FNumberDial {
  /** May be off the series ('0.95', '3.5'): it then stays as marked. */
  readonly widest: string;
  readonly narrowest: string;
  readonly step: Step;
  readonly missing: readonly string[];
}

/** A lens as its owner knows it. */
export interface Lens {
  readonly id: LensId;
  readonly name: string;
  readonly focalMm: Millimetres;
  readonly fNumber: FNumberDial;
  /** Light the glass takes, in stops: 0 or below, -0.15 for a loss of 0.15; null = unknown. */
  readonly transmissionStops: Stops | null;
  /** From the sensor plane; null = unknown. */
  readonly closestFocusMm: Millimetres | null;
  readonly focusSurvivesPowerOff: boolean;
  readonly invented: boolean;
}
