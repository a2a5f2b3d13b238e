import type { Clock } from '../device/clock.ts';
import type { Offer, Share } from '../device/share.ts';
import { writeStorage } from '../exchange/storageFile.ts';
import { dumpDatabase } from '../store/dump.ts';

/** What can be saved of a storage that the app cannot open. */
export type Rescued =
  | { readonly how: 'ready'; readonly offer: Offer | null }
  /** There is nothing in it. */
  | { readonly how: 'empty' }
  | { readonly how: 'failed' };

/** What a rescue needs; it must not need the store. */
export interface RescueWorld {
  readonly share: Share;
  readonly clock: Clock;
  /** Of the app. */
  readonly version: string;
}

/** Makes a file of all that lies in the storage, as it lies there. */
export async function rescueStorage({ share, clock, version }: RescueWorld): Promise<Rescued> {
  try {
    const dump = await dumpDatabase();
    if (dump === null) return { how: 'empty' };
    const written = new Date(clock.now().wallMs).toISOString();
    const content = writeStorage(dump.version, dump, { app: version, written });
    const name = `evenfall-storage-${written.slice(0, 10)}.json`;
    return { how: 'ready', offer: share.offer({ name, type: 'application/json', content }) };
  } catch {
    // The storage gives nothing out: the screen says so beside why the app cannot open it.
    return { how: 'failed' };
  }
}
