import { render } from 'preact';
import { type App, createApp } from './app/app.ts';
import { eventReader } from './app/eventReader.ts';
import { browserDevice } from './device/browser.ts';
import { randomIds } from './device/ids.ts';
import { registerUpdates } from './device/updates.ts';
import { toFault } from './store/fault.ts';
import { openStore } from './store/indexedDb.ts';
import { CannotOpen } from './ui/shell/CannotOpen.tsx';
import { Shell } from './ui/shell/Shell.tsx';

declare const APP_VERSION: string;

const host = document.getElementById('app');
if (host === null) throw new Error('index.html has no #app');

/** The worker tells from the start; the app may not be there yet. */
const told: ((app: App) => void)[] = [];
let running: App | null = null;
const tell = (news: (app: App) => void): void => {
  if (running) news(running);
  else told.push(news);
};
const updates = import.meta.env.PROD
  ? registerUpdates({
      onReady: () => tell(({ readiness }) => readiness.onOffline('ready')),
      onIncomplete: () => tell(({ readiness }) => readiness.onOffline('not-ready')),
      onFailed: () => tell(({ readiness }) => readiness.onOffline('not-ready')),
      onWaiting: () => tell(({ readiness }) => readiness.onUpdateWaits()),
    })
  : null;
const device = browserDevice(window, randomIds.make());

async function start(into: HTMLElement): Promise<void> {
  try {
    const store = await openStore({ makeId: randomIds.make, reader: eventReader });
    const app = await createApp({
      version: APP_VERSION,
      store,
      device,
      browser: window,
      startsDark: matchMedia('(prefers-color-scheme: dark)').matches,
      applyUpdate: () => {
        updates?.applyUpdate().catch(() => location.reload());
      },
    });
    running = app;
    for (const news of told.splice(0)) news(app);
    render(<Shell app={app} />, into);
  } catch (cause) {
    render(<CannotOpen fault={toFault(cause)} onRetry={() => void start(into)} />, into);
  }
  document.getElementById('not-started')?.remove();
}

void start(host);
