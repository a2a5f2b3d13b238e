import { longEvening } from '../evenings/longEvening.ts';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow } from '../journeys/driver/phone.ts';
import { startServer } from '../journeys/driver/server.ts';
import type { Bench } from './ratio.ts';
import { readBack } from './seed.ts';

const ROUNDS = 15;

/** Milliseconds from the finger's leaving an outing's line. */
interface Opening {
  /** To its first frames being on the screen. */
  readonly firstMs: number;
  /** To the screen having it whole. */
  readonly wholeMs: number;
}

interface Watching extends Window {
  opening?: Promise<Opening>;
}

async function open(window: AppWindow, name: string): Promise<Opening> {
  // Else the one pays for what the other has left behind.
  await window.heapBytes();
  await window.evaluate(() => {
    const page: Watching = self;
    /** The next frame's callback comes once this one is on the screen. */
    const drawn = async (isThere: () => boolean): Promise<number> => {
      const nextFrame = () => new Promise((next) => requestAnimationFrame(next));
      while (!isThere()) await nextFrame();
      await nextFrame();
      return performance.now();
    };
    const begins = new Promise<number>((up) => {
      addEventListener('pointerup', () => up(performance.now()), { capture: true, once: true });
    });
    const watch = async (): Promise<Opening> => {
      const upAt = await begins;
      const hasFrames = () => document.querySelector('.log-line.frame') !== null;
      const isWhole = () =>
        !document.querySelector('main')?.textContent.includes('Reading the rest');
      const firstAt = await drawn(hasFrames);
      return { firstMs: firstAt - upAt, wholeMs: (await drawn(isWhole)) - upAt };
    };
    page.opening = watch();
  }, undefined);
  await window.tap('button', new RegExp(`^${name}`));
  const opening = await window.evaluate(() => (self as Watching).opening, undefined);
  if (opening === undefined) throw new Error('nobody watched the log open');
  await window.tap('button', 'Back');
  await window.seeThe('heading', 'Log');
  return opening;
}

/** Opens a log of ten thousand frames, turn by turn with one of a hundred. */
export const bench: Bench = async (folder) => {
  const server = await startServer(folder);
  const phone = await takePhone();
  const { window } = phone;
  // A plan takes two thousand frames, and a frame may be taken again.
  const length = { rigs: 2, time: '1/10', setsLeft: 0, tries: 5, ended: true } as const;
  const many: Opening[] = [];
  const few: Opening[] = [];
  try {
    await window.open(server.address);
    await readBack(window, longEvening({ ...length, name: 'Hundred', sets: 2, repeats: 5 }));
    await readBack(window, longEvening({ ...length, name: 'Myriad', sets: 20, repeats: 50 }));
    for (let round = 0; round < ROUNDS; round += 1) {
      few.push(await open(window, 'Hundred'));
      many.push(await open(window, 'Myriad'));
    }
  } finally {
    await phone.throwAway();
    await server.stop();
  }
  const ratio = (until: string, of: (opening: Opening) => number) => ({
    name: `opening a log of 10 000 frames ${until}, one of 100`,
    unit: 'ms',
    measured: many.map(of),
    against: few.map(of),
  });
  return [
    { ...ratio('until its first frames stand', ({ firstMs }) => firstMs), aim: 2 },
    ratio('until it is read whole', ({ wholeMs }) => wholeMs),
  ];
};
