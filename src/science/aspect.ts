import { areaStops, type SensorFormat } from './formats.ts';
import type { Millimetres, Ratio, Stops } from './units.ts';

/** The largest part of a format with an aspect ratio (width over height). */
export function croppedTo({ width, height }: SensorFormat, aspect: Ratio): SensorFormat {
  return width / height > aspect
    ? { width: (height * aspect) as Millimetres, height }
    : { width, height: (width / aspect) as Millimetres };
}

/** What the area of a body adds over the reference's when both are cropped to one aspect ratio. */
export const areaStopsAtAspect = (
  reference: SensorFormat,
  body: SensorFormat,
  aspect: Ratio,
): Stops => areaStops(croppedTo(reference, aspect), croppedTo(body, aspect));
