import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import type { OutingEvent } from '../../src/outing/events.ts';
import { DEFAULT_HEAT_LIMIT } from '../../src/plan/newPlan.ts';
import { skyOf } from '../arbitraries/sky.ts';
import { goOn, readBack } from '../bench/seed.ts';
import { A, B, dialled, Evening, frame, held, planOf } from '../evenings/evening.ts';
import { logTable, toExport } from './acts/log.ts';
import { asked, record, seeAsked, start, unhurried, untilExpose, wait, wake } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * Rests by the limit on heat, counted from what really happened. What the app says is worked out
 * here a second time, from the journal that it wrote, in small steps of dy/dt = (Y - y)/tau: in
 * doublings of dark current with tau 480 s, 6.5 K a doubling, 10, 15 and 3 K over the air while it
 * exposes, shows live view or is on (the handbook's defaults for a body that nobody has measured).
 */

const TAU = 480;
const PLATEAU = { off: 0, idle: 3 / 6.5, exposing: 10 / 6.5, live: 15 / 6.5 } as const;
type Mode = keyof typeof PLATEAU;

const warmed = (y: number, mode: Mode, seconds: number): number => {
  let heat = y;
  const step = 0.02;
  for (let passed = 0; passed < seconds; passed += step) {
    heat += ((PLATEAU[mode] - heat) * Math.min(step, seconds - passed)) / TAU;
  }
  return heat;
};

/** How long a body must stay off until a frame has a quarter more dark current than a rested one's. */
function restFor(y: number, t: number): number {
  const middle = (from: number) => warmed(warmed(from, 'idle', 5 + LEAD_IN), 'exposing', t / 2);
  const most = middle(0) + Math.log2(1.25);
  let [low, high] = [0, 3600];
  for (let halved = 0; halved < 20; halved += 1) {
    const rest = (low + high) / 2;
    if (middle(warmed(y, 'off', rest)) > most) low = rest;
    else high = rest;
  }
  return high;
}

/** The self-timer of the invented bodies. */
const LEAD_IN = 2;

const FRAMES = [
  frame('dark', B, dialled('8', '60', '100'), { visit: 1 }),
  frame('dark', A, held('8', 240, '100'), { visit: 2 }),
  frame('dark', B, dialled('8', '60', '100'), { pass: 2, visit: 3 }),
  frame('dark', A, held('8', 240, '100'), { pass: 2, visit: 4 }),
];

/** Up to the first mounting, under a sky that hardly falls any more, with lenses that keep their focus. */
function begun(): Evening {
  const base = planOf(FRAMES);
  const plan = {
    ...base,
    name: 'Long and dark',
    // Of a wall nobody knows the shadows: a quarter more dark current is let pass.
    sets: base.sets.map((set) => ({ ...set, kind: 'flat' as const, passes: 2 })),
    rest: { kind: 'limit', limit: DEFAULT_HEAT_LIMIT } as const,
  };
  const evening = new Evening(
    FRAMES,
    plan,
    'another-phone',
    skyOf((m) => -4 - 0.003 * m, 240),
  );
  for (const lens of evening.state().gear.lenses) {
    const value = { ...lens, focusSurvivesPowerOff: true };
    evening.tap({ tap: 'correct-gear', change: { part: 'lens', value } });
  }
  return evening.setUp();
}

const NAME_A = 'A Alder 44';
let server: AppServer;
let phone: Phone;
const evening = begun();

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ zone: 'Europe/London' });
  await phone.window.clock.start(new Date(evening.now().wallMs + 60_000));
});

afterAll(async () => {
  await phone.throwAway();
  await server.stop();
});

const pageNow = (): Promise<number> => phone.window.evaluate(() => Date.now(), undefined);
const screen = (): Promise<string> => phone.window.read('main', /^/);

/** 'M:SS' as seconds. */
const secondsOf = (text: string): number => {
  const [minutes, seconds] = text.split(':').map(Number) as [number, number];
  return 60 * minutes + seconds;
};

/** When A may shoot by the reminder, in epoch seconds. */
async function reminded(): Promise<number> {
  await phone.window.see(/A Alder 44 may shoot in/);
  const [, left] = /A Alder 44 may shoot in (\d+:\d\d)/.exec(await screen()) ?? [];
  if (left === undefined) throw new Error(`no reminder: ${await screen()}`);
  return (await pageNow()) / 1000 + secondsOf(left);
}

