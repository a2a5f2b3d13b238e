import { darkFrameS } from '../gear/darkFrame.ts';
import type { RigId } from '../gear/ids.ts';
import { exactSettings } from '../gear/positions.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import { waitsIn } from '../plan/nextFrame.ts';
import type { Allowances } from '../plan/plan.ts';
import type { HeatMode } from '../science/heat.ts';
import { isRefusal } from '../science/refusal.ts';
import { duration, type Seconds } from '../science/units.ts';
import { openedAt } from './exposure.ts';
import type { MadeId } from './ids.ts';
import type { Instant } from './instant.ts';
import { byFrame, reallyMade } from './openTime.ts';
import type { MadeFrame, RigAct, RunState } from './state.ts';
import { elapsedBetween } from './timing.ts';

/*
 * What each rig really went through. Assumed, where no tap tells (our choice):
 *
 * - A sensor is rested when the outing starts, and its body is off until it is first touched.
 * - A tick on the set-up sheet and a turn of the dials take the plan's time for a dial change, with
 *   the body on; focusing and finding the framing take the plan's time for framing, in live view.
 * - From settling to the shutter and while it writes a body is on. In between it waits: off, or on
 *   where its lens loses the focus; said to be switched off, it is off until it is next touched.
 * - An extra shot was as long as what stood on the dials.
 *
 * What does not fit between two taps is cut short: nothing lasts longer than there was time.
 */

/** Which clock counts where the two of one page session disagree: the phone slept, or was set. */
export type Clock = 'wall' | 'steady';

/** A stretch of one rig's evening, in seconds from the start of the outing. */
export interface HeatStretch {
  readonly mode: HeatMode;
  readonly fromS: number;
  /** Infinite while a hand holds the shutter open. */
  readonly toS: number;
  /** The frame whose shutter was open. */
  readonly made: MadeId | null;
}

/** Why nobody knows how warm a sensor is from there on. */
export type HeatDoubt = 'battery-changed' | 'clock-set';

/** The last time a sensor worked. */
export interface LastWork {
  /** The shutter closes. */
  readonly closedS: number;
  /** The sensor stops working: its own dark frame is done. */
  readonly idleFromS: number;
  readonly exposedS: Seconds;
}

/** What one rig went through. */
export interface RigCourse {
  /** Without gaps, from the start of the outing. */
  readonly stretches: readonly HeatStretch[];
  /** Where they end; the rig waits from there on. */
  readonly endS: number;
  readonly waits: 'off' | 'idle';
  readonly lastWork: LastWork | null;
  /** Whether the clock still bridges the time since then. */
  readonly isTimed: boolean;
  readonly doubt: HeatDoubt | null;
  /** Frames that were made in doubt. */
  readonly doubtful: ReadonlyMap<MadeId, HeatDoubt>;
}

/** What all rigs went through, by one clock. */
export interface Courses {
  readonly rigs: ReadonlyMap<RigId, RigCourse>;
  /** The last act and when it was, in seconds from the start. */
  readonly last: { readonly at: Instant; readonly s: number };
  /** Whether the other clock would tell it otherwise. */
  readonly clocksDisagree: boolean;
}

/** What all rigs of an outing went through. */
export function coursesOf(state: RunState, clock: Clock): Courses {
  const made = new Map(state.made.map((frame) => [frame.id, frame]));
  const changes = byFrame(state.corrections);
  const open = new Set(state.open);
  const rigs = new Map<RigId, Going>();
  for (const rig of state.plan.rigs) {
    const parts = assemble(state.gear, rig);
    if (parts) rigs.set(rig, new Going(parts, state.plan.allowances));
  }
  let at = state.startedAt;
  let s = 0;
  let clocksDisagree = false;
  for (const act of state.acts) {
    const gap = gapBetween(at, act.at, clock);
    clocksDisagree ||= gap !== gapBetween(at, act.at, clock === 'wall' ? 'steady' : 'wall');
    if (gap === null) for (const going of rigs.values()) going.loseTheTime();
    s += gap ?? 0;
    at = act.at;
    const going = rigs.get(act.rig);
    if (!going) continue;
    if (act.what !== 'exposed') {
      going.act(act, s);
      continue;
    }
    const frame = made.get(act.made);
    if (frame) going.expose(frame, s, openFor(frame, open.has(frame.id), changes, going, clock));
  }
  return {
    rigs: new Map([...rigs].map(([rig, going]) => [rig, going.course()])),
    last: { at, s },
    clocksDisagree,
  };
}

