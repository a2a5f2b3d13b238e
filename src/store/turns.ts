/**
 * Makes pieces of work wait for each other, so that a tap is never on the disk
 * before the one that came first, not even when that one had to reconnect.
 */
export function takingTurns(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return <T>(work: () => Promise<T>): Promise<T> => {
    const mine = last.then(work, work);
    last = mine;
    return mine;
  };
}
