import { describe, expect, it } from 'vitest';
import { USUAL_LIMITS } from '../log/pair/uses.ts';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { limitDesk } from './pairJudging.ts';
import { createSaving } from './saving.ts';

const soon = () => new Promise((done) => setTimeout(done, 0));

describe('the limits of a device', () => {
  it('are kept, one may be left unlooked at, and nonsense is left out', async () => {
    const store = memoryStore({ makeId: () => 'writer', reader: eventReader });
    const saving = createSaving();
    const desk = limitDesk({ store, saving });
    expect(desk.limits.value).toEqual(USUAL_LIMITS);
    desk.change('heat', 0.5);
    desk.change('parallax', null);
    await soon();
    const again = limitDesk({ store, saving });
    await soon();
    expect(again.limits.value).toEqual({ ...USUAL_LIMITS, heat: 0.5, parallax: null });
    // Seen to fail: with `limit >= 0` taken out of the reader.
    await store.putSetting('pair-limits', { iso: -1, time: 'much', framing: 3 });
    const third = limitDesk({ store, saving });
    await soon();
    expect(third.limits.value).toEqual({ ...USUAL_LIMITS, framing: 3 });
    third.restore();
    expect(third.limits.value).toEqual(USUAL_LIMITS);
  });
});
