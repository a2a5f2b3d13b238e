import { EVENT_VERSION, type OutingEvent } from '../outing/events.ts';
import { eventDataFrom1 } from './older.ts';

/*
 * How events of older versions are read. A shipped shape is never edited: when a
 * kind changes, EVENT_VERSION goes up by one, a step stands here for the version
 * below, and a recorded journal of that version stands in test/journals/.
 */

/** An event as it was written, perhaps by an older version of this code. */
export interface OlderEvent extends Omit<OutingEvent, 'kind' | 'data'> {
  readonly kind: string;
  readonly data: unknown;
}

/** Brings the events of one version to the next. The step for version n makes n + 1. */
type Step = (event: OlderEvent) => OlderEvent;

/** By the version that a step starts from. */
const STEPS: Readonly<Record<number, Step>> = {
  1: (event) => ({ ...event, data: eventDataFrom1(event.kind, event.data) }),
  // Version 3 brought kinds that 2 did not know, and changed none.
  2: (event) => event,
};

/**
 * An event in the shape of today. The same event gives the same answer each time.
 *
 * @throws RangeError if a version between has no step, which is our own mistake.
 */
export function upcast(event: OlderEvent): OlderEvent {
  let current = event;
  while (current.v < EVENT_VERSION) {
    const step = STEPS[current.v];
    if (step === undefined) throw new RangeError(`no step up from version ${current.v}`);
    current = { ...step(current), v: current.v + 1 };
  }
  return current;
}
