import { nextNumber } from '../gear/files.ts';
import type { RigId } from '../gear/ids.ts';
import type { Gear } from '../gear/rig.ts';
import { sameSettings } from '../gear/settings.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import type { FrameKey, SetId } from '../plan/ids.ts';
import type { BodyClock, CameraFile, EvenedUp } from './cameraFile.ts';
import type { EventOf, GearPart, OutingEvent } from './events.ts';
import type { MadeId } from './ids.ts';
import type { Instant } from './instant.ts';
import { standing } from './sequence.ts';
import type {
  ClockFrame,
  Correction,
  MadeFrame,
  Noted,
  Phase,
  Rematched,
  RigAct,
  RigRun,
  RunState,
  SkippedFrame,
  SkippedRest,
  TakenReading,
} from './state.ts';

/**
 * The state of an outing from its events, in their order (`inOrder`).
 *
 * Every prefix of a journal gives a legal state: an event that speaks of what
 * is not there (a cut journal, two phones merged) is passed over, never thrown
 * at. Null while there is no 'outing-started' yet.
 */
export function fold(events: readonly OutingEvent[]): RunState | null {
  const live = standing(events);
  const first = live.find((event) => event.kind === 'outing-started');
  if (first?.kind !== 'outing-started') return null;
  const run = new Run(first);
  for (const event of live) run.apply(event);
  return run.state();
}

const UNTOUCHED: RigRun = {
  ticked: new Set(),
  focusDoubt: 'not-fixed',
  dialled: null,
  nextFile: null,
  lastMade: null,
  restSkippedAfter: null,
};

/** Copies per event would make a long evening's fold quadratic, so it is built in place. */
class Run {
  private readonly first: EventOf<'outing-started'>;
  private gear: Gear;
  private phase: Phase = 'setting-up';
  /** Before a pause. */
  private paused: Phase = 'setting-up';
  private endedAt: Instant | null = null;
  private queue: PlannedFrame[];
  private readonly made = new Map<MadeId, MadeFrame>();
  private readonly attempts = new Map<FrameKey, number>();
  private readonly open = new Set<MadeId>();
  private mounted: readonly RigId[] = [];
  private readonly rigs = new Map<RigId, RigRun>();
  private readonly skipped: SkippedFrame[] = [];
  private readonly dropped: SetId[] = [];
  private readonly rematched: Rematched[] = [];
  private readonly restsSkipped: SkippedRest[] = [];
  private readonly readings: TakenReading[] = [];
  private readonly notes: Noted[] = [];
  private readonly corrections: Correction[] = [];
  private readonly clockFrames: ClockFrame[] = [];
  private readonly files = new Map<MadeId, CameraFile | null>();
  private readonly clocks = new Map<RigId, BodyClock>();
  private readonly evenedUp = new Map<string, EvenedUp>();
  private readonly batteries: { rig: RigId; at: Instant }[] = [];
  private readonly acts: RigAct[] = [];
  private readonly planned = new Map<FrameKey, PlannedFrame>();

  constructor(first: EventOf<'outing-started'>) {
    this.first = first;
    this.gear = first.data.gear;
    this.queue = [...first.data.frames];
    for (const frame of this.queue) this.planned.set(frame.key, frame);
    for (const rig of first.data.plan.rigs) this.rigs.set(rig, UNTOUCHED);
  }

