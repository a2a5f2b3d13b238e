import { load } from 'exifreader';
import { cameraFileOf, type ExifTags } from '../exchange/exif/cameraFile.ts';
import { isTiff, tiffParts } from '../exchange/exif/tiffParts.ts';
import type { CameraFile } from '../outing/cameraFile.ts';
import { isRefusal } from '../science/refusal.ts';

/** Why nothing is known of a file but its name. */
export type Unread =
  /** It holds no Exif, or is no picture that the reader knows. */
  | 'no-exif'
  /** It was moved, or its card was taken out. */
  | 'gone'
  | 'too-large';

/** What of a file is needed here: a `File` is one. */
export type PictureBytes = Pick<File, 'name' | 'size' | 'slice'>;

/** What was read of a picture. */
export type ReadPicture =
  | { readonly read: CameraFile }
  | { readonly unread: Unread; readonly name: string };

/** Where JPEG and its like keep their Exif (a segment holds at most 64 KiB, and it is among the first). */
const HEAD = 131_072;
/** Further than this nobody's Exif lies before the picture itself (our choice). */
const MOST_HEAD = 8_388_608;

/** Reads the part of a picture that holds its Exif, and no more. Never throws. */
export async function readPicture(file: PictureBytes): Promise<ReadPicture> {
  const unread = (why: Unread): ReadPicture => ({ unread: why, name: file.name });
  const bytes = (start: number, end: number) => file.slice(start, end).arrayBuffer();
  let head: ArrayBuffer;
  let tags: ExifTags | null;
  try {
    head = await bytes(0, Math.min(HEAD, file.size));
    if (isTiff(head)) {
      const parts = await tiffParts(file.size, bytes);
      if (isRefusal(parts)) return unread(parts.rule === 'too-large' ? 'too-large' : 'no-exif');
      tags = tagsOf(parts.buffer).tags;
    } else {
      const found = tagsOf(head);
      const further = found.end > head.byteLength && found.end <= Math.min(MOST_HEAD, file.size);
      tags = further ? tagsOf(await bytes(0, found.end)).tags : found.tags;
    }
  } catch {
    // Only the file itself can fail here: what it holds is caught where it is read.
    return unread('gone');
  }
  return tags === null ? unread('no-exif') : { read: cameraFileOf(file, tags) };
}

/** The tags in these bytes; `end` = how far the file must be read to have them all. */
function tagsOf(buffer: ArrayBuffer): { readonly tags: ExifTags | null; readonly end: number } {
  try {
    const found = load(buffer, {
      expanded: true,
      includeOffsets: true,
      includeTags: { exif: true, file: true },
    });
    const { exif, metadataRange } = found;
    return {
      tags: exif === undefined ? null : (exif as unknown as ExifTags),
      end: metadataRange?.end ?? 0,
    };
  } catch {
    // The reader throws at whatever is no picture or is damaged: there is nothing to be known of it.
    return { tags: null, end: 0 };
  }
}
