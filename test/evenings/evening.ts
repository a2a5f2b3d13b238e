import type { RigId } from '../../src/gear/ids.ts';
import { exactSettings } from '../../src/gear/positions.ts';
import { PRACTICE_GEAR } from '../../src/gear/practice.ts';
import { assemble } from '../../src/gear/rig.ts';
import type { Settings } from '../../src/gear/settings.ts';
import { PRACTICE_SITE } from '../../src/light/practice.ts';
import type { SkyTable } from '../../src/light/skyTable.ts';
import type { Draft, OutingEvent } from '../../src/outing/events.ts';
import { fold } from '../../src/outing/fold.ts';
import type { EventId, OutingId, SessionId, WriterId } from '../../src/outing/ids.ts';
import type { Instant } from '../../src/outing/instant.ts';
import { next, type Tap } from '../../src/outing/next.ts';
import { nextSeq, seal } from '../../src/outing/seal.ts';
import { inOrder, lastTap } from '../../src/outing/sequence.ts';
import type { RunState } from '../../src/outing/state.ts';
import { type Step, stepAt } from '../../src/outing/step.ts';
import type { PlannedFrame } from '../../src/plan/frame.ts';
import type { FrameKey, PlanId, SetId } from '../../src/plan/ids.ts';
import { DEFAULT_LIGHT } from '../../src/plan/newPlan.ts';
import type { OrderName, Plan, PlanSet, RestRule } from '../../src/plan/plan.ts';
import { isRefusal, must, type Refusal } from '../../src/science/refusal.ts';
import { duration, type Seconds, stops } from '../../src/science/units.ts';

/*
 * An evening for tests of the run: the practice gear, a plan of a few sets, a
 * clock that moves only by hand, and taps that go through the same functions as
 * on the phone, without a screen or a disk.
 */

export const gear = PRACTICE_GEAR;
export const A = (gear.rigs[0] as { id: RigId }).id;
export const B = (gear.rigs[1] as { id: RigId }).id;

export const dialled = (fMark: string, mark: string, isoMark: string): Settings => ({
  fMark,
  time: { kind: 'dial', mark },
  isoMark,
});
export const held = (fMark: string, s: number, isoMark: string): Settings => ({
  fMark,
  time: { kind: 'bulb', seconds: duration(s) },
  isoMark,
});

export function frame(
  set: string,
  rig: RigId,
  settings: Settings,
  place: { pass?: number; repeat?: number; visit?: number } = {},
): PlannedFrame {
  const { pass = 1, repeat = 1, visit = 1 } = place;
  const parts = assemble(gear, rig);
  if (!parts) throw new Error(`no rig ${rig}`);
  return {
    key: `${set}/${rig}/${pass}/${repeat}` as FrameKey,
    set: set as SetId,
    rig,
    pass,
    repeat,
    visit,
    settings,
    exact: must(exactSettings(parts, settings)),
  };
}

export function planOf(
  frames: readonly PlannedFrame[],
  options: { order?: OrderName; rest?: Partial<RestRule> } = {},
): Plan {
  const sets = [...new Set(frames.map(({ set }) => set))];
  return {
    id: 'plan' as PlanId,
    name: 'Evening for tests',
    note: '',
    rigs: [...new Set(frames.map(({ rig }) => rig))],
    sets: sets.map((id): PlanSet => {
      const first = frames.find((candidate) => candidate.set === id) as PlannedFrame;
      return {
        id,
        intent: `Set ${id}`,
        kind: 'light',
        reference: first.rig,
        settings: first.settings,
        targetOffset: stops(0),
        framing: 'diagonal',
        hold: { kind: 'same-exposure' },
        passes: 1,
        repeats: 1,
        restBeforeS: null,
      };
    }),
    order: options.order ?? 'forward',
    oneRigAtATime: false,
    arranged: null,
    locked: [],
    swapWorth: stops(0.02),
    allowances: {
      swapS: duration(60),
      reframeS: duration(30),
      dialChangeS: duration(15),
      settleS: duration(5),
      writeS: duration(2),
    },
    rest: options.rest
      ? {
          kind: 'thumb',
          rule: { factor: 1, offUpToS: duration(64), longestS: duration(600), ...options.rest },
        }
      : { kind: 'none' },
    nearestSubjectMm: null,
    axesApartMm: null,
    evening: null,
    light: DEFAULT_LIGHT,
    invented: true,
  };
}

/** The two rigs of the practice outing through two sets: a minute at base ISO, then a short one. */
export const twoSets = (): readonly PlannedFrame[] => [
  frame('base', A, dialled('6.3', '64', '100')),
  frame('base', B, dialled('8', '60', '100'), { visit: 2 }),
  frame('high', B, dialled('8', '0.5', '12800'), { visit: 2 }),
  frame('high', A, dialled('8', '0.5', '12800'), { visit: 3 }),
];

const START_MS = Date.UTC(2027, 1, 12, 17, 30);

export class Evening {
  events: readonly OutingEvent[] = [];
  private ids = 0;
  private sessions = 1;
  private wallMs = START_MS;
  private monoMs = 1000;
  readonly outing = 'outing-1' as OutingId;
  readonly writer: WriterId;

