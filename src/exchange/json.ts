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

/** A kind of JSON file, as it is written; `fileReader` reads it back. */
export interface JsonFile<T extends object> {
  readonly format: string;
  readonly version: number;
  /** The file's text. */
  readonly write: (content: T, stamp: Stamp) => string;
}

/**
 * Defines a kind of file: its head and its content are fields of one object.
 *
 * @param version goes up by one whenever the file's shape changes, added fields included: a field
 *   that an older app does not know must not be lost in silence.
 */
export const jsonFile = <T extends object>(format: string, version: number): JsonFile<T> => ({
  format,
  version,
  write: (content, stamp) => JSON.stringify({ format, version, ...stamp, ...content }),
});
