import type { Body, DarkFrame } from '../../src/gear/body.ts';
import type { BodyId, LensId, RigId } from '../../src/gear/ids.ts';
import type { Letter } from '../../src/gear/letter.ts';
import { PRACTICE_GEAR } from '../../src/gear/practice.ts';
import type { Gear } from '../../src/gear/rig.ts';
import type { Settings } from '../../src/gear/settings.ts';
import type { PlanId, SetId } from '../../src/plan/ids.ts';
import { DEFAULT_REST, newPlan, newSet } from '../../src/plan/newPlan.ts';
import { type DialledOf, orderFrames } from '../../src/plan/order.ts';
import type { OrderRequest, SetWindow } from '../../src/plan/orderProblem.ts';
import { type Mounting, ORDERS, type Plan, type PlanSet } from '../../src/plan/plan.ts';
import type { RestChoice } from '../../src/plan/restChoice.ts';
import type { Random } from '../../src/science/mulberry32.ts';
import { UNMEASURED } from '../../src/science/thermalRange.ts';
import {
  duration,
  type Ev,
  ev,
  fNumber,
  iso,
  ratio,
  type Seconds,
  seconds,
} from '../../src/science/units.ts';

/*
 * Shot lists with their light, by chance: what an evening may ask of an order. Two to four rigs, sets
 * of frames from a second to four minutes, a dusk that fades and bends or ends in lamps, minutes in
 * which a set's exposure is right.
 */

/** How large the lists may be. */
export interface CaseSize {
  readonly leastTurns: number;
  readonly mostTurns: number;
  /** Repeats of a frame in one turn, and capped darks after it, where the case has any. */
  readonly mostRepeats: number;
  readonly darks: boolean;
}

const LETTERS: readonly Letter[] = ['A', 'B', 'C', 'D'];

const whole = (random: Random, least: number, most: number): number =>
  least + Math.floor(random() * (1 + most - least));
const pick = <T>(random: Random, from: readonly T[]): T => {
  const picked = from[Math.floor(random() * from.length)];
  if (picked === undefined) throw new Error('nothing to pick from');
  return picked;
};
const between = (random: Random, least: number, most: number): number =>
  least + random() * (most - least);

function gearOf(random: Random, count: number): Gear {
  const darkFrames: readonly DarkFrame[] = [
    { kind: 'never' },
    { kind: 'never' },
    { kind: 'from', fromS: seconds(30) },
  ];
  const letters = LETTERS.slice(0, count);
  return {
    bodies: letters.map((letter): Body => {
      const body = pick(random, PRACTICE_GEAR.bodies);
      return {
        ...body,
        id: `body-${letter}` as BodyId,
        darkFrame: pick(random, darkFrames),
        selfTimer: { ...body.selfTimer, usedS: pick(random, [null, seconds(2), seconds(10)]) },
      };
    }),
    lenses: letters.map((letter) => ({
      ...pick(random, PRACTICE_GEAR.lenses),
      id: `lens-${letter}` as LensId,
      focusSurvivesPowerOff: random() < 0.5,
    })),
    rigs: letters.map((letter) => ({
      id: `rig-${letter}` as RigId,
      letter,
      bodyId: `body-${letter}` as BodyId,
      lensId: `lens-${letter}` as LensId,
      offsets: [],
      invented: true,
    })),
  };
}

/** EV against seconds. */
function lightOf(random: Random): (at: Seconds) => number {
  const start = between(random, -1, 4);
  const fade = between(random, 0.02, 0.2);
  // A dusk that slows does not turn round within the hour that it bends.
  const bend = between(random, -(fade - 0.01) / 120, 0.003);
  const lamps = random() < 0.25 ? start - between(random, 1, 4) : null;
  return (at) => {
    const minutes = at / 60;
    const bent = Math.min(minutes, 60);
    const natural = start - fade * minutes - bend * (bent ** 2 + 2 * bent * (minutes - bent));
    return lamps === null ? natural : Math.log2(2 ** natural + 2 ** lamps);
  };
}

