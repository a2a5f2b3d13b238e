import { upcast } from '../exchange/upcast.ts';
import { EVENT_VERSION, type OutingEvent } from '../outing/events.ts';
import { inOrder } from '../outing/sequence.ts';
import type { EventReader } from '../store/contract.ts';

/** How the store reads what older versions of this code wrote, by the same steps as files are read. */
export const eventReader: EventReader = {
  version: EVENT_VERSION,
  inOrder,
  // What lies in the database was parsed before it got there, so a step's result is an event.
  upcast: (older) => upcast(older) as OutingEvent,
};
