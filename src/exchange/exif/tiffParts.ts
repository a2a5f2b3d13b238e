import { type Refusal, refuse } from '../../science/refusal.ts';

/*
 * A raw file on the base of TIFF may hold its directories anywhere in its fifty megabytes. Only they
 * and their values are read, into a buffer that is empty elsewhere, so that a general reader finds
 * every offset where it stands. Layout: TIFF 6.0, section 2.
 */

/** Reads the bytes from `start` to before `end` of a file. */
export type ReadBytes = (start: number, end: number) => Promise<ArrayBuffer>;

/** Longer files are no still pictures (our choice). */
const MOST_BYTES = 1_000_000_000;
/** A directory and its values mostly lie together: one reading gets them all. */
const AT_ONCE = 32_768;
/** Longer values are pictures or profiles, nothing that Exif says of an exposure. */
const MOST_VALUE = 65_536;
const MOST_DIRECTORIES = 8;

/** By type: byte, ASCII, short, long, rational, signed ones, float, double, IFD. */
const TYPE_BYTES = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4];
const EXIF_DIRECTORY = 0x8769;
const MAKER_NOTE = 0x927c;

/** Whether a file begins as TIFF does, in either order of bytes. */
export function isTiff(head: ArrayBuffer): boolean {
  if (head.byteLength < 8) return false;
  const view = new DataView(head);
  return (
    (view.getUint16(0) === 0x4949 && view.getUint16(2, true) === 42) ||
    (view.getUint16(0) === 0x4d4d && view.getUint16(2) === 42)
  );
}

/** What was read of a file, in place, and how much that was. */
export interface TiffParts {
  readonly buffer: ArrayBuffer;
  readonly readBytes: number;
}

/**
 * The directories of a TIFF-based file with their values, each at its own place.
 *
 * @param size of the file, in bytes
 * @returns refused: 'too-large', or 'not-whole' where an offset leads out of the file.
 */
export async function tiffParts(size: number, read: ReadBytes): Promise<TiffParts | Refusal> {
  if (size > MOST_BYTES) return refuse('too-large');
  if (size < 8) return refuse('not-whole');
  const buffer = new ArrayBuffer(size);
  const bytes = new Uint8Array(buffer);
  const view = new DataView(buffer);
  const have: { start: number; end: number }[] = [];
  let readBytes = 0;
  /** @returns whether the file is that long. */
  const bring = async (start: number, end: number): Promise<boolean> => {
    if (end > size) return false;
    if (have.some((part) => part.start <= start && end <= part.end)) return true;
    const stop = Math.min(size, Math.max(end, start + AT_ONCE));
    bytes.set(new Uint8Array(await read(start, stop)), start);
    have.push({ start, end: stop });
    readBytes += stop - start;
    return true;
  };
  await bring(0, 8);
  const little = view.getUint16(0) === 0x4949;
  const waiting = [view.getUint32(4, little)];
  const seen = new Set<number>();
  for (let at = waiting.shift(); at !== undefined; at = waiting.shift()) {
    if (seen.has(at) || seen.size === MOST_DIRECTORIES) continue;
    seen.add(at);
    if (at < 8 || !(await bring(at, at + 2))) return refuse('not-whole');
    const entries = view.getUint16(at, little);
    if (!(await bring(at, at + 2 + entries * 12))) return refuse('not-whole');
    for (let entry = at + 2; entry < at + 2 + entries * 12; entry += 12) {
      const tag = view.getUint16(entry, little);
      const length =
        (TYPE_BYTES[view.getUint16(entry + 2, little)] ?? 0) * view.getUint32(entry + 4, little);
      const value = view.getUint32(entry + 8, little);
      if (tag === EXIF_DIRECTORY) waiting.push(value);
      // A value that lies outside is as good as none; the others may still tell.
      else if (tag !== MAKER_NOTE && length > 4 && length <= MOST_VALUE) {
        await bring(value, value + length);
      }
    }
  }
  return { buffer, readBytes };
}
