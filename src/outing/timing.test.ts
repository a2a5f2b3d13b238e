import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { A, dialled, Evening, frame, held } from '../../test/evenings/evening.ts';
import { framesOf } from '../log/frames.ts';
import { exposurePhase } from './exposure.ts';
import type { SessionId } from './ids.ts';
import type { Instant } from './instant.ts';
import { inOrder } from './sequence.ts';
import { elapsedBetween } from './timing.ts';

/*
 * What clocks do on an evening: the zone is changed, summer time begins or ends, somebody sets the
 * clock, the network puts it right, the page goes and comes back.
 *
 * Seen to fail: local time in place of wall time; the steady clock trusted over a sleep; the wall
 * clock asked first while the page lives, or once it was set back; a gap over two sessions called steady; a negative gap
 * shown as zero; events sorted by wall time.
 */

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const START = Date.UTC(2027, 2, 28, 0, 30);

const at = (change: Partial<Instant> = {}): Instant => ({
  wallMs: START,
  offsetMin: 0,
  zone: 'Europe/London',
  monoMs: 1000,
  session: 'one' as SessionId,
  ...change,
});
/** Both clocks go on by so much, and then the wall clock jumps. */
const onward = (passedMs: number, jumpMs = 0, change: Partial<Instant> = {}): Instant =>
  at({ wallMs: START + passedMs + jumpMs, monoMs: 1000 + passedMs, ...change });

describe('time between two instants', () => {
  it.each([
    ['summer time begins', onward(HOUR, 0, { offsetMin: 60 })],
    ['summer time ends', onward(HOUR, 0, { offsetMin: -60 })],
    ['the phone is taken over a border', onward(HOUR, 0, { offsetMin: 60, zone: 'Europe/Oslo' })],
    ['over the date line', onward(HOUR, 0, { offsetMin: -11 * 60, zone: 'Pacific/Pago_Pago' })],
  ])('%s: local time jumps, elapsed time does not', (_, to) => {
    expect(elapsedBetween(at(), to)).toEqual({ certainty: 'steady', s: 3600 });
  });

  it('the network puts the clock right by a little: the steady clock counts', () => {
    for (const jump of [-2000, -700, 1, 2000]) {
      expect(elapsedBetween(at(), onward(64_000, jump))).toEqual({ certainty: 'steady', s: 64 });
    }
  });

  it('a small correction backwards within a short gap gives no negative time', () => {
    expect(elapsedBetween(at(), onward(500, -1500))).toEqual({ certainty: 'steady', s: 0.5 });
  });

  it('the clock is set forward, or the steady one slept: only the wall clock bridges it, and that is said', () => {
    expect(elapsedBetween(at(), onward(64_000, 2001))).toEqual({ certainty: 'wall', s: 66.001 });
    expect(elapsedBetween(at(), onward(1000, HOUR))).toEqual({ certainty: 'wall', s: 3601 });
  });

  it('the clock is set back while the page lives: the steady clock has gone on', () => {
    for (const jump of [-2001, -30_000, -HOUR, -30 * HOUR]) {
      expect(elapsedBetween(at(), onward(64_000, jump))).toEqual({ certainty: 'steady', s: 64 });
    }
  });

  it('the clock is set back while the page was gone: unknown, never zero', () => {
    const session = 'two' as SessionId;
    expect(elapsedBetween(at(), onward(64_000, -HOUR, { session }))).toEqual({
      certainty: 'unknown',
    });
  });

  it('the clock is set absurdly far: unknown from the first millisecond after a day', () => {
    expect(elapsedBetween(at(), onward(1000, 24 * HOUR - 1000))).toEqual({
      certainty: 'wall',
      s: 86_400,
    });
    expect(elapsedBetween(at(), onward(1000, 24 * HOUR - 999))).toEqual({ certainty: 'unknown' });
  });

  it('another session has another steady clock: the wall clock bridges, and that is said', () => {
    const session = 'two' as SessionId;
    // The steady clocks agree by chance.
    expect(elapsedBetween(at(), onward(64_000, 0, { session }))).toEqual({
      certainty: 'wall',
      s: 64,
    });
    expect(elapsedBetween(at(), onward(0, 0, { session }))).toEqual({ certainty: 'wall', s: 0 });
    expect(elapsedBetween(at(), onward(0, -1, { session }))).toEqual({ certainty: 'unknown' });
  });

  it('a steady clock that ran backwards is not believed', () => {
    expect(elapsedBetween(at(), at({ wallMs: START + 100, monoMs: 900 }))).toEqual({
      certainty: 'wall',
      s: 0.1,
    });
  });
});

/** What happens to the clocks between two looks at them. */
const happening = fc.record({
  passedMs: fc.integer({ min: 0, max: 2 * HOUR }),
  jumpMs: fc.oneof(
    fc.constant(0),
    fc.integer({ min: -1500, max: 1500 }),
    fc.integer({ min: -26 * HOUR, max: 26 * HOUR }),
  ),
  offsetMin: fc.integer({ min: -720, max: 840 }),
  reloads: fc.boolean(),
});