  apply(event: OutingEvent): void {
    const at = instantOf(event);
    switch (event.kind) {
      case 'outing-started':
      case 'undone':
        return;
      case 'setup-ticked':
        this.tick(event, at);
        return;
      case 'setup-finished':
        if (this.phase === 'setting-up') this.phase = 'running';
        return;
      case 'counter-set':
        this.touch(event.data.rig, { nextFile: event.data.next });
        return;
      case 'mounted':
        for (const rig of event.data.rigs) {
          if (!this.mounted.includes(rig)) this.acts.push({ rig, at, what: 'framed' });
        }
        this.mounted = event.data.rigs;
        return;
      case 'dialled':
        this.touch(event.data.rig, { dialled: event.data.settings });
        this.acts.push({ rig: event.data.rig, at, what: 'dialled' });
        return;
      case 'exposure-started':
        this.startExposure(event, at);
        return;
      case 'exposure-closed':
        this.amend(event.data.made, (frame) =>
          frame.closedAt ? frame : { ...frame, closedAt: at },
        );
        return;
      case 'recorded':
        this.record(event, at);
        return;
      case 'extra-shot': {
        const { rig, count } = event.data;
        const settings = this.rigs.get(rig)?.dialled ?? null;
        this.acts.push({ rig, at, what: 'extra', count, settings });
        this.countFiles(rig, count);
        return;
      }
      case 'judged':
        this.amend(event.data.made, (frame) => ({ ...frame, verdict: event.data.verdict }));
        return;
      case 'retake-asked': {
        const again = this.planned.get(event.data.frame);
        if (again && !this.queue.some((frame) => frame.key === again.key))
          this.queue.unshift(again);
        return;
      }
      case 'frame-skipped':
        this.leave(event.data.frame, at, 'skipped');
        return;
      case 'replanned':
        this.replan(event, at);
        return;
      case 'noted':
        this.notes.push({ id: event.id, at, text: event.data.text, made: event.data.made });
        return;
      case 'reading-taken':
        this.readings.push({ id: event.id, at, ...event.data });
        return;
      case 'battery-changed':
        this.batteries.push({ rig: event.data.rig, at });
        this.acts.push({ rig: event.data.rig, at, what: 'battery-changed' });
        this.doubtFocus(event.data.rig, 'battery-changed');
        return;
      case 'lens-touched':
        this.touch(event.data.rig, { focusDoubt: 'lens-touched' });
        return;
      case 'powered-off':
        this.acts.push({ rig: event.data.rig, at, what: 'switched-off' });
        this.doubtFocus(event.data.rig, 'powered-off');
        return;
      case 'rest-skipped': {
        const last = this.rigs.get(event.data.rig)?.lastMade ?? null;
        this.touch(event.data.rig, { restSkippedAfter: last });
        this.restsSkipped.push({ ...event.data, at });
        return;
      }
      case 'cue-late':
        this.amend(event.data.made, (frame) => ({ ...frame, lateS: event.data.lateS }));
        return;
      case 'paused':
        if (this.phase === 'ended' || this.phase === 'paused') return;
        this.paused = this.phase;
        this.phase = 'paused';
        return;
      case 'resumed':
        if (this.phase === 'paused') this.phase = this.paused;
        return;
      case 'ended':
        this.phase = 'ended';
        this.endedAt = at;
        return;
      case 'discarded':
        this.amend(event.data.made, (frame) => ({ ...frame, discarded: true }));
        return;
      case 'corrected': {
        const { frame, ...change } = event.data;
        this.corrections.push({ id: event.id, at, made: frame, change });
        return;
      }
      case 'gear-corrected':
        this.gear = withPart(this.gear, event.data);
        return;
      case 'clock-framed':
        this.clockFrames.push({ id: event.id, rig: event.data.rig, at });
        return;
      case 'files-matched':
        for (const { made, file } of event.data.files) this.files.set(made, file);
        for (const clock of event.data.clocks) this.clocks.set(clock.rig, clock);
        return;
      case 'values-taken':
        for (const { frame, ...change } of event.data.changes) {
          this.corrections.push({ id: event.id, at, made: frame, change });
        }
        return;
      case 'evened-up':
        this.evenUp(event.data);
        return;
      default:
        event satisfies never;
    }
  }

  state(): RunState {
    return {
      outing: this.first.outing,
      startedAt: instantOf(this.first),
      endedAt: this.endedAt,
      phase: this.phase,
      plan: this.first.data.plan,
      gear: this.gear,
      site: this.first.data.site,
      sky: this.first.data.sky,
      queue: this.queue,
      made: [...this.made.values()],
      open: [...this.open],
      mounted: this.mounted,
      rigs: this.rigs,
      skipped: this.skipped,
      dropped: this.dropped,
      rematched: this.rematched,
      restsSkipped: this.restsSkipped,
      readings: this.readings,
      notes: this.notes,
      corrections: this.corrections,
      clockFrames: this.clockFrames,
      files: this.files,
      clocks: this.clocks,
      evenedUp: [...this.evenedUp.values()],
      batteries: this.batteries,
      acts: this.acts,
      planned: this.planned,
    };
  }

  private evenUp(found: EvenedUp): void {
    const key = JSON.stringify([found.set, found.rig, found.pass]);
    if (found.needed === null) this.evenedUp.delete(key);
    else this.evenedUp.set(key, found);
  }

  private touch(rig: RigId, change: Partial<RigRun>): void {
    const before = this.rigs.get(rig);
    if (before) this.rigs.set(rig, { ...before, ...change });
  }

  private amend(id: MadeId, change: (frame: MadeFrame) => MadeFrame): void {
    const frame = this.made.get(id);
    if (frame) this.made.set(id, change(frame));
  }

  private tick({ data: { rig, item, done } }: EventOf<'setup-ticked'>, at: Instant): void {
    const before = this.rigs.get(rig);
    if (!before) return;
    this.acts.push({ rig, at, what: item === 'focus-fixed' && done ? 'focused' : 'ticked' });
    const ticked = new Set(before.ticked);
    if (done) ticked.add(item);
    else ticked.delete(item);
    const focus =
      item === 'focus-fixed' ? { focusDoubt: done ? null : ('not-fixed' as const) } : {};
    this.rigs.set(rig, { ...before, ticked, ...focus });
  }

