import { longEvening } from '../evenings/longEvening.ts';
import { shoot } from '../journeys/acts/run.ts';
import { takePhone } from '../journeys/driver/chromium.ts';
import { startServer } from '../journeys/driver/server.ts';
import type { Bench, Ratio } from './ratio.ts';
import { goOn, readBack } from './seed.ts';

const FRAMES = 500;
const EACH = 100;
/** Self-timer, exposure and a moment more. */
const FRAME_S = 5;

/** What a long evening leaves in the memory of a page that is never loaded anew. */
export const bench: Bench = async (folder) => {
  const server = await startServer(folder);
  const phone = await takePhone();
  const { window } = phone;
  const ratios: Ratio[] = [];
  try {
    await window.clock.start(new Date(Date.UTC(2027, 1, 12, 17, 30)));
    await window.open(server.address);
    const sets = FRAMES / 50;
    await readBack(
      window,
      // Frames that are timed: each has its cues, its dark screen and its record.
      longEvening({
        name: 'Timed',
        rigs: 1,
        time: '2',
        repeats: 50,
        sets,
        setsLeft: sets,
        tries: 0,
        ended: false,
      }),
    );
    await goOn(window, 'Timed');
    const atStart = await window.heapBytes();
    for (let made = EACH; made <= FRAMES; made += EACH) {
      for (let frame = 0; frame < EACH; frame += 1) await shoot(window, FRAME_S);
      ratios.push({
        name: `memory held after ${made} frames, before the first`,
        unit: 'B',
        measured: await window.heapBytes(),
        against: atStart,
      });
    }
  } finally {
    await phone.throwAway();
    await server.stop();
  }
  return ratios;
};
