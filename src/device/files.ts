/** A chosen file's text, or why there is none. */
export type ReadText =
  | { readonly read: true; readonly text: string }
  | { readonly read: false; readonly why: 'too-large' | 'not-text' | 'gone' };

/**
 * Reads a file that the user has chosen, as UTF-8.
 *
 * @param limitBytes A larger file is refused before it is read.
 * @returns the text without its byte order mark; 'not-text' when the bytes are not
 *   UTF-8, 'gone' when the system no longer gives the file out.
 */
export async function readText(file: Blob, limitBytes: number): Promise<ReadText> {
  if (file.size > limitBytes) return { read: false, why: 'too-large' };
  let bytes: ArrayBuffer;
  try {
    bytes = await file.arrayBuffer();
  } catch {
    return { read: false, why: 'gone' };
  }
  try {
    return { read: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { read: false, why: 'not-text' };
  }
}
