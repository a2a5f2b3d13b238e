import { StoreFailure } from './fault.ts';

/**
 * How long an open, a read or an append may take. A phone that suspends the page
 * in mid-transaction can leave it pending for ever; ten times the slowest write
 * to be expected is still short enough to notice in the field (our choice).
 */
export const LIMIT_MS = 4000;

/** The outcome of the work, or a 'timeout' fault. What comes later is dropped. */
export async function within<T>(limitMs: number, work: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const limit = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      reject(new StoreFailure('timeout', `no answer within ${limitMs} ms`));
    }, limitMs);
  });
  try {
    return await Promise.race([work, limit]);
  } finally {
    clearTimeout(timer);
  }
}