  /** Only a lens that forgets its focus without power has to be looked at again. */
  private doubtFocus(rig: RigId, why: 'battery-changed' | 'powered-off'): void {
    const lensId = this.gear.rigs.find((candidate) => candidate.id === rig)?.lensId;
    const lens = this.gear.lenses.find((candidate) => candidate.id === lensId);
    if (!lens?.focusSurvivesPowerOff) this.touch(rig, { focusDoubt: why });
  }

  private startExposure(event: EventOf<'exposure-started'>, at: Instant): void {
    const { frame: key, rig, leadInS } = event.data;
    const place = this.queue.findIndex((frame) => frame.key === key);
    const planned = this.queue[place] ?? this.planned.get(key);
    if (!planned) return;
    if (place >= 0) this.queue.splice(place, 1);
    const attempt = (this.attempts.get(key) ?? 0) + 1;
    this.attempts.set(key, attempt);
    this.made.set(event.id, {
      id: event.id,
      planned,
      attempt,
      leadInS,
      startedAt: at,
      closedAt: null,
      recordedAt: null,
      settings: null,
      fileNumber: null,
      verdict: null,
      discarded: false,
      lateS: null,
    });
    this.open.add(event.id);
    this.acts.push({ rig, at, what: 'exposed', made: event.id });
    this.touch(rig, { lastMade: event.id });
  }

  private record({ data }: EventOf<'recorded'>, at: Instant): void {
    const frame = this.made.get(data.made);
    if (!frame || frame.recordedAt) return;
    const { settings, fileNumber } = data;
    this.made.set(data.made, { ...frame, recordedAt: at, settings, fileNumber });
    this.open.delete(data.made);
    const { rig } = frame.planned;
    if (settings.time.kind === 'dial') this.touch(rig, { dialled: settings });
    if (fileNumber !== null) this.touch(rig, { nextFile: fileNumber });
    this.countFiles(rig, 1);
  }

  private countFiles(rig: RigId, frames: number): void {
    const bodyId = this.gear.rigs.find((candidate) => candidate.id === rig)?.bodyId;
    const body = this.gear.bodies.find((candidate) => candidate.id === bodyId);
    const next = this.rigs.get(rig)?.nextFile;
    if (!body || next === null || next === undefined) return;
    this.touch(rig, { nextFile: nextNumber(body.files, next, frames) });
  }

  private leave(key: FrameKey, at: Instant, why: SkippedFrame['why']): void {
    const place = this.queue.findIndex((frame) => frame.key === key);
    const [frame] = place >= 0 ? this.queue.splice(place, 1) : [];
    if (frame) this.skipped.push({ frame, at, why });
  }

  private replan({ data: { remaining, reason } }: EventOf<'replanned'>, at: Instant): void {
    const waiting = new Map(this.queue.map((frame) => [frame.key, frame]));
    const kept = remaining.filter((frame) => waiting.has(frame.key));
    const keptKeys = new Set(kept.map((frame) => frame.key));
    for (const frame of this.queue.filter((candidate) => !keptKeys.has(candidate.key))) {
      this.skipped.push({ frame, at, why: 'set-dropped' });
      if (!this.dropped.includes(frame.set)) this.dropped.push(frame.set);
    }
    if (reason === 'set-rematched') {
      const changed = kept.filter((frame) => {
        const before = waiting.get(frame.key);
        return before && !sameSettings(before.settings, frame.settings);
      });
      const rigs = [...new Set(changed.map(({ rig }) => rig))];
      const frames = rigs.flatMap((rig) => changed.find((frame) => frame.rig === rig) ?? []);
      if (frames[0]) this.rematched.push({ set: frames[0].set, at, frames });
    }
    this.queue = kept;
    for (const frame of kept) this.planned.set(frame.key, frame);
  }
}

const instantOf = ({ wallMs, offsetMin, zone, monoMs, session }: OutingEvent): Instant => ({
  wallMs,
  offsetMin,
  zone,
  monoMs,
  session,
});

function withPart(gear: Gear, change: GearPart): Gear {
  const put = <T extends { readonly id: string }>(list: readonly T[], value: T): readonly T[] =>
    list.map((item) => (item.id === value.id ? value : item));
  switch (change.part) {
    case 'body':
      return { ...gear, bodies: put(gear.bodies, change.value) };
    case 'lens':
      return { ...gear, lenses: put(gear.lenses, change.value) };
    case 'rig':
      return { ...gear, rigs: put(gear.rigs, change.value) };
    default:
      return change satisfies never;
  }
}
