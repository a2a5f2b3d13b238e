import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FakeSpeaker } from '../../test/contract/fakes/audio.ts';
import { FakeClock } from '../../test/contract/fakes/clock.ts';
import { FakePage } from '../../test/contract/fakes/page.ts';
import { type Cue, type CueChoices, type Cues, createCues, type LateEnd } from './cues.ts';
import { webSound } from './sound.ts';
import { type CueKind, toneSamples } from './tones.ts';

const ALL: CueChoices = {
  sound: true,
  vibration: true,
  speech: true,
  voice: 'near',
  silent: false,
};
const SOUND: CueChoices = { ...ALL, vibration: false, speech: false };
const NO_SOUND: CueChoices = { ...ALL, sound: false };

let clock: FakeClock;
let page: FakePage;
let speaker: FakeSpeaker;
let felt: CueKind[];
let said: string[];
let saidBy: string[];
let late: LateEnd[];
let cues: Cues;

function make(makeContext: (() => AudioContext) | null): Cues {
  const made = createCues({
    clock,
    page,
    sound: webSound(makeContext, {}),
    vibration: {
      supported: true,
      vibrate(kind) {
        if (page.visible) felt.push(kind);
        return page.visible;
      },
    },
    speech: {
      voices: [{ id: 'near', name: 'Near' }],
      onVoices: () => () => undefined,
      unlock: () => said.push('(unlock)'),
      say(text, voice) {
        said.push(text);
        saidBy.push(voice);
        return true;
      },
      hush: () => said.push('(hush)'),
    },
  });
  made.onLate((one) => late.push(one));
  return made;
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  clock = new FakeClock();
  page = new FakePage();
  speaker = new FakeSpeaker();
  felt = [];
  said = [];
  saidBy = [];
  late = [];
  vi.spyOn(performance, 'now').mockImplementation(() => clock.monoMs);
  cues = make(speaker.makeContext);
});

afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

/** The page is alive while time passes. */
async function pass(ms: number): Promise<void> {
  for (let left = ms; left > 0; left -= 10) {
    const step = Math.min(10, left);
    clock.pass(step);
    speaker.pass(step);
    await vi.advanceTimersByTimeAsync(step);
  }
}

/** Time passes, but the page runs nothing; its overdue timers come at the end. */
async function freeze(ms: number): Promise<void> {
  clock.pass(ms);
  speaker.pass(ms);
  await vi.advanceTimersByTimeAsync(ms);
}

async function tapped(choices: CueChoices): Promise<void> {
  cues.choose(choices);
  cues.unlock();
  await pass(10);
  said = [];
}

const at = (inS: number, kind: CueKind | null = 'end', spoken: string | null = null): Cue => ({
  kind,
  dueMs: clock.monoMs + inS * 1000,
  spoken,
});

/** When each tone that was not called off will be heard, in seconds from now, by the steady clock. */
const heardIn = (): number[] =>
  speaker.toSound.map(
    ({ at: when, context }) =>
      Math.round((when + speaker.delayS - context.currentTime) * 1000) / 1000,
  );

describe('an exposure is told by ear, hand and voice', () => {
  it('all its tones lie on the audio clock from the start, each its own', async () => {
    await tapped(SOUND);
    cues.schedule('made-1', [at(5, 'lead-in'), at(50, 'near-end'), at(60)]);
    expect(heardIn()).toEqual([5, 50, 60]);
    expect(speaker.toSound.map(({ samples }) => samples)).toEqual(
      (['lead-in', 'near-end', 'end'] as const).map((kind) => toneSamples(kind, 8000).length),
    );
  });

  it('a loudspeaker without a wire is slow: the tone is sent ahead of its time', async () => {
    speaker.delayS = 0.2;
    await tapped(SOUND);
    await pass(1000);
    cues.schedule('made-1', [at(60)]);
    expect(heardIn()).toEqual([60]);
    expect(speaker.asked[0]?.at).toBeCloseTo((speaker.contexts[0]?.currentTime ?? 0) + 59.8);
  });

  it('the hand and the voice come at their time and once', async () => {
    await tapped(ALL);
    cues.schedule('made-1', [at(1, 'lead-in', 'one'), at(2, 'end', 'closed')]);
    await pass(990);
    expect([felt, said]).toEqual([[], []]);
    await pass(20);
    expect([felt, said]).toEqual([['lead-in'], ['one']]);
    await pass(5000);
    expect([felt, said]).toEqual([
      ['lead-in', 'end'],
      ['one', 'closed'],
    ]);
    expect(late).toEqual([]);
  });

  it('the voice alone counts what has no tone, in the voice that was chosen', async () => {
    await tapped(ALL);
    cues.schedule('made-1', [at(1, null, '2'), at(2, null, '1'), at(3, 'end', 'end')]);
    expect(heardIn()).toEqual([3]);
    await pass(5000);
    expect([felt, said]).toEqual([['end'], ['2', '1', 'end']]);
    expect(new Set(saidBy)).toEqual(new Set(['near']));
    expect(late).toEqual([]);
  });

  it('the end of one is not cut off by the countdown of another', async () => {
    await tapped(ALL);
    cues.schedule('made-1', [at(1, 'end', 'B, close')]);
    cues.schedule('made-2', [at(1.5, null, 'A, 2'), at(2.5, null, 'A, 1'), at(3, 'end', 'A, end')]);
    await pass(5000);
    expect(said).toEqual(['B, close', 'A, 1', 'A, end']);
  });

  it('several exposures run side by side, and one is called off alone', async () => {
    await tapped(ALL);
    cues.schedule('made-1', [at(10)]);
    cues.schedule('made-2', [at(20)]);
    cues.cancel('made-1');
    expect(heardIn()).toEqual([20]);
    await pass(30_000);
    expect(felt).toEqual(['end']);
  });

  it('a new schedule of an exposure takes the place of the old one', async () => {
    await tapped(ALL);
    cues.schedule('made-1', [at(10)]);
    cues.schedule('made-1', [at(30)]);
    expect(heardIn()).toEqual([30]);
    await pass(40_000);
    expect(felt).toEqual(['end']);
  });

  it('an end that is over is not cut short when its exposure is called off afterwards', async () => {
    await tapped(SOUND);
    cues.schedule('made-1', [at(1)]);
    await pass(1100);
    cues.cancel('made-1');
    expect(speaker.asked.map(({ stopped }) => stopped)).toEqual([false]);
  });
});

