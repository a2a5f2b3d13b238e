import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { isFault } from '../gear/read.ts';
import { stops } from '../science/units.ts';
import type { PlanId } from './ids.ts';
import { newPlan } from './newPlan.ts';
import { readPlan, readPlannedFrame } from './parse.ts';
import type { Plan } from './plan.ts';
import { practicePlan } from './practicePlan.ts';
import { preparePlan } from './prepare.ts';

const PRACTICE_PLAN = practicePlan();

const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** The practice plan with one field set to something else: 'sets.0.passes', 0. */
function spoilt(path: string, value: unknown): unknown {
  const whole = json(PRACTICE_PLAN) as Record<string, unknown>;
  const steps = path.split('.');
  const last = steps.pop() ?? '';
  let place = whole;
  for (const step of steps) place = place[step] as Record<string, unknown>;
  if (value === undefined) delete place[last];
  else place[last] = value;
  return whole;
}

describe('a plan from a file', () => {
  it('comes back as it was written', () => {
    expect(readPlan(json(PRACTICE_PLAN))).toEqual(PRACTICE_PLAN);
    const empty = newPlan('p' as PlanId, 'Tonight', []);
    expect(readPlan(json(empty))).toEqual(empty);
  });

  it('keeps every kind of hold', () => {
    const [a, b] = PRACTICE_PLAN.rigs;
    const [first] = PRACTICE_PLAN.sets;
    if (!a || !b || !first) throw new Error('a practice plan');
    const holds: Plan['sets'][number]['hold'][] = [
      { kind: 'same-picture' },
      { kind: 'same-exposure' },
      { kind: 'free', settings: { [b]: first.settings } },
      { kind: 'same-iso-and-time', aperture: { rule: 'same-depth-of-field', plus: stops(1 / 3) } },
    ];
    for (const hold of holds) {
      const plan = { ...PRACTICE_PLAN, sets: [{ ...first, hold }] };
      expect(readPlan(json(plan))).toEqual(plan);
    }
  });

  const cases: readonly [string, unknown, string, string][] = [
    ['passes', 0, 'sets[0].passes', 'out-of-range'],
    ['passes', 17, 'sets[0].passes', 'out-of-range'],
    ['passes', 1.5, 'sets[0].passes', 'not-whole'],
    ['repeats', 65, 'sets[0].repeats', 'out-of-range'],
    ['repeats', '2', 'sets[0].repeats', 'not-a-number'],
    ['targetOffset', 11, 'sets[0].targetOffset', 'out-of-range'],
    ['kind', 'dark', 'sets[0].kind', 'not-among'],
    ['framing', 'area', 'sets[0].framing', 'not-among'],
    ['reference', 7, 'sets[0].reference', 'not-an-id'],
    ['reference', '__proto__', 'sets[0].reference', 'not-an-id'],
    ['settings.fMark', 'f/8', 'sets[0].settings.fMark', 'not-a-mark'],
    [
      'settings.time',
      { kind: 'bulb', seconds: -4 },
      'sets[0].settings.time.seconds',
      'time-not-positive',
    ],
    ['hold.kind', 'equal', 'sets[0].hold.kind', 'not-among'],
    ['hold.aperture.plus', null, 'sets[0].hold.aperture.plus', 'not-a-number'],
    ['extra', 1, 'sets[0]', 'field-unknown'],
    ['intent', undefined, 'sets[0].intent', 'field-missing'],
  ];
  it.each(cases)('names the place where a set’s %s is %j', (field, value, path, rule) => {
    const place = `sets.0.${field}`;
    expect(readPlan(spoilt(place, value))).toMatchObject({ refused: true, path, rule });
  });

  const ofPlan: readonly [string, unknown, string, string][] = [
    ['name', '  ', 'name', 'text-empty'],
    ['order', 'random', 'order', 'not-among'],
    ['allowances.swapS', -1, 'allowances.swapS', 'duration-negative'],
    ['allowances.swapS', 3601, 'allowances.swapS', 'out-of-range'],
    ['rest.rule.factor', 11, 'rest.rule.factor', 'out-of-range'],
    ['rest.kind', 'now', 'rest.kind', 'not-among'],
    ['oneRigAtATime', true, 'oneRigAtATime', 'order-comes-back'],
    ['swapWorth', -1, 'swapWorth', 'out-of-range'],
    ['locked', [''], 'locked[0]', 'not-an-id'],
    ['nearestSubjectMm', 0, 'nearestSubjectMm', 'length-not-positive'],
    ['axesApartMm', 20_000, 'axesApartMm', 'out-of-range'],
    ['rigs', ['a', 'b', 'a'], 'rigs[2]', 'id-twice'],
    ['rigs', ['a', 'b', 'c', 'd', 'e'], 'rigs', 'list-too-long'],
    ['sets.2.id', 'practice-set-1', 'sets[2]', 'id-twice'],
  ];
  it.each(ofPlan)('names the place where %s is %j', (place, value, path, rule) => {
    expect(readPlan(spoilt(place, value))).toMatchObject({ refused: true, path, rule });
  });

  it('stops at more frames than any evening holds, a capped dark counted by its set’s passes', () => {
    const [first] = PRACTICE_PLAN.sets;
    const dark = { ...first, kind: 'capped-dark', passes: 1, repeats: 64 };
    const plan = (passes: number) => ({
      ...PRACTICE_PLAN,
      sets: [
        { ...first, passes },
        { ...dark, id: 'dark' },
      ],
    });
    // 2 rigs x 15 passes x (1 + 64) = 1950; 16 passes = 2080.
    expect(isFault(readPlan(json(plan(15))))).toBe(false);
    expect(readPlan(json(plan(16)))).toMatchObject({ path: 'sets', rule: 'too-many-frames' });
  });

  it('never throws and never lets through what it was not asked for', () => {
    fc.assert(
      fc.property(fc.anything(), (anything) => {
        expect(isFault(readPlan(anything))).toBe(true);
      }),
    );
  });

  it('takes a plan spoilt anywhere as a fault, never as another plan', () => {
    const paths = (value: unknown, at: string): string[] =>
      typeof value === 'object' && value !== null
        ? Object.entries(value).flatMap(([key, inner]) => [
            at ? `${at}.${key}` : key,
            ...paths(inner, at ? `${at}.${key}` : key),
          ])
        : [];
    const all = paths(json(PRACTICE_PLAN), '');
    expect(all.length).toBeGreaterThan(60);
    fc.assert(
      fc.property(fc.constantFrom(...all), fc.constantFrom(true, [1], { a: 1 }), (path, wrong) => {
        fc.pre(!(wrong === true && /(^|\.)(on|invented)$/.test(path)));
        expect(isFault(readPlan(spoilt(path, wrong)))).toBe(true);
      }),
    );
  });
});

describe('a planned frame from a file', () => {
  const { frames } = preparePlan(PRACTICE_PLAN, PRACTICE_GEAR);

  it('comes back as it was written', () => {
    for (const frame of frames) expect(readPlannedFrame(json(frame))).toEqual(frame);
  });

  it('is refused under another frame’s name', () => {
    const [first, second] = frames;
    expect(readPlannedFrame(json({ ...first, key: second?.key }))).toMatchObject({
      path: 'key',
      rule: 'key-not-of-this-frame',
    });
  });
});
