import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { journalFile } from '../../src/exchange/journalFile.ts';
import { journalOf } from '../../src/exchange/journalOf.ts';
import { A, B, dialled, Evening, frame, held, planOf } from '../evenings/evening.ts';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow, Size } from '../journeys/driver/phone.ts';
import { type AppServer, startServer } from '../journeys/driver/server.ts';
import { goTo } from '../journeys/places.ts';
import { axeFaults } from './axe.ts';
import { largeTextFaults } from './largeText.ts';
import { cutOff, strongestGreenOrBlue, tooSmall } from './measure.ts';

const SIZES: readonly Size[] = [
  { width: 390, height: 844 },
  { width: 320, height: 568 },
  { width: 844, height: 390 },
];

/** An evening with everything that a log tells: a retake, a change, a bulb overrun, notes, readings. */
function eventful(): Evening {
  const frames = [
    frame('base', A, dialled('6.3', '64', '100')),
    frame('base', B, dialled('8', '60', '100'), { visit: 2 }),
    frame('high', B, dialled('8', '15', '12800'), { visit: 2 }),
    frame('long', A, held('6.3', 240, '12800'), { visit: 3 }),
    frame('long', A, held('6.3', 240, '12800'), { visit: 3, repeat: 2 }),
  ];
  const name = 'The heath above the reservoir on a second evening';
  const evening = new Evening(frames, { ...planOf(frames), name, invented: false });
  evening.tap({ tap: 'set-counter', rig: A, next: 9876 }).setUp().shoot().shoot();
  const made = evening.state().made[1];
  if (!made) throw new Error('a frame is missing');
  evening.tap({ tap: 'judge', made: made.id, verdict: 'passer-by-light' });
  evening.tap({ tap: 'note', text: 'Somebody walked by with a head torch', made: made.id });
  evening.tap({ tap: 'retake', frame: made.planned.key }).shoot();
  evening.tap({ tap: 'note', text: 'Fog comes in from the water', made: null });
  evening.untilExpose().start().pass(40);
  const settings = dialled('7.1', '15', '25600');
  evening.tap({ tap: 'record', made: evening.openId(), settings });
  evening.tap({ tap: 'battery-changed', rig: B });
  evening.untilExpose().start().pass(300).tap({ tap: 'closed', made: evening.openId() });
  return evening.tap({ tap: 'drop-set', set: 'long' as never }).tap({ tap: 'end' });
}

/** Every screen of the Log with what lies over it, in one walk; `look` is called at each. */
async function walk(app: AppWindow, look: (screen: string) => Promise<void>): Promise<void> {
  await goTo(app, 'Log');
  await app.see(/No outing yet/);
  await look('no outing');
  await app.tap('button', /^Backup and restore/);
  await app.seeThe('heading', 'Read a file back');
  await look('backup and restore');
  await app.upload('Choose a file', { name: 'x.json', bytes: new TextEncoder().encode('{"a":') });
  await app.see(/Nothing was taken/);
  await look('a file that is damaged');
  const { outing, events } = eventful();
  const stamp = { app: 'look', written: '2027-02-12T21:00:00.000Z' };
  const journal = journalFile.write(journalOf(outing, events), stamp);
  const file = { name: 'journal.json', bytes: new TextEncoder().encode(journal) };
  await app.upload('Choose a file', file);
  await app.seeThe('button', 'Take it in');
  await look('what a file would bring in');
  await app.tap('button', 'Take it in');
  await app.see(/Taken in/);
  await app.back();
  await app.seeThe('button', /^The heath/);
  await look('the outings');
  await app.tap('button', /^The heath/);
  await app.seeThe('heading', 'Frames');
  await look('an outing');
  await app.tap('button', /^Show/);
  await app.tap('radio', 'Not set as planned');
  await look('its filter');
  await app.tap('button', /7\.1/);
  await app.seeThe('button', /first logged|planned/);
  await look('a frame');
  await app.tap('button', /^ISO/);
  await look('a dial to correct');
  await app.tap('button', 'ISO: one click down');
  await app.tap('button', /^Correct to/);
  await app.seeThe('button', 'Undo the correction');
  await look('a frame that was corrected');
  await app.tap('button', /File number$/);
  await look('a file number to correct');
  // By the app's own buttons: the driver's way back may miss an entry that is a few ms old.
  await app.tap('button', 'Close');
  await app.tap('button', 'Back');
  await app.tap('button', /^Ledger/);
  await app.see(/Each rig against/);
  await look('the ledger');
  await app.tap('button', /Differs by/);
  await app.see(/The pair differs by/);
  await look('a pair');
  await app.back();
  await app.seeThe('button', /Differs by/);
  await app.back();
  await app.tap('button', /^Export/);
  await app.seeThe('button', 'Make the table ready');
  await look('the export');
  await app.tap('button', 'Make the table ready');
  await app.see(/is ready/);
  await look('a file to give');
}

let server: AppServer;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
});
afterAll(async () => {
  await server.stop();
});

describe.each(SIZES)('at $width x $height', (size) => {
  test.each(['dark', 'light'] as const)('in a %s room', async (scheme) => {
    const phone = await takePhone({ size });
    try {
      await phone.window.prefer({ scheme });
      await phone.window.open(server.address);
      let screens = 0;
      await walk(phone.window, async (screen) => {
        screens += 1;
        expect(await cutOff(phone.window), screen).toEqual([]);
        expect(await tooSmall(phone.window, 48), screen).toEqual([]);
        // Type is of one size in both themes.
        if (size.width === 390 && scheme === 'light') {
          expect(await largeTextFaults(phone.window, size), screen).toEqual([]);
        }
        if (size.width === 390) expect(await axeFaults(phone.window), screen).toEqual([]);
        // By night no pixel of ours has more than a trace of what the dark-adapted eye sees best.
        if (scheme === 'dark')
          expect(await strongestGreenOrBlue(phone.window), screen).toBeLessThanOrEqual(8);
      });
      expect(screens).toBe(15);
      expect(phone.window.problems).toEqual([]);
    } finally {
      await phone.throwAway();
    }
  });
});