describe('what is chosen', () => {
  it('silent: nothing is heard, felt or said, and nothing is late while the screen is there', async () => {
    await tapped({ ...ALL, silent: true });
    cues.schedule('made-1', [at(1, 'lead-in', 'one'), at(2)]);
    expect(speaker.toSound).toEqual([]);
    await pass(5000);
    expect([felt, said, late]).toEqual([[], [], []]);
  });

  it('changes in the middle: what is still to come follows', async () => {
    await tapped(SOUND);
    cues.schedule('made-1', [at(10)]);
    cues.choose({ ...SOUND, silent: true });
    expect(heardIn()).toEqual([]);
    cues.choose(SOUND);
    expect(heardIn()).toEqual([10]);
  });

  it('the voice stops in the middle of a word when it is no longer wanted', () => {
    cues.choose(ALL);
    expect(said).toEqual([]);
    cues.choose({ ...ALL, silent: true });
    cues.choose(SOUND);
    expect(said).toEqual(['(hush)', '(hush)']);
  });

  it('a tap lets the voice out only if it is wanted', () => {
    cues.choose(SOUND);
    cues.choose({ ...ALL, silent: true });
    cues.unlock();
    expect(said).not.toContain('(unlock)');
    cues.choose(ALL);
    cues.unlock();
    expect(said).toContain('(unlock)');
  });

  it('nothing is told before anybody has chosen', async () => {
    cues.unlock();
    await pass(10);
    cues.schedule('made-1', [at(1, 'lead-in', 'one')]);
    await pass(2000);
    expect([speaker.asked, felt, said]).toEqual([[], [], []]);
  });

  it('a browser without sound: hand and screen do, and nothing is late', async () => {
    cues = make(null);
    cues.choose(ALL);
    cues.unlock();
    expect(cues.sound).toBe('unsupported');
    cues.schedule('made-1', [at(1)]);
    await pass(5000);
    expect([felt, late]).toEqual([['end'], []]);
  });
});

