/** A file that the user has chosen to be written, again and again. */
export interface ChosenFile {
  readonly name: string;
  /** Whether it may be written without a tap; asked anew after each load of the page. */
  mayWrite(): Promise<boolean>;
  /** Asks the user. Call it straight from a tap. */
  askToWrite(): Promise<boolean>;
  /** Replaces what is in it, whole or not at all. Rejects with what the browser says. */
  write(text: string): Promise<void>;
  /** What a database can keep and `openChosen` takes. */
  readonly handle: unknown;
}

/** Lets the user choose a file to be written; null = none was chosen. Call it straight from a tap. */
export type ChooseFile = (suggestedName: string) => Promise<ChosenFile | null>;

type Permission = { readonly mode: 'readwrite' };

/** The part of the browser's file handle that is used. */
interface Handle {
  readonly name: string;
  queryPermission(asked: Permission): Promise<PermissionState>;
  requestPermission(asked: Permission): Promise<PermissionState>;
  createWritable(): Promise<{
    write(text: string): Promise<void>;
    close(): Promise<void>;
    abort(): Promise<void>;
  }>;
}

const ASKED: Permission = { mode: 'readwrite' };

/** A chosen file that a database has kept; null if it is none, or this browser writes no files. */
export function openChosen(kept: unknown): ChosenFile | null {
  const handle = kept as Handle | null | undefined;
  if (typeof handle?.createWritable !== 'function') return null;
  return {
    name: handle.name,
    handle,
    mayWrite: async () => (await handle.queryPermission(ASKED)) === 'granted',
    askToWrite: async () => (await handle.requestPermission(ASKED)) === 'granted',
    async write(text) {
      // What is written goes into a file beside it, which takes its place when it is closed.
      const writing = await handle.createWritable();
      try {
        await writing.write(text);
      } catch (cause) {
        await writing.abort();
        throw cause;
      }
      await writing.close();
    },
  };
}

/** Asks the user for a file to write; not every browser lets a page do so. */
export type SaveFilePicker = (options: { readonly suggestedName: string }) => Promise<unknown>;

/** @param pick undefined where there is none. */
export function fileChooser(pick: SaveFilePicker | undefined): ChooseFile | null {
  if (pick === undefined) return null;
  return async (suggestedName) => {
    try {
      return openChosen(await pick({ suggestedName }));
    } catch (cause) {
      if (cause instanceof DOMException && cause.name === 'AbortError') return null;
      throw cause;
    }
  };
}
