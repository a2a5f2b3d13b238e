import { EVENT_VERSION } from '../outing/events.ts';
import { inOrder } from '../outing/sequence.ts';
import type { EventReader } from '../store/contract.ts';

/** How the store reads what older versions of this code wrote: nothing, for there is none yet. */
export const eventReader: EventReader = {
  version: EVENT_VERSION,
  inOrder,
  upcast(older) {
    throw new RangeError(`no version ${older.v} of an event was ever shipped`);
  },
};
