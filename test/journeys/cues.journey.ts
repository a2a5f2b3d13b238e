import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { A, dialled, frame, held } from '../evenings/evening.ts';
import { backupOf, takeIn } from './acts/backups.ts';
import { asked, record, seeAsked, setUp, unhurried, until } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

/*
 * How an exposure is told without the screen, and pressed without a finger, in real time: what is
 * chosen, tried, laid on the audio clock, said, and which keys press the one act.
 */

const RIG = 'A Alder 44';
/** The practice body's self-timer, between the tap and the opening, s. */
const LEAD_IN_S = 2;
/** Long enough to fall dark for a moment before the hand is needed. */
const LONG_S = 21;
const TIMED_S = 8;
const BULB_S = 4;
const FRAMES = [
  frame('long', A, held('8', LONG_S, '400')),
  frame('timed', A, dialled('8', String(TIMED_S), '400')),
  frame('bulb', A, held('8', BULB_S, '400')),
  frame('last', A, dialled('8', '32', '400')),
];

/** What the spies in the page have seen. */
interface Seen {
  /** Tones put on an audio clock: when, by that clock, and their samples. */
  readonly tones: {
    readonly at: number;
    readonly context: AudioContext;
    readonly buffer: AudioBuffer;
  }[];
  readonly said: string[];
  readonly felt: unknown[];
  readonly buttons: Map<string, MediaSessionActionHandler | null>;
  readonly players: HTMLMediaElement[];
  tapMs: number;
}

declare global {
  var evenfallCues: Seen;
}

/** Runs in the page: watches the loudspeaker, the motor, the voice and the buttons of a headset. */
function spies(): void {
  const seen: Seen = { tones: [], said: [], felt: [], buttons: new Map(), players: [], tapMs: 0 };
  globalThis.evenfallCues = seen;
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function (at = 0, ...rest) {
    const { context, buffer } = this;
    if (context instanceof AudioContext && buffer) seen.tones.push({ at, context, buffer });
    return start.call(this, at, ...rest);
  };
  navigator.vibrate = (pattern) => {
    seen.felt.push(pattern);
    return true;
  };
  speechSynthesis.speak = ({ text, voice }) => {
    if (text !== '') seen.said.push(`${voice?.name}: ${text}`);
  };
  const handle = MediaSession.prototype.setActionHandler;
  MediaSession.prototype.setActionHandler = function (button, handler) {
    seen.buttons.set(button, handler);
    return handle.call(this, button, handler);
  };
  const play = HTMLMediaElement.prototype.play;
  HTMLMediaElement.prototype.play = function () {
    if (!seen.players.includes(this)) seen.players.push(this);
    return play.call(this);
  };
  addEventListener(
    'click',
    (event) => {
      seen.tapMs = event.timeStamp;
    },
    true,
  );
}

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
  app = phone.window;
  await app.open(server.address);
  await takeIn(app, backupOf('To be heard', FRAMES));
  await app.evaluate(spies, undefined);
});

afterAll(async () => {
  await phone?.throwAway();
  await server?.stop();
});

const wait = (seconds: number) => new Promise((over) => setTimeout(over, seconds * 1000));

const CUES = { within: { role: 'region', name: 'Cues' } } as const;
const seen = () =>
  app.evaluate(() => {
    const { said, felt, tones, players } = globalThis.evenfallCues;
    return { said, felt, tones: tones.length, playing: players.map(({ paused }) => !paused) };
  }, undefined);

/** Gives the browser these voices, as one does that finds them late. */
const giveVoices = (...voices: readonly { readonly name: string; readonly near: boolean }[]) =>
  app.evaluate((given) => {
    const all = given.map(({ name, near }) => ({
      name,
      voiceURI: name,
      lang: 'en-GB',
      localService: near,
      default: false,
    }));
    speechSynthesis.getVoices = () => all;
    // A browser takes no voice that is not its own.
    Reflect.defineProperty(SpeechSynthesisUtterance.prototype, 'voice', {
      writable: true,
      configurable: true,
      value: null,
    });
    speechSynthesis.onvoiceschanged?.(new Event('voiceschanged'));
  }, voices);

