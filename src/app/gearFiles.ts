import type { Clock } from '../device/clock.ts';
import type { Offer, Share } from '../device/share.ts';
import { ownOf } from '../exchange/backup.ts';
import { gearFile } from '../exchange/gearFile.ts';
import { madeOnce } from './desks.ts';
import type { FileDesk, Taken } from './files.ts';
import type { KeptGear } from './keptGear.ts';

export type { Given, Offer } from '../device/share.ts';

/** Gear to a file and back. */
export interface GearFiles {
  /** The user's own gear as a file, ready for a tap of its own; null = it can leave by no way. */
  offer(): Offer | null;
  /** Takes the gear out of any of our files: all of it or nothing. What is here stays as it is. */
  take(file: Blob): Promise<Taken>;
}

/** What files of gear need of the app. */
export interface GearFileWorld {
  readonly gear: Pick<KeptGear, 'gear'>;
  readonly files: Pick<FileDesk, 'look' | 'take'>;
  readonly share: Share;
  readonly clock: Clock;
  /** Of the app. */
  readonly version: string;
}

export function createGearFiles({
  gear: { gear },
  files,
  share,
  clock,
  version,
}: GearFileWorld): GearFiles {
  return {
    offer() {
      const written = new Date(clock.now().wallMs).toISOString();
      const own = ownOf({ gear: gear.peek(), plans: [], sites: [], events: [], tombstones: [] });
      return share.offer({
        name: `evenfall-gear-${written.slice(0, 10)}.json`,
        type: 'application/json',
        content: gearFile.write({ gear: own.gear }, { app: version, written }),
      });
    },
    async take(file) {
      const looked = await files.look(file);
      if (looked.how !== 'fits') return looked;
      // A backup holds more; the rest is for the Log, where it is looked at first.
      const { file: all } = looked.brings;
      const content = { ...all.content, plans: [], sites: [], events: [], tombstones: [] };
      return files.take({ ...looked.brings, file: { ...all, content } });
    },
  };
}

/** The one of an app. */
export const gearFiles = madeOnce(createGearFiles);
