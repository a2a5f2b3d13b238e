import type { Gear } from '../gear/rig.ts';
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

/** Stored beside a thing: when it was changed and whether it was deleted. */
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
   * Appends events of ONE tap in one strict transaction. Resolves only after the
   * transaction is complete. Appending events that are already there (same id,
   * same content) is no error and changes nothing, so that a retry is safe.
   */
  append(events: readonly OutingEvent[]): Promise<void>;
  /** All events of an outing, each writer's by seq, writers merged by (wallMs, writer, seq). */
  events(outing: OutingId): Promise<readonly OutingEvent[]>;
  outings(): Promise<readonly OutingSummary[]>;
  /** Union by event id. @returns how many were new. Refuses whole when an id comes with other content. */
  merge(events: readonly OutingEvent[]): Promise<number>;

  gear(): Promise<Gear>;
  /** All changes in one transaction; `deleted` leaves a tombstone. */
  putGear(things: readonly { readonly thing: GearThing; readonly deleted: boolean }[]): Promise<void>;
  plans(): Promise<readonly Plan[]>;
  putPlans(plans: readonly { readonly plan: Plan; readonly deleted: boolean }[]): Promise<void>;
  /** Ids of deleted things. */
  tombstones(): Promise<ReadonlySet<string>>;

  setting(key: string): Promise<unknown>;
  putSetting(key: string, value: unknown): Promise<void>;

  /** Called when the browser closes the connection under us or another window wants to upgrade. */
  onClosed(listener: (fault: StoreFault) => void): () => void;
  close(): void;
}
