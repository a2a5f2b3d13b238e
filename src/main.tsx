import { render } from 'preact';
import { registerUpdates } from './device/updates.ts';

const host = document.getElementById('app');
if (host === null) throw new Error('index.html has no #app');
document.getElementById('not-started')?.remove();

const show = (line: string) =>
  render(
    <main>
      <h1>Evenfall</h1>
      <p role="status">{line}</p>
    </main>,
    host,
  );

show('Not yet ready for offline.');
if (import.meta.env.PROD) {
  registerUpdates({
    onReady: ({ present, expected }) =>
      show(`Ready for offline: ${present} of ${expected} files are on this device.`),
    onWaiting: () => show('A newer version is on this device.'),
    onFailed: ({ message }) => show(`Not ready for offline. ${message}`),
  });
}