describe('whatever happens to the clocks', () => {
  it('time that is called steady is true, and what is not known is never a number below zero', () => {
    fc.assert(
      fc.property(happening, ({ passedMs, jumpMs, offsetMin, reloads }) => {
        const session = (reloads ? 'two' : 'one') as SessionId;
        const zone = 'Etc/Unknown';
        const found = elapsedBetween(at(), onward(passedMs, jumpMs, { offsetMin, zone, session }));
        if (found.certainty === 'steady') {
          expect(reloads).toBe(false);
          expect(found.s).toBeCloseTo(passedMs / 1000, 9);
        } else if (found.certainty === 'wall') {
          expect(found.s).toBeGreaterThanOrEqual(0);
          // Off by exactly what the clock was moved by, which nobody else knows.
          expect(found.s).toBeCloseTo((passedMs + jumpMs) / 1000, 9);
        } else expect(passedMs + jumpMs < 0 || passedMs + jumpMs > 24 * HOUR).toBe(true);
        // While the page lives, a clock that is set back or only put right costs no certainty.
        if (!reloads && jumpMs <= 2000) expect(found.certainty).toBe('steady');
      }),
      { numRuns: 2000 },
    );
  });

  it('no two seconds of zone or summer time enter a difference', () => {
    fc.assert(
      fc.property(happening, fc.integer({ min: -720, max: 840 }), ({ passedMs, jumpMs }, other) => {
        const plain = onward(passedMs, jumpMs);
        const moved = { ...plain, offsetMin: other, zone: 'Asia/Kathmandu' };
        expect(elapsedBetween(at(), moved)).toEqual(elapsedBetween(at(), plain));
      }),
    );
  });

  it('the order of what was done stays as it was done', () => {
    const clockActs = fc.array(
      fc.oneof(
        fc.integer({ min: 1, max: 400 }).map((s) => (evening: Evening) => evening.pass(s)),
        fc.integer({ min: -90_000, max: 90_000 }).map((s) => (evening: Evening) => evening.jump(s)),
        fc
          .integer({ min: -90_000, max: 90_000 })
          .map((s) => (evening: Evening) => evening.reload(s)),
      ),
      { minLength: 6, maxLength: 6 },
    );
    fc.assert(
      fc.property(clockActs, (acts) => {
        const evening = new Evening([frame('one', A, dialled('8', '2', '400'))]).setUp();
        for (const [at, act] of acts.entries()) {
          act(evening);
          evening.tap({ tap: 'note', text: `note ${at}`, made: null });
        }
        expect(inOrder(evening.events.toReversed())).toEqual(evening.events);
        expect(evening.state().notes.map(({ text }) => text)).toEqual(
          acts.map((_, at) => `note ${at}`),
        );
      }),
      { numRuns: 60 },
    );
  });
});

describe('a bulb that was open while the clock was moved', () => {
  const open = () =>
    new Evening([frame('bulb', A, held('8', 120, '400'))]).setUp().untilExpose().start().pass(61);
  const logged = (evening: Evening) => {
    const [row] = framesOf(evening.state());
    if (!row) throw new Error('no frame in the log');
    return row.openTime;
  };
  // A second of the lead-in of two has gone with the tap that started it.
  const OPEN_S = 60;

  it.each([
    ['nothing', (evening: Evening) => evening, { from: 'hand', s: OPEN_S, certainty: 'steady' }],
    [
      'put right by a second',
      (evening: Evening) => evening.jump(-1),
      { from: 'hand', s: OPEN_S, certainty: 'steady' },
    ],
    [
      'set forward by an hour',
      (evening: Evening) => evening.jump(3600),
      { from: 'hand', s: OPEN_S + 3600, certainty: 'wall' },
    ],
    [
      'a reload of ten seconds',
      (evening: Evening) => evening.reload(10),
      { from: 'hand', s: OPEN_S + 10, certainty: 'wall' },
    ],
    [
      'set back by an hour',
      (evening: Evening) => evening.jump(-3600),
      { from: 'hand', s: OPEN_S, certainty: 'steady' },
    ],
    [
      'set back by an hour while the page was gone',
      (evening: Evening) => evening.reload(-3600),
      { from: 'unknown' },
    ],
  ] as const)('%s: the log has it with how far it is to be trusted', (_, happens, expected) => {
    const evening = open();
    happens(evening);
    const [made] = evening.state().made;
    if (!made) throw new Error('nothing is made');
    const isKnown = expected.from === 'hand';
    expect(exposurePhase(made, evening.now()).phase).toBe(isKnown ? 'held-open' : 'unknown');
    evening.tap({ tap: 'closed', made: evening.openId() });
    expect(logged(evening)).toEqual(expected);
  });
});
