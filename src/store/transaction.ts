import type { IDBPTransaction } from 'idb';
import type { Database, Schema, StoreName } from './schema.ts';

export type Writing<N extends StoreName> = IDBPTransaction<Schema, N[], 'readwrite'>;

/**
 * One strict write, whole or not at all.
 *
 * Strict, because the browsers' default lets a transaction be 'complete' before
 * it is on the disk, which a flat battery would undo. Committed right after the
 * last request, because a page that is suspended in between would hold the
 * database for all others.
 *
 * @param write Makes the requests and puts each into `requests`; may await them,
 *   and nothing else.
 * @returns what `write` returned, after the transaction is complete.
 */
export async function writeStrictly<N extends StoreName, T>(
  db: Database,
  stores: readonly N[],
  write: (transaction: Writing<N>, requests: Promise<unknown>[]) => T | Promise<T>,
): Promise<T> {
  const transaction = db.transaction([...stores], 'readwrite', { durability: 'strict' });
  const requests: Promise<unknown>[] = [];
  // Heard from the start: a transaction that is lost while `write` still waits is told below.
  const ended = Promise.allSettled([transaction.done]);
  let result: T;
  try {
    const writing = write(transaction, requests);
    result = writing instanceof Promise ? await writing : writing;
    transaction.commit();
  } catch (cause) {
    // Else the requests made before the failing one would commit by themselves.
    abandon(transaction);
    await ended;
    throw reason(cause, await Promise.allSettled(requests));
  }
  const [done] = await ended;
  const outcomes = await Promise.allSettled(requests);
  if (done?.status === 'rejected') throw reason(done.reason, outcomes);
  return result;
}

function abandon(transaction: { abort(): void }): void {
  try {
    transaction.abort();
  } catch {
    // InvalidStateError: it has ended already, and `done` says how.
  }
}

/** idb tells AbortError where a request knows the cause: that one is what matters. */
function reason(told: unknown, outcomes: readonly PromiseSettledResult<unknown>[]): unknown {
  const causes = outcomes.flatMap((outcome) =>
    outcome.status === 'rejected' ? [outcome.reason as unknown] : [],
  );
  return [told, ...causes].find((cause) => !isAbort(cause)) ?? told;
}

const isAbort = (cause: unknown): boolean =>
  cause instanceof DOMException && cause.name === 'AbortError';
