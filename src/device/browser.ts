import type { SaveFilePicker } from './chosenFile.ts';
import { systemClock } from './clock.ts';
import { createCues } from './cues.ts';
import type { Device } from './device.ts';
import { randomIds } from './ids.ts';
import { browserLocks, windowTalk } from './locks.ts';
import { watchPage } from './page.ts';
import { browserPersistence } from './persistence.ts';
import { readPlatform } from './platform.ts';
import { browserShare, downloadIn } from './share.ts';
import { webSound } from './sound.ts';
import { browserSpeech } from './speech.ts';
import { setPageTheme } from './theme.ts';
import { pageTicker } from './ticker.ts';
import { phoneVibration } from './vibration.ts';
import { screenWakeLock } from './wakeLock.ts';

/**
 * What a browser may lack, as its type does not say: an old one, or one that keeps
 * a service from pages it does not trust.
 */
interface MaybeThere {
  readonly navigator: {
    readonly wakeLock?: WakeLock;
    readonly storage?: StorageManager;
    readonly locks?: LockManager;
    readonly geolocation?: Geolocation;
    readonly audioSession?: { type: string };
  };
  readonly AudioContext?: typeof AudioContext;
  readonly speechSynthesis?: SpeechSynthesis;
  readonly showSaveFilePicker?: SaveFilePicker;
}

/**
 * The device behind this page.
 *
 * @param frame The page's window.
 * @param session A fresh id for this load of the page.
 */
export function browserDevice<Session extends string>(
  frame: Window & typeof globalThis,
  session: Session,
): Device<Session> {
  const there: MaybeThere = frame;
  const { document } = frame;
  const clock = systemClock(session);
  const page = watchPage(document, frame);
  const platform = readPlatform(frame);
  const { AudioContext: Context } = there;
  return {
    clock,
    ids: randomIds,
    page,
    ticker: pageTicker(page),
    wakeLock: screenWakeLock(page, there.navigator.wakeLock),
    cues: createCues({
      clock,
      page,
      sound: webSound(Context === undefined ? null : () => new Context(), there.navigator),
      vibration: phoneVibration(frame.navigator),
      speech: browserSpeech({
        synthesis: there.speechSynthesis,
        utter: (text) => new SpeechSynthesisUtterance(text),
        language: () => document.documentElement.lang,
      }),
    }),
    share: browserShare({
      navigator: frame.navigator,
      download: platform.downloads ? downloadIn(document) : null,
    }),
    saveFilePicker: there.showSaveFilePicker?.bind(frame),
    persistence: browserPersistence(there.navigator.storage),
    locks: browserLocks(there.navigator.locks, windowTalk()),
    geolocation: there.navigator.geolocation,
    platform,
    setPageTheme: (theme) => setPageTheme(document, theme),
  };
}
