import type { AppWindow } from '../driver/phone.ts';

/*
 * The acts of a run as a hand does them, one frame after the other. They know
 * the names on the screen and nothing of what is behind them.
 */

/** What the screen asks for now. */
export type Asked =
  | 'Mount'
  | 'Focus'
  | 'Dial'
  | 'Expose'
  | 'Exposing'
  | 'Record'
  | 'Rest'
  | 'Dark frame'
  | 'Paused'
  | 'List done'
  | 'Ended';

const ASKED = /^(Mount|Focus|Dial|Expose|Exposing|Record|Rest|Dark frame|Paused|List done|Ended)$/;

/** The heading of the step on the screen. */
export const asked = async (window: AppWindow): Promise<Asked> =>
  (await window.read('heading', ASKED)) as Asked;

/** Waits until the screen asks for this. */
export const seeAsked = (window: AppWindow, what: Asked): Promise<void> =>
  window.seeThe('heading', what);

/** Goes through the set-up sheet of every rig and begins. */
export async function setUp(window: AppWindow, rigs: readonly string[]): Promise<void> {
  for (const name of rigs) {
    const sheet = { within: { role: 'region', name } } as const;
    await window.tap('button', 'Tick all the rest', sheet);
    await until(
      async () => (await window.count('button', 'Tick all the rest', sheet)) === 0,
      `every line of ${name} to be ticked`,
    );
  }
  await window.tap('button', 'Begin with the frames');
  await seeAsked(window, 'Mount');
}

/** A second tap on one button within 400 ms is taken for the bounce of a glove. */
export const unhurried = () => new Promise((ready) => setTimeout(ready, 450));

const screen = (window: AppWindow): Promise<string> => window.read('main', /^/);

/** Rig and step: what stands above the night switch. */
const head = async (window: AppWindow) => (await screen(window)).split('Night')[0];

/** Mounts and dials until the next frame can be exposed. */
export async function untilExpose(window: AppWindow): Promise<void> {
  let last: Asked | null = null;
  for (let guard = 0; guard < 12; guard += 1) {
    const step = await asked(window);
    if (step === 'Expose') return;
    // Side by side, each rig is dialled in turn.
    if (step === last) await unhurried();
    const before = await head(window);
    if (step === 'Mount') await window.tap('button', /tripod$|^All rigs are mounted$/);
    else if (step === 'Dial') await window.tap('button', 'Dials are set');
    else if (step === 'Focus') await window.tap('button', 'Focus is fixed');
    else if (step === 'Rest') await window.tap('button', 'Skip the rest');
    else throw new Error(`a frame was to be exposed, but the screen asks: ${step}`);
    await until(async () => (await head(window)) !== before, `the step after ${step}`);
    last = step;
  }
  throw new Error('no exposure in sight');
}

/** Presses the release and taps together. */
export async function start(window: AppWindow): Promise<void> {
  await window.tap('button', /^Start/);
  await seeAsked(window, 'Exposing');
}

/** Lets time go by on the phone's clocks; long stretches in pieces, as a waiting phone lives them. */
export async function wait(window: AppWindow, seconds: number): Promise<void> {
  await window.clock.advance(seconds * 1000);
}

/** Lights the dark screen: the first tap only wakes it. Before a hand is needed it lights by itself. */
export async function wake(window: AppWindow): Promise<void> {
  const dark = async () => (await window.count('button', 'Tap once to light the screen')) > 0;
  if (!(await dark())) return;
  try {
    await window.tap('button', 'Tap once to light the screen');
  } catch (missed) {
    if (await dark()) throw missed;
  }
}

/** Makes the next frame as planned: `seconds` is its exposure with the lead-in. */
export async function shoot(window: AppWindow, seconds: number): Promise<void> {
  await untilExpose(window);
  if ((await window.count('button', 'Taken')) > 0) {
    const before = await framesLeft(window);
    await unhurried();
    await window.tap('button', 'Taken');
    await until(async () => (await framesLeft(window)) !== before, 'the frame to be logged');
  } else {
    await start(window);
    await wait(window, seconds);
    await wake(window);
    await record(window);
  }
}

/** Frames of the list not started yet, as the screen says; null once the list is done. */
async function framesLeft(window: AppWindow): Promise<string | null> {
  return /(\d+) left/.exec(await screen(window))?.[1] ?? null;
}

/** Records the frame in hand as planned, or closes its bulb. */
export async function record(window: AppWindow): Promise<void> {
  const act = /^(Record as planned|Closed)$/;
  await window.tap('button', act);
  await until(
    async () => (await asked(window)) !== 'Record' && (await window.count('button', act)) === 0,
    'the frame to be recorded',
  );
}

/** Waits until the step on the screen is none of these. */
export const changed = (window: AppWindow, ...from: readonly Asked[]): Promise<void> =>
  until(
    async () => !from.includes(await asked(window)),
    `the screen to ask for something else than ${from.join(' or ')}`,
  );

/** Waits for what must come true on the screen. @throws Error that says what did not. */
export async function until(isTrue: () => Promise<boolean>, what: string): Promise<void> {
  for (let tries = 0; tries < 100; tries += 1) {
    if (await isTrue()) return;
    await new Promise((again) => setTimeout(again, 50));
  }
  throw new Error(`waited in vain for ${what}`);
}
