/** A file to get off the phone. */
export interface FileToGive {
  /** With its extension. */
  readonly name: string;
  /** Media type. */
  readonly type: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
}

/** 'text': it can only be shown, to be copied by hand. */
export type Way = 'share' | 'download' | 'text';

/** What became of the file. */
export type Given =
  | { readonly done: 'shared' }
  /** The user closed the system's sheet: nothing has left. */
  | { readonly done: 'closed' }
  /** Handed to the browser as a download; it does not say whether the file was kept. */
  | { readonly done: 'downloaded'; readonly name: string }
  /** To be shown. */
  | { readonly done: 'text'; readonly text: string }
  /** The system would not share it after all; `next` is ready for another tap, null = no way is left. */
  | { readonly done: 'refused'; readonly next: Offer | null };

/** A file made ready, waiting for a tap of its own. */
export interface Offer {
  readonly way: Way;
  /** As it will arrive: JSON may have to travel as `.txt`. */
  readonly name: string;
  /** Call it straight from a tap, with nothing awaited before: a share is only allowed then. */
  give(): Promise<Given>;
}

export interface Share {
  /** The best way there is for this file: share, else download, else as text. null = none. */
  offer(file: FileToGive): Offer | null;
}

/** The parts of the browser that files leave by. */
export interface ShareParts {
  readonly navigator: {
    share?(data: ShareData): Promise<void>;
    canShare?(data: ShareData): boolean;
  };
  /** null where a download saves nothing. */
  readonly download: ((file: File) => void) | null;
}

export function browserShare({ navigator, download }: ShareParts): Share {
  const text = ({ name, content }: FileToGive): Offer | null =>
    typeof content === 'string'
      ? { way: 'text', name, give: async () => ({ done: 'text', text: content }) }
      : null;

  const save = (file: FileToGive): Offer | null => {
    if (download === null) return text(file);
    return {
      way: 'download',
      name: file.name,
      async give() {
        download(asFile(file));
        return { done: 'downloaded', name: file.name };
      },
    };
  };

  const shareable = (file: FileToGive): File | null => {
    if (navigator.share === undefined || navigator.canShare === undefined) return null;
    for (const form of forms(file)) {
      const candidate = asFile(form);
      if (navigator.canShare({ files: [candidate] })) return candidate;
    }
    return null;
  };

  return {
    offer(file) {
      const shared = shareable(file);
      if (shared === null) return save(file);
      return {
        way: 'share',
        name: shared.name,
        async give() {
          try {
            await navigator.share?.({ files: [shared] });
            return { done: 'shared' };
          } catch (cause) {
            return cause instanceof DOMException && cause.name === 'AbortError'
              ? { done: 'closed' }
              : { done: 'refused', next: save(file) };
          }
        },
      };
    },
  };
}

const asFile = ({ name, type, content }: FileToGive): File => new File([content], name, { type });

/** The file as it is, and, for text, under the one type that every share list has. */
function forms(file: FileToGive): readonly FileToGive[] {
  if (typeof file.content !== 'string') return [file];
  return [file, { ...file, name: `${file.name.replace(/\.[^.]+$/, '')}.txt`, type: 'text/plain' }];
}

/** Saves a file by a link that is pressed at once. */
export function downloadIn(page: Document): (file: File) => void {
  return (file) => {
    const address = URL.createObjectURL(file);
    const link = page.createElement('a');
    link.href = address;
    link.download = file.name;
    link.click();
    // The browser reads it after the click; a minute outlasts a slow save.
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
  };
}
