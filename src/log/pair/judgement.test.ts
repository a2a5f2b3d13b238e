import { describe, expect, it } from 'vitest';
import {
  A,
  B,
  dialled,
  Evening,
  frame,
  held,
  planOf,
  twoSets,
} from '../../../test/evenings/evening.ts';
import { SILENT_FILE } from '../../../test/pictures/silentFile.ts';
import type { CameraFile } from '../../outing/cameraFile.ts';
import { sceneOf } from '../../outing/light.ts';
import type { SetId } from '../../plan/ids.ts';
import { fNumber, iso, seconds, stops } from '../../science/units.ts';
import { framesOf } from '../frames.ts';
import { countedFrames, ledgersOf } from '../ledger.ts';
import { judge, leftOversOf, type PairJudgement } from './judgement.ts';
import { agreementOf } from './proposedOffset.ts';
import { USUAL_LIMITS } from './uses.ts';

const BASE = 'base' as SetId;

function judged(evening: Evening): readonly PairJudgement[] {
  const state = evening.state();
  const frames = framesOf(state);
  return ledgersOf(state.plan, state.gear, countedFrames(frames), sceneOf(state)).map((ledger) =>
    judge(state, ledger, frames, USUAL_LIMITS),
  );
}
const base = (evening: Evening) => {
  const found = judged(evening).find(({ ledger }) => ledger.set === BASE)?.whole;
  if (!found) throw new Error('the base set');
  return found;
};
const shot = () => new Evening(twoSets()).setUp().shootAll();

const file = (of: Partial<CameraFile>): CameraFile => ({ ...SILENT_FILE, ...of });
const matched = (evening: Evening, set: string, files: Readonly<Record<string, CameraFile>>) =>
  evening.tap({
    tap: 'match-files',
    files: evening
      .state()
      .made.filter(({ planned }) => planned.set === set)
      .map(({ id, planned }) => ({ made: id, file: files[planned.rig] ?? null })),
    clocks: [],
  });

describe('the figures of a pair', () => {
  // design.md, section 6: 0.67 + 0.09 = 0.76 stop more light per area on Alder; 1.50 in all.
  it('are those of the practice outing', () => {
    const { figures } = base(shot());
    const of = (cause: string) => figures.causes.find((each) => each.cause === cause)?.difference;
    const stopsOf = (cause: string) => {
      const difference = of(cause);
      return difference?.known ? difference.stops : Number.NaN;
    };
    expect(stopsOf('aperture')).toBeCloseTo(-0.67, 2);
    expect(stopsOf('time')).toBeCloseTo(-0.09, 2);
    expect(figures.evenUp.stops).toBeCloseTo(0.76, 2);
    expect(figures.perArea.stops).toBeCloseTo(-0.76, 2);
    expect(figures.wholeSensor.stops).toBeCloseTo(-1.5, 2);
    expect(figures.sum.missing).toEqual(['offset', 'transmission', 'fade']);
  });

  it('say how each cause is known, and a file that agrees makes it measured', () => {
    const by = (evening: Evening) =>
      Object.fromEntries(base(evening).figures.causes.map((each) => [each.cause, each.by]));
    const evening = shot();
    expect(by(evening)).toEqual({
      time: 'logged',
      aperture: 'logged',
      iso: 'logged',
      offset: 'unknown',
      transmission: 'unknown',
      fade: 'unknown',
    });
    const alder = { exposureS: seconds(64), fNumber: fNumber(6.3), iso: iso(100) };
    const birch = { exposureS: seconds(60), fNumber: fNumber(8), iso: iso(100) };
    matched(evening, 'base', { [A]: file(alder), [B]: file(birch) });
    expect(by(evening)).toMatchObject({ time: 'measured', aperture: 'measured', iso: 'measured' });
    // Of either side: one file alone measures no pair; a file that says another ISO measures none.
    matched(evening, 'base', { [A]: file(alder), [B]: file({ ...birch, iso: iso(200) }) });
    expect(by(evening)).toMatchObject({ time: 'measured', aperture: 'measured', iso: 'logged' });
    matched(evening, 'base', { [A]: file(alder) });
    expect(by(evening)).toMatchObject({ time: 'logged', aperture: 'logged', iso: 'logged' });
  });

  it('are as wide as a hand that held the shutter open', () => {
    const frames = [
      frame('base', A, held('6.3', 16, '100')),
      frame('base', B, held('8', 16, '100')),
    ];
    const onBulb = base(new Evening(frames, planOf(frames)).setUp().shootAll());
    const time = onBulb.figures.causes.find(({ cause }) => cause === 'time');
    // 0.3 s nine times in ten on both sides: 0.3 / 1.6 / 16 / ln 2 = 0.017 stop each, x sqrt(2).
    expect(time?.sigma).toBeGreaterThan(0);
    expect(onBulb.figures.sum.sigma).toBeCloseTo(time?.sigma ?? Number.NaN, 9);
  });
});

describe('what was really needed', () => {
  const evened = (evening: Evening, set: string, needed: number) =>
    evening.tap({
      tap: 'even-up',
      found: {
        set: set as SetId,
        rig: B,
        pass: null,
        needed: { stops: stops(needed), sigma: stops(0.05), by: 'typed' },
      },
    });

  it('stands beside what was predicted, with what is left over', () => {
    const evening = evened(shot(), 'base', 0.9);
    const { leftOver, figures } = base(evening);
    expect(leftOver?.stops).toBeCloseTo(0.9 - figures.evenUp.stops, 9);
    expect(leftOver?.sigma).toBeCloseTo(0.05, 9);
    expect(base(evening.undo()).leftOver).toBeNull();
  });

  it('proposes an offset that leaves nothing over, and none from one set', () => {
    const twice = [
      ...twoSets().slice(0, 2),
      frame('high', A, dialled('8', '0.5', '12800'), { visit: 3 }),
      frame('high', B, dialled('8', '0.5', '12800'), { visit: 4 }),
    ];
    const evening = new Evening(twice).setUp().shootAll();
    const predicted = judged(evening).map(({ whole }) => whole?.figures.evenUp.stops ?? 0);
    evened(evening, 'base', (predicted[0] ?? 0) + 0.3);
    const agree = () => {
      const state = evening.state();
      return agreementOf(leftOversOf(judged(evening), framesOf(state)));
    };
    expect(agree().says).toBe('too-few');
    evened(evening, 'high', (predicted[1] ?? 0) + 0.36);
    const found = agree();
    expect(found).toMatchObject({ says: 'offset', mean: expect.closeTo(0.33, 9) });
  });
});

describe('what a pair may be used for', () => {
  it('is told by what it was found by, and says where it cannot be told', () => {
    const verdicts = new Map(base(shot()).verdicts.map((each) => [each.use, each]));
    // Nobody knows the fade of this evening.
    expect(verdicts.get('brightness')?.fit).toBe('untold');
    expect(verdicts.get('sharpness')?.fit).toBe('not-fit');
    expect(verdicts.get('noise')?.findings.map(({ measure, says }) => [measure, says])).toEqual([
      ['light-per-area', 'untold'],
      ['heat', expect.any(String)],
      ['iso', 'within'],
      ['time', 'within'],
      ['dark-frame', 'within'],
    ]);
  });
});
