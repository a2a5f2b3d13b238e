import { randomIds } from '../device/ids.ts';
import { bodyFrom1, planFrom1 } from '../exchange/older.ts';
import type { Store } from '../store/contract.ts';
import { openStore } from '../store/indexedDb.ts';
import { eventReader } from './eventReader.ts';

const open = (): Promise<Store> =>
  openStore({ makeId: randomIds.make, reader: eventReader, older: { bodyFrom1, planFrom1 } });

/**
 * The first try begins as this module is read: the phone looks for the database while it reads the
 * rest of the app, a tenth of the wait for the first screen.
 */
let begun: Promise<Store> | null = open();
// Whoever asks is told; until then a failure is nobody's.
begun.catch(() => undefined);

/**
 * The app's store.
 *
 * @throws StoreFailure as `openStore`; call again to try again.
 */
export function openAppStore(): Promise<Store> {
  const opening = begun ?? open();
  begun = null;
  return opening;
}
