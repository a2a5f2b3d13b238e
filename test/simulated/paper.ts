import { assemble } from '../../src/gear/rig.ts';
import type { PlannedFrame } from '../../src/plan/frame.ts';
import { preparePlan } from '../../src/plan/prepare.ts';
import { later, type Stops, seconds } from '../../src/science/units.ts';
import { exposureOf, type Opened, openShutter } from './shutter.ts';
import { GEAR, type Task } from './task.ts';
import type { Stated, Walked } from './ways.ts';
import { chanceOf } from './world/chance.ts';
import { handsOf } from './world/hands.ts';
import type { Exposed } from './world/truth.ts';

/*
 * A careful person with paper and a stopwatch: set after set, rig A, then rig B, at the same marked
 * settings or the nearest that the other dial has. What was really set is written down, and what a
 * hand held open to the second. Of the light's change nothing is known.
 */

/** Who reads marks in thirds of a stop takes a figure to be good to half a third (our assumption). */
const HALF_A_THIRD = 1 / 6;

interface Written extends Exposed {
  /** Not spoilt, and no capped dark. */
  readonly counts: boolean;
  /** What the paper makes of the frame, in stops. */
  readonly written: Stops;
}

/** The frames of a task, one pass, each set by the rigs in their order, darks after their frames. */
function framesOf({ plan }: Task): readonly PlannedFrame[] {
  const once = plan.sets.map((set) => ({
    ...set,
    passes: 1,
    hold: { kind: 'same-exposure' } as const,
  }));
  const { frames } = preparePlan({ ...plan, order: 'forward', sets: once }, GEAR);
  let light = 0;
  const groups = new Map(
    plan.sets.map(({ id, kind }) => {
      if (kind !== 'capped-dark') light += 1;
      return [id, light];
    }),
  );
  const place = ({ set, rig }: PlannedFrame): number =>
    (groups.get(set) ?? 0) * plan.rigs.length + plan.rigs.indexOf(rig);
  return frames.toSorted((a, b) => place(a) - place(b));
}

/** By the stopwatch to the second, or by the mark. */
const writtenOf = ({ settings, exact }: PlannedFrame, { exposure, t }: Opened): Stops =>
  settings.time.kind === 'bulb' ? exposureOf(exact, seconds(Math.round(t))) : exposure;

/** Walks an evening with paper and a stopwatch. */
export function walkWithPaper(task: Task): Walked {
  const { evening, plan, startMs } = task;
  const hands = handsOf(chanceOf(evening.seed, 'hands with paper'));
  const written: Written[] = [];
  let now = startMs;
  let mounted = plan.rigs[0];
  let before: PlannedFrame | null = null;
  for (const frame of framesOf(task)) {
    const rig = assemble(GEAR, frame.rig);
    if (!rig) throw new Error(`no rig ${frame.rig}`);
    if (frame.rig !== mounted) now = later(now, hands.takes('swap'));
    if (frame.rig !== mounted || frame.set !== before?.set) now = later(now, hands.takes('dial'));
    mounted = frame.rig;
    before = frame;
    for (let spoilt = true; spoilt; ) {
      const going = hands.exposure();
      spoilt = going.spoilt;
      const said = later(now, hands.takes('settle') + (rig.body.selfTimer.usedS ?? 0));
      const opened = openShutter(rig, frame, said, going);
      const isDark = plan.sets.some(({ id, kind }) => id === frame.set && kind === 'capped-dark');
      written.push({
        set: frame.set,
        letter: rig.rig.letter,
        openedMs: opened.openedMs,
        t: opened.t,
        exposure: opened.exposure,
        counts: !spoilt && !isDark,
        written: writtenOf(frame, opened),
      });
      now = later(opened.openedMs, opened.t + hands.takes('tap'));
    }
  }
  return { exposures: written, switchedOn: startMs, stated: statedOf(task, written) };
}

function statedOf({ plan }: Task, written: readonly Written[]): Walked['stated'] {
  return plan.sets.flatMap(({ id: set, reference: rig }) => {
    const reference = assemble(GEAR, rig)?.rig.letter ?? '';
    const counted = written.filter((each) => each.counts && each.set === set);
    const others = new Set(counted.map(({ letter }) => letter));
    others.delete(reference);
    return [...others].map((other): Stated => {
      const of = (letter: string) => counted.filter((each) => each.letter === letter);
      const [one, two] = [of(reference), of(other)];
      const weighed = [
        ...one.map((each) => [each, -1 / one.length] as const),
        ...two.map((each) => [each, 1 / two.length] as const),
      ];
      return {
        set,
        reference,
        other,
        stops: weighed.reduce((sum, [each, weight]) => sum + weight * each.written, 0) as Stops,
        weights: new Map(weighed),
        half: HALF_A_THIRD as Stops,
      };
    });
  });
}