describe('the cues are chosen and tried at home', () => {
  test('each by itself; a voice that needs a network is not offered', async () => {
    await goTo(app, 'Gear');
    await app.tap('button', 'Try it: Sound', CUES);
    await app.see(/^That was the end of an exposure\. If you heard/);
    expect((await seen()).tones).toBe(1);
    await app.tap('button', 'Try it: Vibration', CUES);
    await app.see(/^That was the end of an exposure\. If you felt/);
    expect((await seen()).felt).toEqual([[900]]);
    await giveVoices({ name: 'Far', near: false });
    await app.see(/^This device has no English voice that speaks without a network/);
    expect(await app.count('switch', /^Spoken countdown/)).toBe(0);
    await giveVoices(
      { name: 'Far', near: false },
      { name: 'Near', near: true },
      { name: 'Hither', near: true },
    );
    await app.tap('button', 'Try it: Spoken countdown', CUES);
    expect((await seen()).said).toEqual(['Near: 3, 2, 1, end']);
    await app.tap('button', 'Voice: Near', CUES);
    expect(await app.count('button', 'Far')).toBe(0);
    await app.tap('button', 'Hither');
    await app.tap('switch', /^Spoken countdown/, CUES);
    await unhurried();
    await app.tap('button', 'Try it: Spoken countdown', CUES);
    expect((await seen()).said.at(-1)).toBe('Hither: 3, 2, 1, end');
  });

  test('a key of a remote can be tried too', async () => {
    await app.tap('button', 'Try it: Keys and remotes', CUES);
    await app.see('Press it now.');
    await app.press('PageDown');
    await app.see('PageDown came. It presses the large button of a run.');
    await unhurried();
    await app.tap('button', 'Try it: Keys and remotes', CUES);
    await app.see('Press it now.');
    await app.press('b');
    await app.see('b came. It is not one that presses the large button.');
  });

  test('they are reached from the set-up sheet as well', async () => {
    await app.tap('button', 'Outing');
    await app.tap('button', 'Start To be heard');
    await app.seeThe('heading', 'Set up the rigs');
    await app.tap('button', 'Choose and try the cues');
    const sheet = { within: { role: 'dialog', name: 'Cues' } } as const;
    await app.seeThe('button', 'Voice: Hither', sheet);
    await app.tap('switch', /^The button of a headset too/, sheet);
    await app.tap('button', 'Close');
    await setUp(app, [RIG]);
  });
});

describe('the one act without a finger', () => {
  test('Enter, Page Down and the arrow go on from mounting to the exposure, and say so', async () => {
    await app.press('PageDown');
    await seeAsked(app, 'Dial');
    await app.see('Enter, Space, Page Down or → presses this.');
    await unhurried();
    await app.press('Enter');
    await seeAsked(app, 'Expose');
    // A second press right after it.
    await app.press('PageDown');
  });

  test('a bounce, a held key and a sheet press nothing', async () => {
    await unhurried();
    expect(await asked(app)).toBe('Expose');
    await app.tap('button', 'More');
    await app.press('PageDown');
    await app.tap('button', 'Close');
    await seeAsked(app, 'Expose');
    await app.evaluate(() => {
      dispatchEvent(new KeyboardEvent('keydown', { key: 'PageDown', repeat: true, bubbles: true }));
    }, undefined);
    expect(await asked(app)).toBe('Expose');
  });

  test('whoever walks the screen by Tab presses what the focus is on', async () => {
    await app.press('Tab');
    await app.press('PageDown');
    await unhurried();
    expect(await asked(app)).toBe('Expose');
    // A tap ends the walk.
    await app.tap('heading', 'Expose');
  });
});

describe('an exposure is told', () => {
  test('the button of a headset starts it, and every tone is heard within 50 ms of its instant', async () => {
    const before = (await seen()).tones;
    expect((await seen()).playing).toContain(true);
    const pressMs = await app.evaluate(() => {
      const press = globalThis.evenfallCues.buttons.get('pause');
      press?.({ action: 'pause' });
      return performance.now();
    }, undefined);
    await seeAsked(app, 'Exposing');
    const onsets = await app.evaluate(heardOffline, before);
    const due = [-1, 0, LONG_S - 10, LONG_S].map((afterOpening) => afterOpening + LEAD_IN_S);
    expect(onsets).toHaveLength(due.length);
    const offMs = onsets.map((at, i) => at - pressMs - (due[i] ?? Number.NaN) * 1000);
    expect(offMs.filter((off) => !(Math.abs(off) < 50))).toEqual([]);
  });
});

/**
 * Runs in the page: renders what was put on the audio clock, and looks for the sample with which
 * each tone begins. @returns their instants by the steady clock, ms, in their order.
 */
