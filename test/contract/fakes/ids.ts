import type { Ids } from '../../../src/device/ids.ts';

/** Ids that count, so that a test can name them. */
export function countingIds(prefix = 'id'): Ids {
  let made = 0;
  return {
    make() {
      made += 1;
      return `${prefix}-${made}`;
    },
  };
}
