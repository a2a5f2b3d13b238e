/// <reference path="./piexifjs.d.ts" />
import piexif from 'piexifjs';

/*
 * Pictures as a body writes them, with Exif put in by a general library. Bodies, lenses and numbers
 * are invented.
 */

/** A grey JPEG of one pixel, without Exif. */
const PIXEL = atob(
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAMCAgICAgMCAgIDAwMDBAYEBAQEBAgGBgUGCQgKCgkICQkKDA8MCgsOCwkJDRENDg8QEBEQCgwSExIQEw8QEBD/yQALCAABAAEBAREA/8wABgAQEAX/2gAIAQEAAD8A0s8g/9k=',
);

/** What is to be written; what is left out is not in the file. */
export interface Written {
  readonly model?: string;
  readonly serial?: string;
  readonly lens?: string;
  /** As the body's clock shows it: '2027:02:12 17:45:06'. */
  readonly time?: string;
  /** Hundredths of a second: '25'. */
  readonly subSec?: string;
  /** Numerator and denominator, seconds. */
  readonly exposure?: readonly [number, number];
  readonly fNumber?: readonly [number, number];
  readonly iso?: number;
  readonly focal?: readonly [number, number];
  readonly pixels?: readonly [number, number];
}

const bytesOf = (signs: string) =>
  Uint8Array.from(signs, (sign) => sign.charCodeAt(0)) as Uint8Array<ArrayBuffer>;

/** A JPEG without Exif. */
export const bareJpeg = (): Uint8Array<ArrayBuffer> => bytesOf(PIXEL);

/** A JPEG with this Exif. */
export function jpeg(said: Written): Uint8Array<ArrayBuffer> {
  const { ExifIFD, ImageIFD } = piexif;
  const tags = (...pairs: readonly (readonly [number, unknown])[]) =>
    Object.fromEntries(pairs.filter(([, value]) => value !== undefined));
  const segment = piexif.dump({
    '0th':
      said.model === undefined
        ? {}
        : tags([ImageIFD.Make, 'Invented'], [ImageIFD.Model, said.model]),
    Exif: tags(
      [ExifIFD.ExposureTime, said.exposure],
      [ExifIFD.FNumber, said.fNumber],
      [ExifIFD.ISOSpeedRatings, said.iso],
      [ExifIFD.DateTimeOriginal, said.time],
      [ExifIFD.SubSecTimeOriginal, said.subSec],
      [ExifIFD.FocalLength, said.focal],
      [ExifIFD.BodySerialNumber, said.serial],
      [ExifIFD.LensModel, said.lens],
      [ExifIFD.PixelXDimension, said.pixels?.[0]],
      [ExifIFD.PixelYDimension, said.pixels?.[1]],
    ),
  });
  return bytesOf(piexif.insert(segment, PIXEL));
}
