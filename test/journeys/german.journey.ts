import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { cutOff } from '../look/measure.ts';
import { unhurried, until, wait } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, NamedFile, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * The practice outing in German, on the narrowest phone: from the first screen to the first record
 * and the log, over a reload, and out as the same bytes as in English.
 *
 * Seen to fail with the English point in `figures.de.ts`, and with 'Rückgängig' on the undo of a run,
 * which is too wide for its button.
 */

const NARROW = { width: 360, height: 640 };
let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ zone: 'Europe/Berlin', language: 'en-GB', size: NARROW });
  app = phone.window;
  await app.clock.start(new Date(Date.UTC(2027, 1, 12, 17, 30)));
});

afterAll(async () => {
  await phone.throwAway();
  await server.stop();
});

const language = () => app.evaluate(() => document.documentElement.lang, undefined);

/** No word of this screen is cut, at the usual size and at one and a half times of it. */
async function seeWhole(screen: string): Promise<void> {
  const faults: string[] = [];
  for (const size of ['', '150%']) {
    await app.evaluate((css) => {
      document.documentElement.style.fontSize = css;
    }, size);
    faults.push(...(await cutOff(app)).map((fault) => `${screen} ${size} ${fault}`));
  }
  await app.evaluate(() => {
    document.documentElement.style.fontSize = '';
  }, undefined);
  expect(faults).toEqual([]);
}

const table = async (ready: string, save: string, close: string): Promise<NamedFile> => {
  await app.tap('button', ready);
  const file = await app.download(() => app.tap('button', save));
  await app.tap('button', close);
  return file;
};

test('the first screen offers German, and every place of the desk speaks it', async () => {
  await app.open(server.address);
  await app.seeThe('button', 'Try the practice outing');
  expect(await language()).toBe('en');
  await app.tap('button', 'Deutsch');
  await app.seeThe('button', 'Übungstour probieren');
  expect(await language()).toBe('de');
  await seeWhole('first');
  await app.tap('button', 'Übungstour probieren');
  await app.seeThe('heading', 'Pläne');
  await seeWhole('plan');
  await app.tap('button', 'Technik');
  await app.seeThe('heading', 'Gespanne');
  await app.see('Bereit ohne Netz.');
  await seeWhole('gear');
  await app.tap('button', /^Alder 44/);
  await app.see('54,78 mm');
  await app.tap('button', 'Zurück');
  await app.tap('button', 'Licht');
  await app.seeThe('heading', 'Standorte');
  await seeWhole('light');
});

test('an outing goes in German to its first record, after a reload as before it', async () => {
  await app.tap('button', 'Tour');
  await seeWhole('outing');
  await app.tap('button', /beginnen$/);
  await app.seeThe('heading', 'Gespanne vorbereiten');
  await seeWhole('set-up');
  await app.tap('button', 'Mit den Aufnahmen beginnen');
  await app.seeThe('heading', 'Aufsetzen');
  await seeWhole('mount');
  await app.reload();
  await app.seeThe('heading', 'Aufsetzen');
  expect(await language()).toBe('de');
  await app.tap('button', /auf dem Stativ$/);
  await app.seeThe('heading', /^(Fokus|Einstellen)$/);
  if ((await app.count('heading', 'Fokus')) > 0) {
    await seeWhole('focus');
    await app.tap('button', 'Fokus sitzt');
    await app.seeThe('heading', 'Einstellen');
  }
  await seeWhole('dial');
  await app.tap('button', 'Ist eingestellt');
  await app.seeThe('heading', 'Belichten');
  await seeWhole('expose');
  await app.tap('button', /^Start/);
  await app.seeThe('heading', 'Belichtung läuft');
  await wait(app, 70);
  await until(
    async () =>
      (await app.count('button', 'Wie geplant eintragen')) > 0 ||
      (await app.count('button', /^Einmal tippen/)) > 0,
    'the end of the exposure',
  );
  if ((await app.count('button', /^Einmal tippen/)) > 0) await app.tap('button', /^Einmal tippen/);
  await app.seeThe('button', 'Wie geplant eintragen');
  await seeWhole('record');
  await app.tap('button', 'Wie geplant eintragen');
  await app.seeThe('button', 'Gut');
  await seeWhole('verdict');
});

test('the log has its decimals by commas, and its table is the same in both languages', async () => {
  await app.tap('button', 'Mehr');
  await seeWhole('more');
  await app.tap('button', 'Lichtmessung');
  await app.tap('button', 'EV: eine Raste herauf');
  await app.tap('button', 'Messung festhalten');
  await app.tap('button', 'Mehr');
  await app.tap('button', 'Tour beenden');
  await unhurried();
  await app.tap('button', 'Tour beenden', { within: { role: 'dialog', name: 'Tour beenden' } });
  await app.seeThe('heading', 'Beendet');
  await seeWhole('ended');
  await app.tap('button', 'Logbuch öffnen');
  await app.see(/EV 3,3 bei ISO 100/);
  await app.see(/12\. Feb\. 2027/);
  await seeWhole('log');
  await app.tap('button', /^Ausgabe/);
  const german = await table('Tabelle bereitstellen', 'Speichern', 'Schließen');
  await seeWhole('export');

  await app.tap('button', 'Technik');
  await app.tap('radio', 'English');
  await app.seeThe('heading', 'Rigs');
  expect(await language()).toBe('en');
  await app.tap('button', 'Log');
  await app.seeThe('button', 'Make the table ready');
  const english = await table('Make the table ready', 'Save it', 'Close');
  expect(english.name).toBe(german.name);
  expect(new TextDecoder().decode(english.bytes)).toBe(new TextDecoder().decode(german.bytes));
  expect(german.bytes.length).toBeGreaterThan(400);
  expect(app.problems).toEqual([]);
});
