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

/*
 * What all our JSON files have in common: they say what they are and in which
 * version, which app wrote them and when.
 */

/** Who wrote a file and when; both come from outside. */
export interface Stamp {
  /** The app's version, for a report; nothing depends on it. */
  readonly app: string;
  /** ISO 8601, UTC. */
  readonly written: string;
}

/** The first fields of every file. */
export interface Head extends Stamp {
  readonly format: string;
  readonly version: number;
}

/** What a file says, with who wrote it and when. */
export interface FileContent<T> {
  readonly head: Head;
  readonly content: T;
}

/** A kind of JSON file. */
export interface JsonFile<T extends object> {
  readonly format: string;
  /** The file's text. */
  readonly write: (content: T, stamp: Stamp) => string;
  /**
   * The content of parsed JSON, whole.
   *
   * @returns the first fault: 'file-newer' for a file that a newer version wrote, else the first
   *   field that is wrong, with its path.
   */
  readonly read: Reader<FileContent<T>>;
}

/** Every file is refused above this, before it is parsed; in bytes. Nothing of ours comes near. */
export const MOST_BYTES = 50 * 1024 * 1024;

/**
 * JSON from the text of a file, with or without a byte order mark.
 *
 * @returns a fault: 'file-too-large', 'file-empty', or 'not-json' with `line` and `column` from 1
 *   where the engine says at which place it stumbled.
 */
export function parseJson(file: string): unknown | Fault {
  // No character takes less than a byte, so that what is too long here is too large there.
  if (file.length > MOST_BYTES) return fault('file-too-large', { mostMegabytes: 50 });
  const body = file.startsWith('\uFEFF') ? file.slice(1) : file;
  if (body.trim() === '') return fault('file-empty');
  try {
    return JSON.parse(body) as unknown;
  } catch (error) {
    return fault('not-json', placeOf(error, body));
  }
}

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

/**
 * Defines a kind of file: its head and its content are fields of one object.
 *
 * @param version goes up by one whenever the file's shape changes, added fields included: a field
 *   that an older app does not know must not be lost in silence.
 */
export function jsonFile<T extends object>(
  format: string,
  version: number,
  readContent: Reader<T>,
): JsonFile<T> {
  const readHead = object<Head>({
    format: oneOf([format]),
    version: whole(1, version),
    app: text(100),
    written: text(100),
  });
  return {
    format,
    write: (content, stamp) => JSON.stringify({ format, version, ...stamp, ...content }),
    read: (json) => {
      const { format: f, version: v, app, written, ...rest } = Object(json);
      if (typeof v === 'number' && v > version) {
        return within('version', fault('file-newer', { version: v, known: version }));
      }
      const head = readHead({ format: f, version: v, app, written });
      if (isFault(head)) return head;
      const content = readContent(rest);
      return isFault(content) ? content : { head, content };
    },
  };
}
