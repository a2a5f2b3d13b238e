import { describe, expect, it } from 'vitest';
import { A, dialled, Evening, frame, gear, planOf } from '../../test/evenings/evening.ts';
import { assemble } from '../gear/rig.ts';
import { setInHand } from '../outing/light.ts';
import { heatSeries } from '../plan/heatSeries.ts';
import type { SetId } from '../plan/ids.ts';
import type { Plan } from '../plan/plan.ts';
import { preparePlan } from '../plan/prepare.ts';
import { must } from '../science/refusal.ts';
import { framesOf } from './frames.ts';
import { countedFrames, ledgersOf } from './ledger.ts';

describe('a capped series', () => {
  const rig = assemble(gear, A);
  if (!rig) throw new Error('the rig is not there');
  let sets = 0;
  const newId = () => {
    sets += 1;
    return `series-${sets}` as SetId;
  };
  const base: Plan = {
    ...planOf([frame('x', A, dialled('6.3', '64', '100'))]),
    ...must(heatSeries(rig, '12800', newId)),
  };
  const list = preparePlan(base, gear).frames;

  it('is walked without mounting or focusing, short frames by one tap and waits in full', () => {
    const evening = new Evening(list, base);
    // Nobody has ticked that the focus is fixed.
    evening.tap({ tap: 'begin-frames' });
    const seen: string[] = [];
    const waited: number[] = [];
    while (evening.step().kind !== 'list-done') {
      const step = evening.step();
      seen.push(step.kind === 'expose' ? (step.short ? 'taken' : 'timed') : step.kind);
      if (step.kind === 'rest') {
        expect(step.resting.why).toBe('asked');
        waited.push(step.resting.owedS);
        evening.tap({ tap: 'powered-off', rig: A }).untilExpose();
      } else if (step.kind === 'dial') {
        evening.tap({ tap: 'dialled', frame: step.frame.key });
      } else evening.shoot();
    }
    const times = (count: number, what: string) => Array.from({ length: count }, () => what);
    expect(seen).toEqual([
      'dial',
      ...times(2, 'taken'),
      'dial',
      ...times(12, 'timed'),
      ...[240, 480, 960].flatMap(() => ['rest', 'timed', 'timed']),
    ]);
    expect(waited).toEqual([240, 480, 960]);
    expect(evening.state().made).toHaveLength(20);
    const log = framesOf(evening.state());
    // What the log says of the pause before each: never less than was asked for.
    const pauses = log.flatMap(({ restedS }) =>
      restedS !== null && restedS > 60 ? [restedS] : [],
    );
    expect(pauses).toHaveLength(3);
    for (const [at, wait] of [240, 480, 960].entries()) {
      expect(pauses[at]).toBeGreaterThanOrEqual(wait);
      expect(pauses[at]).toBeLessThan(wait + 10);
    }
    expect(ledgersOf(base, gear, countedFrames(log), null)).toEqual([]);
    expect(setInHand(new Evening(list, base).state())).toBeNull();
  });

  it('leaves a doubt of the focus for the first frame that needs it', () => {
    const light = frame('light', A, dialled('6.3', '8', '100'));
    const [first] = list;
    if (!first) throw new Error('the series is empty');
    const mixed = [first, light];
    const kinds = planOf(mixed).sets.map((set) =>
      set.id === first.set ? { ...set, kind: 'capped-series' as const } : set,
    );
    const evening = new Evening(mixed, { ...planOf(mixed), sets: kinds }).tap({
      tap: 'begin-frames',
    });
    evening.tap({ tap: 'dialled', frame: first.key });
    expect(evening.step().kind).toBe('expose');
    evening.shoot();
    expect(evening.step().kind).toBe('mount');
    evening.tap({ tap: 'mounted', frame: light.key });
    expect(evening.step()).toMatchObject({ kind: 'focus', why: 'not-fixed' });
  });
});
