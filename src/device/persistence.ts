/**
 * Whether the browser may clear what the app has stored. 'unknown': it does not
 * say, or its own question to the user is still open.
 */
export type Keeping = 'kept' | 'may-be-cleared' | 'unknown';

export interface Space {
  readonly usedBytes: number;
  /** What the browser allows at most; an estimate, not a promise. */
  readonly allowedBytes: number;
}

export interface Persistence {
  persisted(): Promise<Keeping>;
  /**
   * Asks for storage that is not cleared. Some browsers ask the user in turn, who
   * may never answer: let no screen wait for this.
   */
  askPersist(): Promise<Keeping>;
  /** null where the browser does not say. */
  space(): Promise<Space | null>;
}

const ANSWER_WITHIN_MS = 4000;
/** A person reads a prompt before answering (our choice). */
const USER_ANSWERS_WITHIN_MS = 60_000;

export function browserPersistence(
  storage: Pick<StorageManager, 'persist' | 'persisted' | 'estimate'> | undefined,
): Persistence {
  const keeping = async (
    ask: () => Promise<boolean> | undefined,
    limitMs: number,
  ): Promise<Keeping> => {
    const kept = await orNull(ask, limitMs);
    if (kept === null) return 'unknown';
    return kept ? 'kept' : 'may-be-cleared';
  };
  return {
    persisted: () => keeping(() => storage?.persisted(), ANSWER_WITHIN_MS),
    askPersist: () => keeping(() => storage?.persist(), USER_ANSWERS_WITHIN_MS),
    async space() {
      const estimate = await orNull(() => storage?.estimate(), ANSWER_WITHIN_MS);
      return estimate?.usage === undefined || estimate.quota === undefined
        ? null
        : { usedBytes: estimate.usage, allowedBytes: estimate.quota };
    },
  };
}

/** The answer; null if there is none in time, or the browser refuses to say or cannot be asked. */
async function orNull<T>(ask: () => Promise<T> | undefined, limitMs: number): Promise<T | null> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<null>((resolve) => {
    timer = setTimeout(resolve, limitMs, null);
  });
  try {
    return (await Promise.race([ask(), silence])) ?? null;
  } catch {
    return null;
  } finally {
    clearTimeout(timer);
  }
}
