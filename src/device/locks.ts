import { Listeners } from './listeners.ts';

/**
 * Who may write an outing: this window, another one, or nobody can tell because
 * the browser has no locks (the journal's keys are then the only fence).
 */
export type Ownership = 'owner' | 'elsewhere' | 'unsupported';

/**
 * What became of asking for an outing that another window has. 'kept': that window keeps it, because
 * it holds what is not saved. 'silent': it does not answer, and can only be stolen from.
 */
export type Asked = 'owner' | 'kept' | 'silent' | 'unsupported';

/** Keeps two windows from running one outing. A window that dies gives its outings up. */
export interface OutingLocks {
  /** Takes the outing if no other window has it. Owning it already is no error. */
  claim(outing: string): Promise<Ownership>;
  /** Gives the outing up; the next window that waits gets it. */
  release(outing: string): void;
  /** Asks the window that has the outing to finish what it writes and give it up. */
  ask(outing: string): Promise<Asked>;
  /** Takes the outing from a window that does not answer. */
  steal(outing: string): Promise<Ownership>;
  /** Tells the windows that watch the outing that it has moved on. */
  tellWritten(outing: string): void;
  /** @returns ends the listening, as the two below. */
  onWritten(listener: (outing: string) => void): () => void;
  /**
   * Another window asks for an outing that this one has. Answer true once it is no longer written
   * here: it is then given up. Without a listener it is kept.
   */
  onAsked(listener: (outing: string) => Promise<boolean>): () => void;
  /** The outing was stolen from this window: nothing more may be written here. */
  onStolen(listener: (outing: string) => void): () => void;
}

/** The part of the browser's lock manager that is used. */
interface LockRequests {
  request(
    name: string,
    options: LockOptions,
    whenDecided: (lock: Lock | null) => Promise<void> | undefined,
  ): Promise<unknown>;
}

/** The part of a broadcast channel that is used. */
export type WindowTalk = Pick<BroadcastChannel, 'postMessage' | 'onmessage'>;

interface Message {
  readonly say: 'give' | 'heard' | 'kept' | 'written';
  readonly outing: string;
}

/** A window that lives hears at once; a busy one within this (our choice). */
const HEARS_WITHIN_MS = 2500;
/** A write and its retries end within three times the store's limit of 4 s. */
const GIVES_WITHIN_MS = 15_000;

/**
 * @param talk Reaches all other windows of the app; null where the browser has no such thing, so
 *   that nobody hears a question.
 */
export function browserLocks(
  locks: LockRequests | undefined,
  talk: WindowTalk | null,
): OutingLocks {
  const owned = new Map<string, () => void>();
  const written = new Listeners<[outing: string]>();
  const stolen = new Listeners<[outing: string]>();
  const asked = new Set<(outing: string) => Promise<boolean>>();
  /** The question under way: what an answer to it does. */
  let answers: ((message: Message) => void) | null = null;

  const say = (message: Message): void => talk?.postMessage(message);

  const request = (outing: string, options: LockOptions): Promise<Ownership> => {
    if (locks === undefined) return Promise.resolve('unsupported');
    if (owned.has(outing)) return Promise.resolve('owner');
    return new Promise((resolve) => {
      let held = false;
      locks
        .request(`evenfall-outing-${outing}`, options, (lock) => {
          if (lock === null) {
            // Our own second question may have lost against our first.
            resolve(owned.has(outing) ? 'owner' : 'elsewhere');
            return undefined;
          }
          held = true;
          resolve('owner');
          // Held until this is called, or the window is gone.
          return new Promise<void>((release) => {
            owned.set(outing, release);
          });
        })
        .catch(() => {
          if (!held) return resolve(options.signal?.aborted === true ? 'elsewhere' : 'unsupported');
          owned.delete(outing);
          stolen.tell(outing);
        });
    });
  };

  const release = (outing: string): void => {
    owned.get(outing)?.();
    owned.delete(outing);
  };

  const giveUp = async (outing: string): Promise<void> => {
    say({ say: 'heard', outing });
    const given = await Promise.all([...asked].map((listener) => listener(outing)));
    if (given.length > 0 && given.every(Boolean)) release(outing);
    else say({ say: 'kept', outing });
  };

  if (talk) {
    talk.onmessage = ({ data }: MessageEvent<Message>) => {
      const { outing } = data;
      if (data.say === 'give') {
        if (owned.has(outing)) void giveUp(outing);
      } else if (data.say === 'written') written.tell(outing);
      else answers?.(data);
    };
  }

  return {
    claim: (outing) => request(outing, { ifAvailable: true }),
    release,
    async ask(outing) {
      const stop = new AbortController();
      let kept = false;
      let patience = setTimeout(() => stop.abort(), HEARS_WITHIN_MS);
      answers = (message) => {
        if (message.outing !== outing) return;
        clearTimeout(patience);
        if (message.say === 'heard') patience = setTimeout(() => stop.abort(), GIVES_WITHIN_MS);
        kept = message.say === 'kept';
        if (kept) stop.abort();
      };
      say({ say: 'give', outing });
      const got = await request(outing, { signal: stop.signal });
      clearTimeout(patience);
      answers = null;
      return got === 'elsewhere' ? (kept ? 'kept' : 'silent') : got;
    },
    steal: (outing) => request(outing, { steal: true }),
    tellWritten: (outing) => say({ say: 'written', outing }),
    onWritten: (listener) => written.add(listener),
    onAsked(listener) {
      asked.add(listener);
      return () => asked.delete(listener);
    },
    onStolen: (listener) => stolen.add(listener),
  };
}

/** What reaches the app's other windows; null in a browser that has no such thing. */
export const windowTalk = (): WindowTalk | null => {
  const { BroadcastChannel: Channel } = globalThis as Partial<typeof globalThis>;
  return Channel === undefined ? null : new Channel('evenfall-outings');
};