/** Seconds from one instant to a later one by one clock; null where it ran backwards. */
export function gapBetween(from: Instant, to: Instant, clock: Clock): number | null {
  const since = elapsedBetween(from, to);
  if (since.certainty === 'unknown') return null;
  const steadyMs = to.monoMs - from.monoMs;
  return since.certainty === 'wall' &&
    clock === 'steady' &&
    from.session === to.session &&
    steadyMs >= 0
    ? steadyMs / 1000
    : since.s;
}

/** How long a frame's shutter was open: infinite while it is held; null = nobody knows. */
function openFor(
  frame: MadeFrame,
  isOpen: boolean,
  changes: ReadonlyMap<MadeId, RunState['corrections']>,
  { parts }: Going,
  clock: Clock,
): number | null {
  const { planned, closedAt, settings } = frame;
  if (settings === null && closedAt === null) {
    if (planned.settings.time.kind === 'dial') return planned.exact.t;
    return isOpen ? Number.POSITIVE_INFINITY : null;
  }
  const { openTime } = reallyMade(frame, changes.get(frame.id) ?? [], parts);
  if (openTime.from === 'unknown') return null;
  return openTime.from === 'hand' && closedAt
    ? gapBetween(openedAt(frame), closedAt, clock)
    : openTime.s;
}

/** One rig, on its way through the evening. */
class Going {
  readonly parts: Assembled;
  readonly #allowances: Allowances;
  readonly #stretches: HeatStretch[] = [];
  readonly #doubtful = new Map<MadeId, HeatDoubt>();
  #endS = 0;
  #waits: 'off' | 'idle' = 'off';
  #lastWork: LastWork | null = null;
  #isTimed = true;
  #doubt: HeatDoubt | null = null;

  constructor(parts: Assembled, allowances: Allowances) {
    this.parts = parts;
    this.#allowances = allowances;
  }

  act(act: Exclude<RigAct, { what: 'exposed' }>, atS: number): void {
    switch (act.what) {
      case 'ticked':
      case 'dialled':
        this.#before(atS, 'idle', this.#allowances.dialChangeS);
        return;
      case 'focused':
      case 'framed':
        this.#before(atS, 'live-view', this.#allowances.reframeS);
        return;
      case 'extra': {
        const exact = act.settings && exactSettings(this.parts, act.settings);
        const t = exact && !isRefusal(exact) ? exact.t : duration(0);
        this.#before(atS, 'exposing', act.count * (t + darkFrameS(this.parts.body.darkFrame, t)));
        return;
      }
      case 'switched-off':
        this.#add(this.#waits, atS);
        this.#waits = 'off';
        return;
      case 'battery-changed':
        this.#doubt ??= 'battery-changed';
        return;
      default:
        act satisfies never;
    }
  }

  /** @param openS how long the shutter was open; null = nobody knows. */
  expose(frame: MadeFrame, atS: number, openS: number | null): void {
    this.#before(atS, 'idle', this.#allowances.settleS);
    const opensS = atS + frame.leadInS;
    this.#add('idle', opensS);
    if (openS === null) this.#doubt ??= 'clock-set';
    if (this.#doubt) this.#doubtful.set(frame.id, this.#doubt);
    const exposedS = openS ?? frame.planned.exact.t;
    const closedS = opensS + exposedS;
    this.#add('exposing', closedS, frame.id);
    this.#isTimed = openS !== null;
    if (exposedS === Number.POSITIVE_INFINITY) {
      this.#lastWork = null;
      return;
    }
    const exposed = duration(exposedS);
    const idleFromS = closedS + darkFrameS(this.parts.body.darkFrame, exposed);
    this.#add('exposing', idleFromS);
    this.#add('idle', idleFromS + this.#allowances.writeS);
    this.#lastWork = { closedS, idleFromS, exposedS: exposed };
  }

  /** Nobody knows how long it was until now. */
  loseTheTime(): void {
    this.#doubt ??= 'clock-set';
    this.#isTimed = false;
  }

  course(): RigCourse {
    return {
      stretches: this.#stretches,
      endS: this.#endS,
      waits: this.#waits,
      lastWork: this.#lastWork,
      isTimed: this.#isTimed,
      doubt: this.#doubt,
      doubtful: this.#doubtful,
    };
  }

  /** A mode that ended at an instant, for so long as there was time. */
  #before(atS: number, mode: HeatMode, lasts: number): void {
    this.#add(this.#waits, atS - lasts);
    this.#add(mode, atS);
    this.#waits = waitsIn(this.parts.lens);
  }

  #add(mode: HeatMode, toS: number, made: MadeId | null = null): void {
    const end = Math.max(this.#endS, toS);
    if (end > this.#endS || made !== null) {
      this.#stretches.push({ mode, fromS: this.#endS, toS: end, made });
    }
    this.#endS = end;
  }
}
