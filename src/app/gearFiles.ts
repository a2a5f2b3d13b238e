import type { Clock } from '../device/clock.ts';
import { readText } from '../device/files.ts';
import type { Offer, Share } from '../device/share.ts';
import { readAnyFile } from '../exchange/anyFile.ts';
import { ownOf } from '../exchange/backup.ts';
import { gearFile } from '../exchange/gearFile.ts';
import { MOST_BYTES } from '../exchange/json.ts';
import { arrivalOf } from '../exchange/restore.ts';
import { type Fault, isFault } from '../gear/read.ts';
import type { Store, StoreFault } from '../store/contract.ts';
import { toFault } from '../store/fault.ts';
import type { GearDesk } from './gear.ts';

export type { Given, Offer, Way } from '../device/share.ts';

/** What became of a file that was to be taken in. */
export type TakenGear =
  | {
      readonly how: 'taken';
      readonly bodies: number;
      readonly lenses: number;
      readonly rigs: number;
      /** Of these, how many came under a new id because theirs stood for something else here. */
      readonly copies: number;
      /** How many stayed away because they had been deleted here. */
      readonly deletedHere: number;
    }
  | { readonly how: 'refused'; readonly fault: Fault }
  | { readonly how: 'unreadable'; readonly why: 'too-large' | 'not-text' | 'gone' }
  | { readonly how: 'store'; readonly fault: StoreFault };

/** Gear to a file and back. */
export interface GearFiles {
  /** The user's own gear as a file, ready for a tap of its own; null = it can leave by no way. */
  offer(): Offer | null;
  /** Takes the gear out of any of our files: all of it or nothing. What is here stays as it is. */
  take(file: Blob): Promise<TakenGear>;
}

export function createGearFiles({
  desk,
  store,
  share,
  clock,
  version,
}: {
  readonly desk: GearDesk;
  readonly store: Pick<Store, 'tombstones'>;
  readonly share: Share;
  readonly clock: Clock;
  readonly version: string;
}): GearFiles {
  return {
    offer() {
      const written = new Date(clock.now().wallMs).toISOString();
      const { gear } = ownOf({ gear: desk.gear.peek(), plans: [], events: [], tombstones: [] });
      return share.offer({
        name: `evenfall-gear-${written.slice(0, 10)}.json`,
        type: 'application/json',
        content: gearFile.write({ gear }, { app: version, written }),
      });
    },
    async take(file) {
      const read = await readText(file, MOST_BYTES);
      if (!read.read) return { how: 'unreadable', why: read.why };
      const found = readAnyFile(read.text);
      if (isFault(found)) return { how: 'refused', fault: found };
      let tombstones: ReadonlySet<string>;
      try {
        tombstones = await store.tombstones();
      } catch (cause) {
        return { how: 'store', fault: toFault(cause) };
      }
      const arrival = arrivalOf(
        { gear: desk.gear.peek(), plans: [], events: [], tombstones },
        { gear: found.content.gear, plans: [], events: [], tombstones: [] },
      );
      if (isFault(arrival)) return { how: 'refused', fault: arrival };
      desk.takeIn(arrival.gear);
      const count = (wanted: string) => arrival.gear.filter(({ kind }) => kind === wanted).length;
      return {
        how: 'taken',
        bodies: count('body'),
        lenses: count('lens'),
        rigs: count('rig'),
        copies: arrival.copies,
        deletedHere: arrival.deletedHere,
      };
    },
  };
}