  constructor(
    frames: readonly PlannedFrame[],
    plan: Plan = planOf(frames),
    writer = 'phone',
    sky: SkyTable | null = null,
  ) {
    this.writer = writer as WriterId;
    const site = sky && PRACTICE_SITE;
    const data = { plan, gear, frames, site, sky };
    this.write([{ id: this.newId(), kind: 'outing-started', data }]);
    this.pass(1);
  }

  now(): Instant {
    const { wallMs, monoMs } = this;
    return {
      wallMs,
      offsetMin: 0,
      zone: 'Etc/UTC',
      monoMs,
      session: `session-${this.sessions}` as SessionId,
    };
  }

  /** Time goes by on both clocks. */
  pass(s: number): this {
    this.wallMs += s * 1000;
    this.monoMs += s * 1000;
    return this;
  }

  /** Only the wall clock moves: the phone slept, or somebody set the clock. */
  jump(s: number): this {
    this.wallMs += s * 1000;
    return this;
  }

  /** The page is gone and comes back after `s` seconds: a new session, a new steady clock. */
  reload(s = 0): this {
    this.wallMs += s * 1000;
    this.monoMs = 500;
    this.sessions += 1;
    return this;
  }

  try(tap: Tap): readonly Draft[] | Refusal {
    return next(this.state(), tap, { now: this.now(), newId: () => this.newId() });
  }

  /** A tap that must be served; the clock moves on a little afterwards. */
  tap(tap: Tap): this {
    this.write(must(this.try(tap)));
    return this.pass(1);
  }

  undo(): this {
    const drafts = lastTap(inOrder(this.events)).map(
      ({ id }): Draft => ({ id: this.newId(), kind: 'undone', data: { target: id } }),
    );
    this.write(drafts);
    return this.pass(1);
  }

  state(): RunState {
    const state = fold(inOrder(this.events));
    if (!state) throw new Error('the outing has not started');
    return state;
  }

  step(): Step {
    return stepAt(this.state(), this.now());
  }

  /** The first frame that is open. */
  openId(): EventId {
    const [id] = this.state().open;
    if (!id) throw new Error('no frame is open');
    return id;
  }

  /** Ticks everything for every rig and begins. */
  setUp(): this {
    for (const rig of this.state().plan.rigs) this.fixFocus(rig);
    return this.tap({ tap: 'begin-frames' });
  }

  fixFocus(rig: RigId): this {
    return this.tap({ tap: 'tick', rig, item: 'focus-fixed', done: true });
  }

  /** Taps what has to be tapped until an exposure can start. */
  untilExpose(): this {
    for (let guard = 0; guard < 20; guard += 1) {
      const step = this.step();
      if (step.kind === 'mount') this.pass(60).tap({ tap: 'mounted', frame: step.next.key });
      else if (step.kind === 'dial') this.pass(10).tap({ tap: 'dialled', frame: step.frame.key });
      else if (step.kind === 'focus') this.fixFocus(step.rig);
      else if (step.kind === 'rest') this.pass(step.resting.leftS);
      else if (step.kind === 'busy') this.pass(step.leftS);
      else return this;
    }
    throw new Error('no exposure in sight');
  }

  /** The frame that the next tap is about. */
  nextKey(): FrameKey {
    const key = this.state().queue[0]?.key;
    if (!key) throw new Error('no frame is waiting');
    return key;
  }

  start(): this {
    return this.tap({ tap: 'start', frame: this.nextKey() });
  }

  /** Makes the next frame as planned. */
  shoot(): this {
    this.untilExpose();
    const step = this.step();
    if (step.kind !== 'expose') throw new Error(`expected to expose, but ${step.kind}`);
    const [first] = step.frames;
    if (!first) throw new Error('nothing to expose');
    if (step.short) return this.tap({ tap: 'taken', frame: first.key });
    this.start();
    for (const id of this.state().open) {
      const made = this.state().made.find((candidate) => candidate.id === id);
      if (!made) throw new Error('an open frame is not among the made');
      const bulb = made.planned.settings.time.kind === 'bulb';
      const untilEnd = made.leadInS + made.planned.exact.t - this.sinceStart(made.startedAt);
      if (untilEnd > 0) this.pass(untilEnd);
      this.tap(bulb ? { tap: 'closed', made: id } : { tap: 'record', made: id });
    }
    return this;
  }

  shootAll(): this {
    while (this.state().queue.length > 0) this.shoot();
    return this;
  }

  private sinceStart(at: Instant): number {
    return (this.wallMs - at.wallMs) / 1000;
  }

  private write(drafts: readonly Draft[]): void {
    const seq = nextSeq(this.events, this.writer);
    const place = { outing: this.outing, writer: this.writer, seq };
    this.events = [...this.events, ...seal(drafts, this.now(), place)];
  }

  private newId(): EventId {
    this.ids += 1;
    return `${this.writer}-${String(this.ids).padStart(5, '0')}` as EventId;
  }
}

export const refusedFor = (answer: readonly Draft[] | Refusal): string | null =>
  isRefusal(answer) ? answer.rule : null;

export const s = (value: number): Seconds => duration(value);
