// First of all: it begins to open the database while the rest is read.
import './app/opening.ts';
import { render } from 'preact';
import { type App, createApp } from './app/app.ts';
import { openAppStore } from './app/opening.ts';
import { type Language, startLanguage } from './app/preferences.ts';
import { browserDevice } from './device/browser.ts';
import { randomIds } from './device/ids.ts';
import type { Updates } from './device/updates.ts';
import { StoreFailure } from './store/fault.ts';
import { CannotStart } from './ui/shell/CannotStart.tsx';
import { Shell } from './ui/shell/Shell.tsx';
import { speak, wordsInUse } from './ui/words/inUse.ts';

declare const APP_VERSION: string;

const host = document.getElementById('app');
if (host === null) throw new Error('index.html has no #app');

/** The worker may tell before the app is there: the database can be held up. */
const told: ((app: App) => void)[] = [];
let running: App | null = null;
let updates: Updates | null = null;
const tell = (news: (app: App) => void): void => {
  if (running) news(running);
  else told.push(news);
};

const device = browserDevice(window, randomIds.make());

const startsIn = startLanguage(navigator.languages);

const rescueWorld = { share: device.share, clock: device.clock, version: APP_VERSION };

/** Longer than this no outing waits for its words: English stands until they are here. */
const WORDS_MS = 2000;
const soonIn = (language: Language) =>
  Promise.race([speak(language), new Promise((over) => setTimeout(over, WORDS_MS))]);

async function start(into: HTMLElement): Promise<void> {
  try {
    const store = await openAppStore();
    const app = await createApp({
      version: APP_VERSION,
      store,
      device,
      browser: window,
      spoken: () => wordsInUse.peek().spoken,
      startsIn,
      startsDark: matchMedia('(prefers-color-scheme: dark)').matches,
      applyUpdate: () => {
        updates?.applyUpdate().catch(() => location.reload());
      },
    });
    await soonIn(app.preferences.current.peek().language);
    running = app;
    for (const news of told.splice(0)) news(app);
    render(<Shell app={app} />, into);
  } catch (cause) {
    const refused = cause instanceof StoreFailure;
    // A mistake of ours is no fault of the storage; the browser is told of it as of any other.
    if (!refused) reportError(cause);
    await soonIn(startsIn);
    const retry = refused ? () => void start(into) : () => location.reload();
    const why = refused ? cause : String(cause);
    render(<CannotStart why={why} onRetry={retry} world={rescueWorld} />, into);
  }
  document.getElementById('not-started')?.remove();
}

/** Begins once the first screen stands, so that neither its script nor its answers hold that up. */
async function lookForUpdates(): Promise<void> {
  if (!import.meta.env.PROD) return;
  const notReady = () =>
    tell(({ readiness }) =>
      readiness.onOffline(device.platform.worksOffline ? 'not-ready' : 'unsupported'),
    );
  try {
    const { registerUpdates } = await import('./device/updates.ts');
    updates = registerUpdates({
      onReady: () => tell(({ readiness }) => readiness.onOffline('ready')),
      onIncomplete: notReady,
      onFailed: notReady,
      onWaiting: () => tell(({ readiness }) => readiness.onUpdateWaits()),
    });
  } catch {
    // Its part is not on the device.
    notReady();
  }
}

void start(host).then(() => requestAnimationFrame(() => setTimeout(lookForUpdates)));