async function heardOffline(from: number): Promise<number[]> {
  const tones = globalThis.evenfallCues.tones.slice(from).toSorted((a, b) => a.at - b.at);
  const [first] = tones;
  const last = tones.at(-1);
  if (!first || !last) return [];
  const { context } = first;
  const rate = context.sampleRate;
  const stamp = context.getOutputTimestamp();
  const steadyOf = (audioS: number) =>
    (stamp.performanceTime ?? Number.NaN) + (audioS - (stamp.contextTime ?? Number.NaN)) * 1000;
  const startS = Math.floor(first.at);
  const lengthS = last.at - startS + 2;
  const offline = new OfflineAudioContext(1, Math.ceil(lengthS * rate), rate);
  for (const { at, buffer } of tones) {
    const source = offline.createBufferSource();
    source.buffer = buffer;
    source.connect(offline.destination);
    source.start(at - startS);
  }
  const samples = (await offline.startRendering()).getChannelData(0);
  const onsets: number[] = [];
  // A second tone begins where more than 0.5 s were silent: beeps of one tone lie closer.
  let lastLoud = Number.NEGATIVE_INFINITY;
  samples.forEach((value, i) => {
    if (Math.abs(value) < 1e-4) return;
    if (i - lastLoud > 0.5 * rate) onsets.push(steadyOf(startS + i / rate));
    lastLoud = i;
  });
  return onsets;
}

const said = async () => (await seen()).said;
/** What the page asks of the system's bars around it. */
const barColour = () =>
  app.evaluate(
    () => document.querySelector<HTMLMetaElement>('meta[name="theme-color"]')?.content,
    undefined,
  );
const forget = () =>
  app.evaluate(() => {
    globalThis.evenfallCues.said.length = 0;
    globalThis.evenfallCues.felt.length = 0;
  }, undefined);

describe('the dark, the voice and silence', () => {
  test('a key on the dark screen only lights it; the act below it waits', async () => {
    const dark = 'Tap once to light the screen';
    await wait(LEAD_IN_S + 6);
    await app.seeThe('button', dark);
    expect(await barColour()).toBe('#000000');
    await app.press('PageDown');
    await until(async () => (await app.count('button', dark)) === 0, 'the light');
    expect(await barColour()).toBe('#fafaf7');
    await seeAsked(app, 'Exposing');
    await app.seeThe('button', 'Closed');
  });

  test('of a bulb it is said that a hand must close it, and the space bar says that it did', async () => {
    await wait(LONG_S - 7);
    await until(async () => (await said()).includes('Hither: close'), 'the word to close');
    expect((await said()).slice(-7)).toEqual(
      ['open', 'close in 10', '5', '3', '2', '1', 'close'].map((word) => `Hither: ${word}`),
    );
    await app.press(' ');
    await seeAsked(app, 'Dial');
  });

  test('a frame that the body ends is counted down to its end', async () => {
    await forget();
    await unhurried();
    await app.press('Enter');
    await seeAsked(app, 'Expose');
    await unhurried();
    await app.press('ArrowRight');
    await seeAsked(app, 'Exposing');
    await wait(LEAD_IN_S + TIMED_S);
    await seeAsked(app, 'Record');
    expect(await said()).toEqual(['open', '3', '2', '1', 'end'].map((word) => `Hither: ${word}`));
    // It was dark: for a moment more, a key is taken for one that was to light it.
    await wait(0.7);
    await app.press('Enter');
    await seeAsked(app, 'Dial');
    await unhurried();
    await app.press('Enter');
    await seeAsked(app, 'Expose');
  });

  test('silent mode, one tap away in the run, wins over all', async () => {
    await app.tap('button', 'More');
    await app.tap('button', 'Silent mode');
    await app.see(/· silent/);
    await forget();
    const { tones } = await seen();
    await unhurried();
    await app.press('ArrowRight');
    await seeAsked(app, 'Exposing');
    await app.see(/over of/);
    expect(await seen()).toMatchObject({ tones, said: [], felt: [] });
    await record(app);
  });

  test('a setting switches the keys off', async () => {
    await app.tap('button', 'More');
    await app.tap('button', 'Gear');
    await app.tap('switch', /^Keys press the large button/, CUES);
    await app.tap('button', 'Outing');
    const before = await asked(app);
    for (const key of ['PageDown', 'ArrowRight', 'Enter']) {
      await app.press(key);
      await unhurried();
    }
    expect(await asked(app)).toBe(before);
    expect(app.problems).toEqual([]);
  });
});
