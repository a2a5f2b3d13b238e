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
  const keeping = async (answer: Promise<boolean>, limitMs: number): Promise<Keeping> => {
    const kept = await orNull(answer, limitMs);
    if (kept === null) return 'unknown';
    return kept ? 'kept' : 'may-be-cleared';
  };
  return {
    persisted: async () =>
      storage === undefined ? 'unknown' : keeping(storage.persisted(), ANSWER_WITHIN_MS),
    askPersist: async () =>
      storage === undefined ? 'unknown' : keeping(storage.persist(), USER_ANSWERS_WITHIN_MS),
    async space() {
      if (storage === undefined) return null;
      const estimate = await orNull(storage.estimate(), ANSWER_WITHIN_MS);
      return estimate?.usage === undefined || estimate.quota === undefined
        ? null
        : { usedBytes: estimate.usage, allowedBytes: estimate.quota };
    },
  };
}

/** The answer; null if there is none in time or the browser refuses to say. */
async function orNull<T>(answer: Promise<T>, limitMs: number): Promise<T | null> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<null>((resolve) => {
    timer = setTimeout(resolve, limitMs, null);
  });
  try {
    return await Promise.race([answer.catch(() => null), silence]);
  } finally {
    clearTimeout(timer);
  }
}