/** What was read of A's rest, to be held to the journal at the end. */
const said: { mayShootAt: number }[] = [];

describe('rests in the field', () => {
  test('a bulb overrun by a minute: the reminder of its rest comes while the other rig works', async () => {
    const { window } = phone;
    await window.open(server.address);
    await readBack(window, evening.events);
    await goOn(window, 'Long and dark');
    await untilExpose(window);
    await start(window);
    await wait(window, 62);
    await wake(window);
    await record(window);
    await wait(window, 40);
    await untilExpose(window);
    await start(window);
    // Four minutes are planned, and a fifth goes by.
    await wait(window, 302);
    await wake(window);
    await record(window);
    expect(await asked(window)).toBe('Mount');
    said.push({ mayShootAt: await reminded() });
    // In the words of the demand: against B's frame of the set, with its range.
    await window.see(
      /A Alder 44 may shoot in \d+:\d\d; then [+−]\d\.\d\d stop over B \([−]?\d\.\d\d to \d\.\d\d\)/,
    );
  });

  test('a minute of waiting is a minute less', async () => {
    await wait(phone.window, 60);
    const at = await reminded();
    expect(Math.abs(at - (said[0]?.mayShootAt ?? 0))).toBeLessThanOrEqual(1.5);
  });

  test('killed and taken up again, it is right to the second', async () => {
    const gone = await pageNow();
    await phone.kill();
    await phone.restart();
    const { window } = phone;
    // The phone was away for half a minute.
    await window.clock.start(new Date(gone + 30_000));
    await window.open(server.address);
    await window.tap('button', 'Log');
    await goOn(window, 'Long and dark');
    const at = await reminded();
    expect(Math.abs(at - (said[0]?.mayShootAt ?? 0))).toBeLessThanOrEqual(1.5);
  });

  test('shows what a change of the list would cost', async () => {
    const { window } = phone;
    await unhurried();
    await window.tap('button', 'More');
    await window.see(/\d:\d\d shorter, \d swaps? fewer\./);
    const sheet = await window.read('dialog', 'More');
    // The next two are B and A, and A stands there: the other way round a swap is spared.
    expect(sheet).toMatch(/Swap the next two\s+[\s\S]*?swaps? (fewer|more)\./);
    expect(sheet).toMatch(/Drop the rest of this set\s+\d:\d\d shorter, 2 swaps fewer\./);
    // The pair of this set: what is left of its passes and its heat.
    expect(sheet).toMatch(
      /Set 1, A against B: 1 whole pass in place of 2, dark current [+]\d\.\d\d/,
    );
    await window.tap('button', 'Close');
  });

  test('goes on while the other rig’s shutter is open', async () => {
    const { window } = phone;
    await untilExpose(window);
    await start(window);
    const at = await reminded();
    expect(Math.abs(at - (said[0]?.mayShootAt ?? 0))).toBeLessThanOrEqual(1.5);
    await wait(window, 62);
    await wake(window);
    await record(window);
  });

  test('asks for the rest when the rig is ready, and says what it wins and what it costs', async () => {
    const { window } = phone;
    await window.tap('button', /tripod$/);
    await seeAsked(window, 'Rest');
    const words = await screen();
    expect(words).toContain(`${NAME_A} rests, switched off`);
    expect(words).toMatch(/Wins: dark current [+]\d\.\d\d, not [+]\d\.\d\d stop\./);
    expect(words).toMatch(/Costs: fade −\d\.\d\d stop\./);
    const [, wins, costs] = /Worth (\d\.\d\d) for (\d\.\d\d) stop of light\./.exec(words) ?? [];
    expect(Number(wins)).toBeGreaterThan(Number(costs));
    expect(words).toMatch(/A suggestion, as nobody has measured this body: 0:00[\s\S]* to/);
    // Framing in live view has warmed it: the wait is longer than the reminder said.
    const [, left] = /(\d+:\d\d)\s*A Alder 44 rests/.exec(words) ?? [];
    said.push({ mayShootAt: (await pageNow()) / 1000 + secondsOf(left ?? '') });
    await shoot('rest');
  });

  test('a skipped rest is logged with what was left', async () => {
    const { window } = phone;
    await wait(window, 20);
    const [, left] = /(\d+:\d\d)\s*A Alder 44 rests/.exec(await screen()) ?? [];
    await window.tap('button', 'Skip the rest');
    await seeAsked(window, 'Expose');
    await window.tap('button', 'More');
    await window.tap('button', 'Log');
    await window.seeThe('heading', 'Frames');
    const [, logged] = /Rest skipped, (\d+:\d\d) left/.exec(await screen()) ?? [];
    expect(Math.abs(secondsOf(logged ?? '') - secondsOf(left ?? ''))).toBeLessThanOrEqual(2);
  });

  test('the ledger has its heat line, in its own unit and in no sum', async () => {
    const { window } = phone;
    await window.tap('button', /^Ledger/);
    await window.see(/heat\s[+]\d\.\d\d \([−]?\d\.\d\d to \d\.\d\d\)/);
    await window.tap('button', /Differs by/);
    await window.see(/[+]\d\.\d\d stop of dark current \([−]?\d\.\d\d to \d\.\d\d\)/);
    await window.see('Were the two bodies to warm unlike');
    await window.see(/A Alder 44 was the warmer\. By what each rig went through/);
    await shoot('pair');
    await window.tap('button', 'Back');
    await window.tap('button', 'Back');
  });

  test('all of it is as worked out here from the journal', async () => {
    const { window } = phone;
    const table = await logTable(window);
    await toExport(window);
    await window.tap('button', 'Make the journal ready');
    const file = await window.download(() => window.tap('button', 'Save it'));
    const journal = JSON.parse(new TextDecoder().decode(file.bytes)) as {
      readonly events: readonly OutingEvent[];
    };
    const at = ({ wallMs }: OutingEvent): number => wallMs / 1000;
    const one = (kind: OutingEvent['kind'], nth = 0): number => {
      const found = journal.events.filter(
        (event) =>
          event.kind === kind &&
          (kind === 'mounted'
            ? (event.data as { rigs: readonly string[] }).rigs[0] === A
            : !('rig' in event.data) || event.data.rig === A),
      )[nth];
      if (!found) throw new Error(`no ${kind}`);
      return at(found);
    };
    const begin = at(journal.events[0] as OutingEvent);
    const [ticked, mounted, dials] = [one('setup-ticked'), one('mounted'), one('dialled')];
    const [opened, closed] = [one('exposure-started') + LEAD_IN, one('exposure-closed')];
    expect(closed - opened).toBeGreaterThan(299);
    let y = warmed(0, 'live', Math.min(30, ticked - begin));
    y = warmed(y, 'off', mounted - 30 - ticked);
    y = warmed(y, 'live', 30);
    const turning = Math.min(15, dials - mounted);
    y = warmed(y, 'off', dials - turning - mounted);
    y = warmed(y, 'idle', turning);
    const settling = Math.min(5, opened - LEAD_IN - dials);
    y = warmed(y, 'off', opened - LEAD_IN - settling - dials);
    y = warmed(y, 'idle', settling + LEAD_IN);
    const middle = warmed(y, 'exposing', (closed - opened) / 2);
    const a = table.find(({ Rig }) => Rig === 'A');
    expect(Number(a?.['SensorHeatStops'])).toBeCloseTo(middle, 2);
    y = warmed(warmed(y, 'exposing', closed - opened), 'idle', 2);
    const free = closed + 2;
    expect(Math.abs(free + restFor(y, 240) - (said[0]?.mayShootAt ?? 0))).toBeLessThan(2);
    // After its second mounting.
    const again = one('mounted', 1);
    y = warmed(warmed(y, 'off', again - 30 - free), 'live', 30);
    expect(Math.abs(again + restFor(y, 240) - (said[1]?.mayShootAt ?? 0))).toBeLessThan(2);
    expect(window.problems).toEqual([]);
  });
});

/** Pictures of the screen in both themes, where a folder for them is named. */
async function shoot(name: string): Promise<void> {
  const folder = process.env['EVENFALL_PICTURES'];
  if (folder === undefined) return;
  await mkdir(folder, { recursive: true });
  const { window } = phone;
  for (const theme of ['day', 'night']) {
    await new Promise((painted) => setTimeout(painted, 700));
    await writeFile(join(folder, `${name}-${theme}.png`), await window.picture());
    await window.tap('switch', 'Night');
  }
}
