import type { Gear } from '../gear/rig.ts';
import type { Site } from '../light/site.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { OutingId, WriterId } from '../outing/ids.ts';
import type { Plan } from '../plan/plan.ts';

/**
 * Why the store could not do what was asked. `kind` chooses the sentence on the
 * screen; `detail` is the platform's own word, for the report only.
 */
export interface StoreFault {
  readonly kind: 'full' | 'blocked' | 'newer' | 'closed' | 'timeout' | 'refused';
  readonly detail: string;
}

/** An event as it lies in the database or a file: perhaps written by an older version of this code. */
export interface StoredEvent extends Omit<OutingEvent, 'kind' | 'data'> {
  readonly kind: string;
  readonly data: unknown;
}

/**
 * How stored events are read. The folder of the fold owns it and hands it in: the
 * store knows the domain by its types only.
 */
export interface EventReader {
  /** The version that this code writes; a stored event above it is refused as 'newer'. */
  readonly version: number;
  /** Called for each stored event below `version`. Must give the same answer each time. */
  readonly upcast: (older: StoredEvent) => OutingEvent;
  /** The one order of an outing's events, however they came. */
  readonly inOrder: (events: readonly OutingEvent[]) => readonly OutingEvent[];
}

/**
 * How things that an older version of this code stored are brought to the shape of today; owned and
 * handed in as `EventReader` is.
 */
export interface OlderShapes {
  readonly bodyFrom1: (body: unknown) => unknown;
  readonly planFrom1: (plan: unknown) => unknown;
}

export interface StoreOptions {
  /** A fresh random id; called once in the life of an installation. */
  readonly makeId: () => string;
  readonly reader: EventReader;
  readonly older: OlderShapes;
}

/** What a file brings in. */
export interface Arrival {
  readonly events: readonly OutingEvent[];
  readonly gear: readonly GearThing[];
  readonly plans: readonly Plan[];
  readonly sites: readonly Site[];
  /** Ids that were deleted where the file was written: of things never here, so that none comes. */
  readonly tombstones: readonly string[];
}

/** Stored beside a thing: whether it was deleted. */
export interface Kept<T> {
  readonly id: string;
  readonly value: T;
  /** A deleted thing leaves its tombstone, so that a restore cannot bring it back. */
  readonly deleted: boolean;
}

export type GearThing =
  | { readonly kind: 'body'; readonly value: Gear['bodies'][number] }
  | { readonly kind: 'lens'; readonly value: Gear['lenses'][number] }
  | { readonly kind: 'rig'; readonly value: Gear['rigs'][number] };

export interface OutingSummary {
  readonly outing: OutingId;
  readonly events: number;
  readonly firstWallMs: number;
  readonly lastWallMs: number;
}

/**
 * What the app keeps on the device. Every promise rejects with a StoreFault and
 * nothing else.
 */
export interface Store {
  /** The id of this installation, made once. */
  writer(): Promise<WriterId>;

  /**
   * Appends events of ONE tap in one strict transaction, taps in the order of the
   * calls. Resolves only after the
   * transaction is complete. Appending events that are already there (same id,
   * same content) is no error and changes nothing, so that a retry is safe.
   */
  append(events: readonly OutingEvent[]): Promise<void>;
  /**
   * All events of an outing, each writer's by seq, writers merged by (wallMs, writer, seq).
   *
   * @param most Only so many, the first by writer and seq: the beginning of a long journal that one
   *   writer wrote.
   */
  events(outing: OutingId, most?: number): Promise<readonly OutingEvent[]>;
  outings(): Promise<readonly OutingSummary[]>;
  /** Union by event id. @returns how many were new. Refuses whole when an id comes with other content. */
  merge(events: readonly OutingEvent[]): Promise<number>;
  /**
   * The union of events, gear, plans, sites and tombstones with what is here, whole or not at all.
   * A thing that was deleted here stays deleted, and one that is here stays, whatever was deleted
   * elsewhere. Refuses whole ('refused') when an
   * id comes with other content.
   *
   * @returns how many of each were new.
   */
  restore(arrival: Arrival): Promise<{ readonly [K in keyof Arrival]: number }>;

  /** What is not deleted, each kind in the order of its ids. */
  gear(): Promise<Gear>;
  /** All changes in one transaction; `deleted` leaves a tombstone. */
  putGear(
    things: readonly { readonly thing: GearThing; readonly deleted: boolean }[],
  ): Promise<void>;
  plans(): Promise<readonly Plan[]>;
  putPlans(plans: readonly { readonly plan: Plan; readonly deleted: boolean }[]): Promise<void>;
  sites(): Promise<readonly Site[]>;
  putSites(sites: readonly { readonly site: Site; readonly deleted: boolean }[]): Promise<void>;
  /** Ids of deleted things, here or where a file was written. */
  tombstones(): Promise<ReadonlySet<string>>;

  setting(key: string): Promise<unknown>;
  putSetting(key: string, value: unknown): Promise<void>;

  /**
   * Called when the browser closes the connection under us ('closed': what was
   * stored may be gone, so merge the events at hand again) or a newer version in
   * another window needs the database ('newer': reload). The next call reconnects.
   *
   * @returns ends the listening.
   */
  onClosed(listener: (fault: StoreFault) => void): () => void;
  /** Every later call rejects as 'closed'. */
  close(): void;
}
