import type { OutingEvent } from '../outing/events.ts';
import { sameContent } from './content.ts';
import { StoreFailure } from './fault.ts';

/**
 * The incoming events that are not stored yet, each once.
 *
 * @throws StoreFailure 'refused' when an id comes with other content, or a place
 *   in a writer's sequence with another event.
 */
export function missingEvents(
  stored: readonly OutingEvent[],
  incoming: readonly OutingEvent[],
): OutingEvent[] {
  const byId = new Map(stored.map((event) => [event.id, event]));
  const places = new Set(stored.map(place));
  const missing: OutingEvent[] = [];
  for (const event of incoming) {
    const same = byId.get(event.id);
    if (same === undefined) {
      if (places.has(place(event)))
        throw new StoreFailure('refused', `another event stands at ${place(event)}`);
      byId.set(event.id, event);
      places.add(place(event));
      missing.push(event);
    } else if (!sameContent(same, event)) {
      throw new StoreFailure('refused', `event ${event.id} is stored with other content`);
    }
  }
  return missing;
}

const place = (event: OutingEvent): string =>
  JSON.stringify([event.outing, event.writer, event.seq]);

/**
 * The incoming things that are not known yet, each once; one that was deleted
 * here is known and stays deleted.
 *
 * @param buried Ids of things that were deleted elsewhere before they ever came here.
 *
 * @throws StoreFailure 'refused' when an id comes with other content.
 */
export function missingThings<T extends { readonly value: { readonly id: string } }>(
  stored: ReadonlyMap<string, { readonly value: unknown; readonly deleted: boolean }>,
  incoming: readonly T[],
  buried: ReadonlySet<string>,
): T[] {
  const seen = new Map(stored);
  return incoming.filter(({ value }) => {
    if (buried.has(value.id)) return false;
    const known = seen.get(value.id);
    if (known === undefined) {
      seen.set(value.id, { value, deleted: false });
      return true;
    }
    if (!known.deleted && !sameContent(known.value, value))
      throw new StoreFailure('refused', `${value.id} is stored with other content`);
    return false;
  });
}

/** The incoming tombstones that are new: of things that are neither here nor buried, each once. */
export function missingTombstones(
  known: (id: string) => boolean,
  incoming: readonly string[],
): string[] {
  return [...new Set(incoming)].filter((id) => !known(id));
}
