import { journalFile } from '../../src/exchange/journalFile.ts';
import type { OutingEvent } from '../../src/outing/events.ts';
import type { AppWindow } from '../journeys/driver/phone.ts';
import { goTo } from '../journeys/places.ts';

/** Brings an evening in as a person does, by reading its journal back. */
export async function readBack(window: AppWindow, events: readonly OutingEvent[]): Promise<void> {
  const [first] = events;
  if (first === undefined) throw new Error('this evening has no events');
  const stamp = { app: 'bench', written: '2027-02-13T09:00:00.000Z' };
  // The table of frames in it is for other programs; it is never read back.
  const text = journalFile.write({ outing: first.outing, events, frames: [], pairs: [] }, stamp);
  await goTo(window, 'Log');
  await window.tap('button', /^Backup and restore/);
  await window.upload('Choose a file', {
    name: 'journal.json',
    bytes: new TextEncoder().encode(text),
  });
  await longSee(window, 'It would bring in');
  await window.tap('button', 'Take it in');
  await longSee(window, 'Taken in.');
  await window.tap('button', 'Log');
  await window.seeThe('heading', 'Log');
}

/** Waits for words on the screen, however long: a very long evening takes more than a person waits. */
const longSee = (window: AppWindow, words: string): Promise<void> =>
  window.evaluate(async (wanted) => {
    while (!document.body.innerText.includes(wanted)) {
      await new Promise((again) => setTimeout(again, 100));
    }
  }, words);

/** Goes on with an evening that nobody has ended. */
export async function goOn(window: AppWindow, name: string): Promise<void> {
  await window.tap('button', new RegExp(`^${name}`));
  await window.tap('button', 'Go on with this outing');
}
