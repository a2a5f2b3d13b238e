import { type Refusal, refuse } from './refusal.ts';
import type { Micrometres, Millimetres, Pixels, Ratio } from './units.ts';

/** The types of Exif values used here. */
export type ExifType = 'ASCII' | 'SHORT' | 'LONG' | 'RATIONAL' | 'SRATIONAL' | 'UNDEFINED';

/** A tag of the standard. */
export interface ExifTag {
  readonly number: number;
  readonly type: ExifType;
}

/**
 * Tags by the standard's spelling. Source: Exiv2 tags_int.cpp (2026-08), after CIPA DC-008.
 *
 * ISOSpeedRatings is the name before Exif 2.3 of PhotographicSensitivity. Temperature is that of
 * the photographer's surroundings, not of the sensor.
 */
export const EXIF_TAGS = {
  ExposureTime: { number: 0x829a, type: 'RATIONAL' },
  FNumber: { number: 0x829d, type: 'RATIONAL' },
  PhotographicSensitivity: { number: 0x8827, type: 'SHORT' },
  ISOSpeedRatings: { number: 0x8827, type: 'SHORT' },
  SensitivityType: { number: 0x8830, type: 'SHORT' },
  StandardOutputSensitivity: { number: 0x8831, type: 'LONG' },
  RecommendedExposureIndex: { number: 0x8832, type: 'LONG' },
  ISOSpeed: { number: 0x8833, type: 'LONG' },
  OffsetTime: { number: 0x9010, type: 'ASCII' },
  OffsetTimeOriginal: { number: 0x9011, type: 'ASCII' },
  OffsetTimeDigitized: { number: 0x9012, type: 'ASCII' },
  ShutterSpeedValue: { number: 0x9201, type: 'SRATIONAL' },
  ApertureValue: { number: 0x9202, type: 'RATIONAL' },
  BrightnessValue: { number: 0x9203, type: 'SRATIONAL' },
  ExposureBiasValue: { number: 0x9204, type: 'SRATIONAL' },
  MaxApertureValue: { number: 0x9205, type: 'RATIONAL' },
  SubjectDistance: { number: 0x9206, type: 'RATIONAL' },
  FocalLength: { number: 0x920a, type: 'RATIONAL' },
  Temperature: { number: 0x9400, type: 'SRATIONAL' },
  Humidity: { number: 0x9401, type: 'RATIONAL' },
  Pressure: { number: 0x9402, type: 'RATIONAL' },
  WaterDepth: { number: 0x9403, type: 'SRATIONAL' },
  Acceleration: { number: 0x9404, type: 'RATIONAL' },
  CameraElevationAngle: { number: 0x9405, type: 'SRATIONAL' },
  FocalPlaneXResolution: { number: 0xa20e, type: 'RATIONAL' },
  FocalPlaneYResolution: { number: 0xa20f, type: 'RATIONAL' },
  FocalPlaneResolutionUnit: { number: 0xa210, type: 'SHORT' },
  FocalLengthIn35mmFilm: { number: 0xa405, type: 'SHORT' },
  CompositeImage: { number: 0xa460, type: 'SHORT' },
} as const satisfies Readonly<Record<string, ExifTag>>;

/** The tag of a name; null for a name that is not in the table. */
export const exifTag = (name: string): ExifTag | null =>
  Object.hasOwn(EXIF_TAGS, name) ? EXIF_TAGS[name as keyof typeof EXIF_TAGS] : null;

/**
 * The value of an Exif fraction. Refuses a denominator of zero ('exif-fraction-without-value'):
 * the tag is to be treated as absent.
 */
export const exifFraction = (numerator: number, denominator: number): number | Refusal =>
  denominator === 0 ? refuse('exif-fraction-without-value') : numerator / denominator;

/** The length in mm of the units in which a focal plane resolution counts. */
const RESOLUTION_UNIT_MM = { 2: 25.4, 3: 10 } as const;

/** 2 for the inch, 3 for the centimetre. */
export type ResolutionUnit = keyof typeof RESOLUTION_UNIT_MM;

/** Reads FocalPlaneResolutionUnit; refuses any code but 2 and 3, which alone have a length. */
export const parseResolutionUnit = (code: number): ResolutionUnit | Refusal =>
  code === 2 || code === 3 ? code : refuse('resolution-unit-without-length');

/** The pixel pitch in µm behind a focal plane resolution in pixels per unit. */
export const pitchFromResolution = (resolution: Ratio, unit: ResolutionUnit): Micrometres =>
  ((1000 * RESOLUTION_UNIT_MM[unit]) / resolution) as Micrometres;

/**
 * The sensor's width in mm behind a focal plane resolution. Only for a file at full size: many
 * files keep the full-size resolution in a reduced image.
 */
export const widthFromResolution = (
  across: Pixels,
  resolution: Ratio,
  unit: ResolutionUnit,
): Millimetres => ((across / resolution) * RESOLUTION_UNIT_MM[unit]) as Millimetres;
