import type {
  CropRatio,
  FNumber,
  Iso,
  Millimetres,
  Ratio,
  SquareMillimetres,
  Stops,
} from './units.ts';

/** The light-sensitive area of a body, by its dimensions. */
export interface SensorFormat {
  readonly width: Millimetres;
  readonly height: Millimetres;
}

/** The diagonal of a format in mm. */
export const diagonal = (format: SensorFormat): Millimetres =>
  Math.hypot(format.width, format.height) as Millimetres;

/** The area of a format in mm². */
export const area = (format: SensorFormat): SquareMillimetres =>
  (format.width * format.height) as SquareMillimetres;

/**
 * The crop ratio: the diagonal of this body over the diagonal of the reference. Below 1 for the
 * smaller format. The trade's usage; common practice, no source.
 */
export const cropRatio = (reference: SensorFormat, body: SensorFormat): CropRatio =>
  (diagonal(body) / diagonal(reference)) as CropRatio;

/** The ratio of two widths or of two heights, body over reference. */
export const cropRatioBySide = (reference: Millimetres, body: Millimetres): CropRatio =>
  (body / reference) as CropRatio;

/** The square root of the ratio of the areas, body over reference. */
export const cropRatioByArea = (reference: SensorFormat, body: SensorFormat): CropRatio =>
  Math.sqrt(areaRatio(reference, body)) as CropRatio;

/** The area of this body over the area of the reference. */
export const areaRatio = (reference: SensorFormat, body: SensorFormat): Ratio =>
  (area(body) / area(reference)) as Ratio;

/** The crop ratio with body and reference changing places. */
export const reversedCrop = (crop: CropRatio): CropRatio => (1 / crop) as CropRatio;

/**
 * What the area of the sensor adds at the same light per area, in stops: positive when the body
 * is larger than the reference.
 */
export const areaStops = (reference: SensorFormat, body: SensorFormat): Stops =>
  Math.log2(areaRatio(reference, body)) as Stops;

/** The same judged by a crop ratio, 2 log2(crop): exact only where the aspect ratios agree. */
export const cropStops = (crop: CropRatio): Stops => (2 * Math.log2(crop)) as Stops;

/**
 * By how many stops the diagonal overstates (+) or understates (-) the body's light over the
 * whole sensor; about 0.06 between 3:2 and 4:3, zero where the aspect ratios agree.
 */
export const aspectStops = (reference: SensorFormat, body: SensorFormat): Stops =>
  (cropStops(cropRatio(reference, body)) - areaStops(reference, body)) as Stops;

/*
 * Equivalence: equal entrance pupil and equal angle of view give equal depth of field at equal
 * viewing size and equal light from the scene. Derived from geometry.
 */

/** The focal length in mm that gives the reference's angle of view: focal length x crop ratio. */
export const equivalentFocal = (reference: Millimetres, crop: CropRatio): Millimetres =>
  (reference * crop) as Millimetres;

/**
 * The f-number that keeps the entrance pupil at the equivalent focal length: f-number x crop
 * ratio. With other focal lengths match the entrance pupil itself (focus.ts).
 */
export const equivalentFNumber = (reference: FNumber, crop: CropRatio): FNumber =>
  (reference * crop) as FNumber;

/** The speed that renders the equivalent f-number as bright as the reference: ISO x crop². */
export const equivalentIso = (reference: Iso, crop: CropRatio): Iso =>
  (reference * crop ** 2) as Iso;
