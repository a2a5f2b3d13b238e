/** What we use of the library, which brings no types. */
declare module 'piexifjs' {
  type Tags = Readonly<Record<number, unknown>>;
  const piexif: {
    /** Exif as a JPEG's segment holds it. */
    dump(exif: { readonly '0th'?: Tags; readonly Exif?: Tags }): string;
    /** A JPEG, as a string of bytes, with this segment. */
    insert(segment: string, jpeg: string): string;
    readonly ImageIFD: Readonly<Record<'Make' | 'Model', number>>;
    readonly ExifIFD: Readonly<
      Record<
        | 'ExposureTime'
        | 'FNumber'
        | 'ISOSpeedRatings'
        | 'DateTimeOriginal'
        | 'SubSecTimeOriginal'
        | 'FocalLength'
        | 'BodySerialNumber'
        | 'LensModel'
        | 'PixelXDimension'
        | 'PixelYDimension',
        number
      >
    >;
  };
  export default piexif;
}
