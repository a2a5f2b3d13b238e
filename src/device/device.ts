import type { SaveFilePicker } from './chosenFile.ts';
import type { Clock } from './clock.ts';
import type { Cues } from './cues.ts';
import type { Ids } from './ids.ts';
import type { OutingLocks } from './locks.ts';
import type { Page } from './page.ts';
import type { Persistence } from './persistence.ts';
import type { Platform } from './platform.ts';
import type { Geolocating } from './position.ts';
import type { Share } from './share.ts';
import type { PageTheme } from './theme.ts';
import type { Ticker } from './ticker.ts';
import type { WakeLock } from './wakeLock.ts';

/** The services of the phone that the app stands on. */
export interface Device<Session extends string = string> {
  readonly clock: Clock<Session>;
  readonly ids: Ids;
  readonly page: Page;
  readonly ticker: Ticker;
  readonly wakeLock: WakeLock;
  readonly cues: Cues;
  readonly share: Share;
  /** For `fileChooser`, which loads later; undefined where no page may choose a file to write. */
  readonly saveFilePicker: SaveFilePicker | undefined;
  readonly persistence: Persistence;
  readonly locks: OutingLocks;
  /** For `browserPosition`, which loads later; undefined where the browser has none. */
  readonly geolocation: Geolocating | undefined;
  readonly platform: Platform;
  setPageTheme(theme: PageTheme): void;
}
