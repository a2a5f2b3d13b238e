import type { AppWindow } from './phone.ts';

/** What the service worker counts: files of the build in use, here and in all. */
export interface OfflineFiles {
  readonly present: number;
  readonly expected: number;
}

/** Asks the worker behind a window, once there is one, how many of its files are on the phone. */
export const countOfflineFiles = (window: AppWindow): Promise<OfflineFiles> =>
  window.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    while (active !== null && active.state !== 'activated') {
      await new Promise((wait) => setTimeout(wait, 20));
    }
    const { port1, port2 } = new MessageChannel();
    return await new Promise<OfflineFiles>((counted) => {
      port1.onmessage = ({ data }) => counted(data as OfflineFiles);
      active?.postMessage({ type: 'count-cached' }, [port2]);
    });
  }, undefined);