/** The minutes in which the light is near a level; null where it never is. */
function windowOf(
  light: (at: Seconds) => number,
  level: number,
  tolerance: number,
): SetWindow | null {
  const inside = Array.from({ length: 360 }, (_, step) => duration(30 * step)).filter(
    (at) => Math.abs(light(at) - level) <= tolerance,
  );
  const [fromS] = inside;
  const toS = inside.at(-1);
  return fromS === undefined || toS === undefined ? null : { fromS, toS };
}

/** A request whose light is known. */
export interface OrderCase extends OrderRequest {
  readonly light: (at: Seconds) => Ev;
}

/** A case by chance, of which all frames are dialled by hand. */
export function orderCase(random: Random, size: CaseSize, mounting: Mounting = 'swaps'): OrderCase {
  const light = lightOf(random);
  for (;;) {
    const rigCount = pick(random, [2, 2, 2, 3, 3, 4]);
    const passes = pick(random, [1, 2, 2, 2, 3, 4]);
    const setCount = whole(random, 1, 6);
    const turns = rigCount * passes * setCount;
    if (turns < size.leastTurns || turns > size.mostTurns) continue;
    const gear = gearOf(random, rigCount);
    const rigs = gear.rigs.map(({ id }) => id);
    const settingsOf = (t: number): Settings => ({
      fMark: '8',
      time: { kind: 'dial', mark: String(t) },
      isoMark: '200',
    });

    const sets: PlanSet[] = [];
    const times = new Map<string, number>();
    const windows = new Map<SetId, SetWindow>();
    const notBefore = new Map<SetId, Seconds>();
    const hasWindows = random() < 0.5;
    let level = light(duration(0)) - between(random, 0, 0.5);
    for (let index = 0; index < setCount; index += 1) {
      const id = `set-${index + 1}` as SetId;
      const t = pick(random, [1, 4, 15, 30, 60, 60, 120, 240]);
      const reference = pick(random, rigs);
      sets.push({
        ...newSet(id, reference, settingsOf(t)),
        passes,
        repeats: whole(random, 1, size.mostRepeats),
      });
      if (size.darks && random() < 0.3) {
        sets.push({
          ...newSet(`${id}-dark` as SetId, reference, settingsOf(t)),
          kind: 'capped-dark',
        });
      }
      const alike = random() < 0.5;
      for (const rig of rigs)
        times.set(`${id}/${rig}`, alike ? t : t * pick(random, [1, 0.5, 1.07]));
      if (hasWindows) {
        const window = windowOf(light, level, between(random, 0.3, 0.7));
        level -= between(random, 0.2, 1.5);
        if (window) windows.set(id, window);
        if (window?.fromS && random() < 0.8) notBefore.set(id, window.fromS);
      }
    }
    const rest: RestChoice = pick(random, [
      { kind: 'none' },
      { kind: 'thumb', rule: { ...DEFAULT_REST, offUpToS: duration(30) } },
      { kind: 'limit', ratioOf: () => ratio(1.25), longestS: duration(600) },
    ]);
    const plan: Plan = {
      ...newPlan('plan' as PlanId, 'An evening', rigs),
      sets,
      order: mounting === 'side-by-side' ? 'side-by-side' : pick(random, ORDERS.slice(0, -1)),
      allowances: {
        swapS: duration(whole(random, 30, 110)),
        reframeS: duration(whole(random, 10, 40)),
        dialChangeS: duration(whole(random, 5, 20)),
        settleS: duration(whole(random, 2, 8)),
        writeS: duration(whole(random, 1, 4)),
      },
      rest: rest.kind === 'thumb' ? rest : { kind: 'none' },
    };
    const dialled: DialledOf = (set, rig) => {
      const t = times.get(`${set}/${rig}`);
      if (t === undefined) return null;
      return {
        settings: settingsOf(t),
        exact: { n: fNumber(8), t: seconds(t), s: iso(200) },
      };
    };
    return {
      plan,
      gear,
      frames: orderFrames(plan, dialled),
      mounting,
      light: (at) => ev(light(at)),
      windows,
      notBefore,
      rest,
      thermal: () => UNMEASURED,
      locked: new Set(),
    };
  }
}
