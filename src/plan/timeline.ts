import { darkFrameS } from '../gear/darkFrame.ts';
import type { RigId } from '../gear/ids.ts';
import { type Assembled, assemble, type Gear } from '../gear/rig.ts';
import { type Settings, sameSettings } from '../gear/settings.ts';
import { type Refusal, refuse } from '../science/refusal.ts';
import { duration, type Seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import type { FrameKey } from './ids.ts';
import type { Plan } from './plan.ts';
import { restOwed } from './rest.ts';

/** When a frame is made, in seconds from the start of the list. */
export interface FrameTimes {
  readonly key: FrameKey;
  readonly rig: RigId;
  /** The shutter opens. */
  readonly startS: Seconds;
  readonly midS: Seconds;
  /** The shutter closes. */
  readonly endS: Seconds;
  /** The body answers again: its own dark frame is done and the file is written. */
  readonly freeS: Seconds;
}

/** A stretch of the evening in which a rig comes onto the tripod or cools, in seconds from the start. */
export interface Span {
  readonly rig: RigId;
  readonly fromS: Seconds;
  readonly toS: Seconds;
}

/** The estimated course of a list of frames. */
export interface Timeline {
  /** In the order of the list. */
  readonly frames: readonly FrameTimes[];
  readonly swaps: readonly Span[];
  readonly rests: readonly Span[];
  /** From the first act to the last file written. */
  readonly wallS: Seconds;
}

/** What a rig has behind it. */
interface Past {
  readonly settings: Settings;
  readonly exposed: Seconds;
  /** When its sensor stopped working. */
  readonly idleFromS: Seconds;
}

/** Frames that start together: with all rigs side by side those of one repeat, else each by itself. */
function startsOf(plan: Plan, frames: readonly PlannedFrame[]): readonly PlannedFrame[][] {
  const starts: PlannedFrame[][] = [];
  for (const frame of frames) {
    const last = starts.at(-1);
    const first = last?.[0];
    const together =
      plan.order === 'side-by-side' &&
      first?.set === frame.set &&
      first.pass === frame.pass &&
      first.repeat === frame.repeat;
    if (last && together) last.push(frame);
    else starts.push([frame]);
  }
  return starts;
}

const at = (value: number): Seconds => duration(value);

/**
 * When each frame, swap and rest of a list falls, by the plan's allowances, in seconds from the
 * start, with the first rig already on the tripod.
 *
 * Each start runs through: swap if another rig's visit begins; dial change for each rig whose marks
 * differ from its last frame's (its first frame counts); rest still owed, the swap and the dial
 * change having counted as rest; settle; the body's self-timer; exposure; the body's own dark frame
 * by its rule; write. A capped dark follows straight after its frame and waits for no rest. Rigs
 * side by side are dialled one after the other, start by one tap and wait for the slowest.
 *
 * @returns a refusal ('rig-gone') if a frame's rig is not among the gear.
 */
export function timelineOf(
  plan: Plan,
  gear: Gear,
  frames: readonly PlannedFrame[],
): Timeline | Refusal {
  const rigs = new Map<RigId, Assembled>();
  for (const { rig } of frames) {
    const assembled = rigs.get(rig) ?? assemble(gear, rig);
    if (!assembled) return refuse('rig-gone');
    rigs.set(rig, assembled);
  }
  const darks = new Set(plan.sets.filter((set) => set.kind === 'capped-dark').map(({ id }) => id));
  const times: FrameTimes[] = [];
  const swaps: Span[] = [];
  const rests: Span[] = [];
  const past = new Map<RigId, Past>();
  let now = 0;
  let visit: number | null = null;

  for (const start of startsOf(plan, frames)) {
    const [first] = start;
    if (first && visit !== null && first.visit !== visit) {
      swaps.push({ rig: first.rig, fromS: at(now), toS: at(now + plan.allowances.swapS) });
      now += plan.allowances.swapS;
    }
    visit = first?.visit ?? visit;

    for (const { rig, settings } of start) {
      const before = past.get(rig);
      if (!before || !sameSettings(before.settings, settings)) now += plan.allowances.dialChangeS;
    }

    const owed = start.map(({ rig, set }) => {
      const before = past.get(rig);
      if (!before || darks.has(set)) return 0;
      return restOwed(plan.rest, before.exposed, at(Math.max(0, now - before.idleFromS)));
    });
    for (const [index, { rig }] of start.entries()) {
      const rest = owed[index] ?? 0;
      if (rest > 0) rests.push({ rig, fromS: at(now), toS: at(now + rest) });
    }
    now += Math.max(0, ...owed) + plan.allowances.settleS;

    const tap = now;
    for (const { key, rig, settings, exact } of start) {
      const body = rigs.get(rig)?.body;
      if (!body) return refuse('rig-gone');
      const startS = tap + (body.selfTimer.usedS ?? 0);
      const endS = startS + exact.t;
      const idleFromS = endS + darkFrameS(body.darkFrame, exact.t);
      const freeS = idleFromS + plan.allowances.writeS;
      times.push({
        key,
        rig,
        startS: at(startS),
        midS: at((startS + endS) / 2),
        endS: at(endS),
        freeS: at(freeS),
      });
      past.set(rig, { settings, exposed: exact.t, idleFromS: at(idleFromS) });
      now = Math.max(now, freeS);
    }
  }
  return { frames: times, swaps, rests, wallS: at(now) };
}