describe('the end of an exposure is missed', () => {
  it('hidden and without sound: reported on return, with how late, and felt then', async () => {
    await tapped(NO_SOUND);
    cues.schedule('made-1', [at(10)]);
    await pass(5000);
    page.hide();
    await freeze(12_000);
    expect([felt, late]).toEqual([[], []]);
    page.show();
    expect(late).toEqual([{ exposure: 'made-1', lateS: 7 }]);
    expect(felt).toEqual(['end']);
    page.show();
    expect(late).toHaveLength(1);
  });

  it('hidden, but it sounded on time: nothing is late', async () => {
    await tapped(SOUND);
    cues.schedule('made-1', [at(10)]);
    page.hide();
    await freeze(60_000);
    page.show();
    await pass(1000);
    expect(late).toEqual([]);
  });

  it('sounded on time, and the loudspeaker was taken away later: nothing is late', async () => {
    await tapped(SOUND);
    cues.schedule('made-1', [at(10)]);
    page.hide();
    await freeze(11_000);
    speaker.interrupt();
    await freeze(60_000);
    speaker.allowed = true;
    page.show();
    await pass(1000);
    expect(late).toEqual([]);
  });

  it('a call took the loudspeaker: on return it sounds in a new one, and is reported', async () => {
    await tapped(SOUND);
    cues.schedule('made-1', [at(10)]);
    await pass(5000);
    page.hide();
    speaker.interrupt();
    await freeze(12_000);
    speaker.allowed = true;
    page.show(['visibilitychange', 'pageshow', 'focus']);
    await pass(10);
    expect(late).toEqual([{ exposure: 'made-1', lateS: expect.closeTo(7, 1) }]);
    expect(speaker.contexts.filter(({ state }) => state === 'running')).toHaveLength(1);
    const [before, after] = speaker.asked.filter(({ stopped }) => !stopped);
    expect(before?.context).toBe(speaker.contexts.at(-1));
    expect(after).toBeUndefined();
  });

  it('the loudspeaker comes back before the end: the tone is put right, nothing is late', async () => {
    await tapped(SOUND);
    cues.schedule('made-1', [at(20)]);
    await pass(5000);
    speaker.interrupt();
    await pass(5000);
    speaker.allowed = true;
    cues.unlock();
    await pass(10);
    expect(heardIn()).toEqual([9.99]);
    await pass(15_000);
    expect(late).toEqual([]);
  });

  it('the audio clock stood still for a while and went on by itself: the tone is put right', async () => {
    await tapped(SOUND);
    cues.schedule('made-1', [at(20)]);
    const [context] = speaker.contexts;
    context?.become('suspended');
    await pass(5000);
    context?.become('running');
    expect(heardIn()).toEqual([15]);
  });

  it('no tap has let sound out: told at the first tap, as late as it then is', async () => {
    cues.choose(SOUND);
    expect(cues.sound).toBe('needs-tap');
    cues.schedule('made-1', [at(2)]);
    await pass(5000);
    expect(late).toEqual([]);
    cues.unlock();
    await pass(10);
    expect(late).toEqual([{ exposure: 'made-1', lateS: expect.closeTo(3, 1) }]);
  });

  it('the loudspeaker hangs without a word: felt once, reported when it goes on', async () => {
    await tapped({ ...ALL, speech: false });
    cues.schedule('made-1', [at(10)]);
    await pass(9000);
    speaker.hangs = true;
    await pass(4000);
    expect([felt, late]).toEqual([['end'], []]);
    speaker.hangs = false;
    await pass(1500);
    expect(late).toEqual([{ exposure: 'made-1', lateS: expect.closeTo(4, 1) }]);
    expect(felt).toEqual(['end']);
  });

  it('less than a second does not count', async () => {
    await tapped(NO_SOUND);
    cues.schedule('made-1', [at(10)]);
    page.hide();
    await freeze(10_900);
    page.show();
    expect(late).toEqual([]);
  });

  it('a page that comes back to life in the middle: old lead-in is not told, an old end is', async () => {
    await tapped(ALL);
    cues.schedule('made-1', [
      at(-40, 'lead-in', 'ten'),
      at(-5, 'near-end'),
      at(-3, 'end', 'closed'),
    ]);
    await pass(300);
    expect(felt).toEqual(['end']);
    expect(said).toEqual(['closed']);
    expect(speaker.asked).toHaveLength(1);
    expect(late).toEqual([{ exposure: 'made-1', lateS: 3 }]);
  });

  it('called off before the return: nothing is reported', async () => {
    await tapped(NO_SOUND);
    cues.schedule('made-1', [at(10)]);
    page.hide();
    await freeze(20_000);
    cues.cancel('made-1');
    page.show();
    expect(late).toEqual([]);
  });

  it('of two at once, whoever hears of the first may call off the second', async () => {
    await tapped(NO_SOUND);
    cues.onLate(() => cues.cancel('made-2'));
    cues.schedule('made-1', [at(10)]);
    cues.schedule('made-2', [at(10)]);
    page.hide();
    await freeze(20_000);
    page.show();
    expect(late.map(({ exposure }) => exposure)).toEqual(['made-1']);
  });
});

describe('trying the cues at home', () => {
  it('sound: the tap that tries it also lets it out', async () => {
    const trying = cues.try('sound', '');
    await pass(100);
    expect(await trying).toBe('done');
    expect(speaker.asked).toHaveLength(1);
  });

  it('sound that the system keeps back says so within a second', async () => {
    speaker.allowed = false;
    const trying = cues.try('sound', '');
    await pass(1000);
    expect(await trying).toBe('needs-tap');
    expect(speaker.asked).toHaveLength(0);
  });

  it('hand and voice, even in silent mode: trying is asking for it', async () => {
    cues.choose({ ...ALL, silent: true });
    expect(await cues.try('vibration', '')).toBe('done');
    expect(await cues.try('speech', 'hello')).toBe('done');
    expect([felt, said.at(-1)]).toEqual([['end'], 'hello']);
  });

  it('what the browser lacks says so', async () => {
    cues = createCues({
      clock,
      page,
      sound: webSound(null, {}),
      vibration: { supported: false, vibrate: () => false },
      speech: {
        voices: [],
        onVoices: () => () => undefined,
        unlock: () => {},
        say: () => false,
        hush: () => {},
      },
    });
    for (const channel of ['sound', 'vibration', 'speech'] as const)
      expect(await cues.try(channel, 'x')).toBe('unsupported');
  });
});

describe('the state of the sound', () => {
  it('is told at each change', async () => {
    const told: string[] = [];
    cues.onSound((state) => told.push(state));
    await tapped(SOUND);
    speaker.interrupt();
    speaker.allowed = true;
    cues.unlock();
    await pass(10);
    expect(told).toEqual(['ready', 'needs-tap', 'ready']);
  });
});
