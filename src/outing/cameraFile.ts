import type { RigId } from '../gear/ids.ts';
import type { SetId } from '../plan/ids.ts';
import type {
  Celsius,
  FNumber,
  Iso,
  Millimetres,
  Pixels,
  Seconds,
  Stops,
} from '../science/units.ts';
import type { MadeId } from './ids.ts';

/** A moment as a body's own clock showed it when it wrote a file. */
export interface CameraTime {
  /** The figures of its calendar and clock, counted as if they were UTC, with parts of a second. */
  readonly shownMs: number;
  /** Minutes east of UTC where the file says them; most do not. */
  readonly offsetMin: number | null;
  /** Whether parts of a second were written. */
  readonly subSecond: boolean;
}

/** What a picture's file says of itself; null where it says nothing. */
export interface CameraFile {
  /** Without its folder. */
  readonly name: string;
  readonly bytes: number;
  readonly time: CameraTime | null;
  readonly exposureS: Seconds | null;
  readonly fNumber: FNumber | null;
  readonly iso: Iso | null;
  readonly focalMm: Millimetres | null;
  readonly make: string | null;
  readonly model: string | null;
  readonly serial: string | null;
  readonly lens: string | null;
  readonly pixelsWide: Pixels | null;
  readonly pixelsHigh: Pixels | null;
  /** Of the camera or its sensor, where the file says it. */
  readonly temperature: Celsius | null;
}

/** Which file belongs to a made frame; null = none, said by hand. */
export interface MatchedFile {
  readonly made: MadeId;
  readonly file: CameraFile | null;
}

/** How a body's clock stood against the phone's, as far as the files tell. */
export interface BodyClock {
  readonly rig: RigId;
  /** Body's shown time minus the phone's local time, at `atMs`; positive = the body is ahead. */
  readonly aheadS: Seconds;
  /** One standard deviation. */
  readonly sigmaS: Seconds;
  /** Seconds that the body gains in an hour; 0 where drift could not be told. */
  readonly gainsSPerHour: Seconds;
  /** The phone's wall clock at which `aheadS` holds. */
  readonly atMs: number;
  readonly from: 'clock-frame' | 'sequence' | 'by-hand';
}

/** How the brightening that a pair really needed was found. */
export type EvenedBy = 'typed' | 'region';

/** The brightening that really brought a rig's frames to its reference's brightness. */
export interface EvenedUp {
  readonly set: SetId;
  readonly rig: RigId;
  /** Null = the set as a whole. */
  readonly pass: number | null;
  /** Null takes an earlier figure back. */
  readonly needed: {
    readonly stops: Stops;
    /** One standard deviation; null = not stated. */
    readonly sigma: Stops | null;
    readonly by: EvenedBy;
  } | null;
}
