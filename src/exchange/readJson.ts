import {
  type Fault,
  fault,
  isFault,
  object,
  oneOf,
  type Reader,
  text,
  whole,
  within,
} from '../gear/read.ts';
import type { FileContent, Head, JsonFile } from './json.ts';

/** Every file is refused above this, before it is parsed; in bytes. Nothing of ours comes near. */
export const MOST_BYTES = 50 * 1024 * 1024;

/**
 * How many groups, lists and fields a file may hold. Its bytes alone would not bound what parsing
 * takes: 50 MB of empty lists became 1.2 GB in memory (measured). Ours have one of them in 20 bytes
 * or more (measured on journals and backups), so that no file of allowed size comes near.
 */
export const MOST_PARTS = 3_000_000;

/**
 * JSON from the text of a file, with or without a byte order mark.
 *
 * @returns a fault: 'file-too-large', 'file-too-full', 'file-empty', or 'not-json' with `line` and `column` from 1
 *   where the engine says at which place it stumbled.
 */
export function parseJson(file: string): unknown | Fault {
  // No character takes less than a byte, so that what is too long here is too large there.
  if (file.length > MOST_BYTES) return fault('file-too-large', { mostMegabytes: 50 });
  const body = file.startsWith('\uFEFF') ? file.slice(1) : file;
  if (body.trim() === '') return fault('file-empty');
  if (holdsMoreThan(MOST_PARTS, body)) return fault('file-too-full');
  try {
    return JSON.parse(body) as unknown;
  } catch (error) {
    return fault('not-json', placeOf(error, body));
  }
}

/** Whether a text has more than so many of the marks by which JSON begins a group, a list, a field. */
function holdsMoreThan(most: number, json: string): boolean {
  if (json.length <= most) return false;
  let parts = 0;
  for (let at = 0; at < json.length; at += 1) {
    const unit = json.charCodeAt(at);
    if (unit === BRACE || unit === BRACKET || unit === COLON) parts += 1;
  }
  return parts > most;
}

const [BRACE, BRACKET, COLON] = [0x7b, 0x5b, 0x3a];

/** Engines word a syntax error differently, and some do not say where it is. */
function placeOf(error: unknown, body: string): Fault['params'] {
  const message = error instanceof Error ? error.message : '';
  const byLine = /line (\d+) column (\d+)/.exec(message);
  if (byLine) return { line: Number(byLine[1]), column: Number(byLine[2]) };
  const position = /position (\d+)/.exec(message)?.[1];
  const cutOff = /end of (JSON )?(input|data)|EOF/i.test(message);
  if (position === undefined && !cutOff) return {};
  const lines = body.slice(0, position === undefined ? undefined : Number(position)).split('\n');
  return { line: lines.length, column: (lines.at(-1) ?? '').length + 1 };
}

/** What a parsed file says it is; empty if it says nothing. */
export function formatOf(json: unknown): string {
  const format =
    typeof json === 'object' && json !== null && Object.hasOwn(json, 'format')
      ? (json as { format: unknown }).format
      : '';
  return typeof format === 'string' ? format.slice(0, 40) : '';
}

/** Brings a file's content from one version to the next. */
export type ContentStep = (content: unknown) => unknown;

/**
 * Reads a kind of file from parsed JSON, whole.
 *
 * @param steps how the content of version 1, 2, ... becomes that of the next.
 *
 * @returns the first fault: 'file-newer' for a file that a newer version wrote, else the first
 *   field that is wrong, with its path.
 */
export function fileReader<T extends object>(
  { format, version }: Pick<JsonFile<T>, 'format' | 'version'>,
  readContent: Reader<T>,
  steps: readonly ContentStep[],
): Reader<FileContent<T>> {
  const readHead = object<Head>({
    format: oneOf([format]),
    version: whole(1, version),
    app: text(100),
    written: text(100),
  });
  return (json) => {
    const { format: f, version: v, app, written, ...rest } = Object(json);
    if (typeof v === 'number' && v > version) {
      return within('version', fault('file-newer', { version: v, known: version }));
    }
    const head = readHead({ format: f, version: v, app, written });
    if (isFault(head)) return head;
    const content = readContent(
      steps.slice(head.version - 1).reduce<unknown>((older, step) => step(older), rest),
    );
    return isFault(content) ? content : { head, content };
  };
}
