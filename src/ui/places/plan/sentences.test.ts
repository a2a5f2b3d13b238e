import { expect, test } from 'vitest';
import type { RigId } from '../../../gear/ids.ts';
import { PRACTICE_GEAR } from '../../../gear/practice.ts';
import { assemble } from '../../../gear/rig.ts';
import { practicePlan } from '../../../plan/practicePlan.ts';
import { preparePlan } from '../../../plan/prepare.ts';
import { en } from '../../words/en.ts';
import { faultWords } from '../../words/faults.ts';
import { withPair } from '../../words/pair.ts';
import { plan as words } from '../../words/plan.en.ts';
import { problemWords } from './sentences.ts';
import type { PlanView } from './usePlanView.ts';

// 2^(10/3), 16 and 2^(8/3) behind the marks: log2 of the ratios, by hand.
test.each([
  ['10', '0.01'],
  ['15', '0.09'],
  ['6', '0.08'],
])(
  'what hangs on a mark of %s that nobody has measured is that mark’s own figure',
  (mark, stops) => {
    const cedar = PRACTICE_GEAR.rigs.find(({ letter }) => letter === 'C');
    const [set] = practicePlan().sets;
    if (!cedar || !set) throw new Error('the practice gear has no third rig');
    const settings = { fMark: '8', time: { kind: 'dial', mark }, isoMark: '200' } as const;
    const plan = {
      ...practicePlan(),
      rigs: [cedar.id],
      sets: [{ ...set, reference: cedar.id, settings }],
    };
    const prepared = preparePlan(plan, PRACTICE_GEAR);
    const problem = prepared.problems.find(({ code }) => code === 'time-uncertain');
    if (!problem) throw new Error('nothing is uncertain');
    const view = {
      plan,
      prepared,
      rig: (id: RigId) => assemble(PRACTICE_GEAR, id),
    } as unknown as PlanView;
    const said = problemWords({ ...withPair(en), ...faultWords(en), plan: words }, view, problem);
    expect(said).toMatch(new RegExp(`runs as marked\\. ${stops} stop hangs on it\\.$`));
  },
);
