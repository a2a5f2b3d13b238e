import type { RigId } from '../../src/gear/ids.ts';
import { PRACTICE_GEAR } from '../../src/gear/practice.ts';
import { type Settings, sameSettings } from '../../src/gear/settings.ts';
import type { Draft, EventData, EventKind, OutingEvent } from '../../src/outing/events.ts';
import type { EventId, OutingId, SessionId, WriterId } from '../../src/outing/ids.ts';
import type { Instant } from '../../src/outing/instant.ts';
import { seal } from '../../src/outing/seal.ts';
import type { PlannedFrame } from '../../src/plan/frame.ts';
import type { PlanId, SetId } from '../../src/plan/ids.ts';
import { newPlan, newSet } from '../../src/plan/newPlan.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { preparePlan } from '../../src/plan/prepare.ts';
import { duration } from '../../src/science/units.ts';

/** How long an evening is. */
interface Length {
  /** Planned frames of each set and rig, 64 at most. */
  readonly repeats: number;
  /** Sets of the plan. */
  readonly sets: number;
  readonly rigs: 1 | 2;
  /** The mark of the time that every frame is set to. */
  readonly time: string;
  /** Of them, those of which no frame is made yet. */
  readonly setsLeft: number;
  /** How often each frame of the other sets was taken. */
  readonly tries: number;
  /** Named so in the list of outings. */
  readonly name: string;
  readonly ended: boolean;
}

/**
 * The journal of an evening that may be very long, event by event as taps would have written it, in
 * a time that grows with its length alone. `Evening` asks the state before each tap.
 */
export function longEvening(length: Length): readonly OutingEvent[] {
  const plan = planOf(length);
  const { frames } = preparePlan(plan, PRACTICE_GEAR);
  const left = new Set(plan.sets.slice(plan.sets.length - length.setsLeft).map(({ id }) => id));
  const writing = new Writing(plan.id);
  writing.tap(['outing-started', { plan, gear: PRACTICE_GEAR, frames, site: null, sky: null }]);
  for (const rig of plan.rigs) {
    writing.tap(['setup-ticked', { rig, item: 'focus-fixed', done: true }]);
    writing.tap(['counter-set', { rig, next: 1 }]);
  }
  writing.tap(['setup-finished', {}]);
  for (let attempt = 1; attempt <= length.tries; attempt += 1) {
    for (const frame of frames) if (!left.has(frame.set)) writing.make(frame, attempt);
  }
  if (length.ended) writing.tap(['ended', {}]);
  return writing.events;
}

function planOf({ name, repeats, sets, rigs, time }: Length): Plan {
  const ids = PRACTICE_GEAR.rigs.slice(0, rigs).map(({ id }) => id);
  const [reference] = ids;
  if (reference === undefined) throw new Error('the practice gear has no rig');
  return {
    ...newPlan(`plan-${name.toLowerCase().replaceAll(' ', '-')}` as PlanId, name, ids),
    order: 'forward',
    sets: Array.from({ length: sets }, (_, place) => ({
      ...newSet(`set-${place + 1}` as SetId, reference, {
        fMark: '8',
        time: { kind: 'dial', mark: time },
        isoMark: ['100', '200', '400', '800'][place % 4] ?? '100',
      }),
      intent: `Long set ${place + 1}`,
      passes: 1,
      repeats,
    })),
    invented: true,
  };
}

type Entry = { readonly [K in EventKind]: readonly [K, EventData[K]] }[EventKind];

class Writing {
  readonly events: OutingEvent[] = [];
  readonly #id: string;
  readonly #dialled = new Map<RigId, Settings>();
  readonly #nextFile = new Map<RigId, number>();
  #mounted: RigId | null = null;
  #passedMs = 0;

  constructor(id: string) {
    this.#id = id;
  }

  /** One tap and a second of rest after it. */
  tap(...entries: readonly Entry[]): readonly Draft[] {
    const drafts = entries.map(
      ([kind, data], index) =>
        ({ id: `${this.#id}-${this.events.length + index + 1}` as EventId, kind, data }) as Draft,
    );
    const place = {
      outing: this.#id as OutingId,
      writer: 'another-phone' as WriterId,
      seq: this.events.length + 1,
    };
    this.events.push(...seal(drafts, this.#now(), place));
    this.#passedMs += 1000;
    return drafts;
  }

  /** A planned frame, made as planned; a first try that is wanted again is judged so. */
  make(frame: PlannedFrame, attempt: number): void {
    const { rig, settings, key, exact } = frame;
    if (attempt > 1) this.tap(['retake-asked', { frame: key }]);
    if (this.#mounted !== rig) this.tap(['mounted', { rigs: [rig] }]);
    this.#mounted = rig;
    const before = this.#dialled.get(rig);
    if (!before || !sameSettings(before, settings)) this.tap(['dialled', { rig, settings }]);
    this.#dialled.set(rig, settings);
    const fileNumber = this.#nextFile.get(rig) ?? 1;
    this.#nextFile.set(rig, fileNumber + 1);
    const [started] = this.tap(['exposure-started', { frame: key, rig, leadInS: duration(0) }]);
    if (started === undefined) throw new Error('the tap wrote nothing');
    this.#passedMs += exact.t * 1000;
    this.tap(['recorded', { made: started.id, settings, fileNumber }]);
    this.tap(['judged', { made: started.id, verdict: 'good' }]);
  }

  #now(): Instant {
    return {
      wallMs: Date.UTC(2027, 1, 12, 17) + this.#passedMs,
      offsetMin: 0,
      zone: 'Etc/UTC',
      monoMs: 1000 + this.#passedMs,
      session: 'one-session' as SessionId,
    };
  }
}
