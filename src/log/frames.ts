import { fileName } from '../gear/files.ts';
import type { RigId } from '../gear/ids.ts';
import type { Letter } from '../gear/letter.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import { type Exact, type Settings, sameSettings } from '../gear/settings.ts';
import type { Verdict } from '../outing/events.ts';
import { endedAt, openedAt } from '../outing/exposure.ts';
import type { MadeId } from '../outing/ids.ts';
import type { Instant } from '../outing/instant.ts';
import { byFrame, lastOf, type OpenTime, reallyMade } from '../outing/openTime.ts';
import type { Correction, MadeFrame, RunState } from '../outing/state.ts';
import { elapsedBetween } from '../outing/timing.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import type { FrameKey } from '../plan/ids.ts';
import type { PlanSet } from '../plan/plan.ts';
import type { Seconds } from '../science/units.ts';

/** One frame of the log: what was planned, what was really made, and what was said of it since. */
export interface LogFrame {
  readonly id: MadeId;
  readonly planned: PlannedFrame;
  readonly set: PlanSet | null;
  readonly rig: RigId;
  readonly letter: Letter | null;
  readonly attempt: number;
  /** What was really set, with every correction; null while not recorded. */
  readonly settings: Settings | null;
  /** What was logged first, where a correction has changed it since. */
  readonly firstSettings: Settings | null;
  /** The values behind the settings, with the time the shutter was really open. */
  readonly exact: Exact | null;
  readonly openTime: OpenTime;
  readonly asPlanned: boolean;
  readonly opened: Instant;
  readonly closed: Instant | null;
  readonly leadInS: Seconds;
  readonly fileNumber: number | null;
  readonly fileName: string | null;
  /** How long the rig's sensor had been idle before this frame; null = it had not worked, or unknown. */
  readonly restedS: Seconds | null;
  readonly verdict: Verdict | null;
  readonly notes: readonly string[];
  readonly discarded: boolean;
  /** Whether it is the one of its planned frame that counts. */
  readonly counts: boolean;
  readonly lateS: Seconds | null;
  readonly corrections: readonly Correction[];
}

/** The log's frames in the order in which they were made. */
export function framesOf(state: RunState): readonly LogFrame[] {
  const corrections = byFrame(state.corrections);
  const notes = byFrame(state.notes);
  const sets = new Map(state.plan.sets.map((set) => [set.id, set]));
  const parts = new Map(state.plan.rigs.map((rig) => [rig, assemble(state.gear, rig)]));
  const lastEnd = new Map<RigId, Instant>();
  const rows = state.made.map((made) => {
    const { rig } = made.planned;
    const changes = corrections.get(made.id) ?? [];
    const row = rowOf(made, changes, parts.get(rig) ?? null);
    const before = lastEnd.get(rig);
    const rested = before ? elapsedBetween(before, row.opened) : null;
    if (row.closed) lastEnd.set(rig, row.closed);
    return {
      ...row,
      set: sets.get(made.planned.set) ?? null,
      restedS: rested && rested.certainty !== 'unknown' ? rested.s : null,
      notes: [
        ...(notes.get(made.id) ?? []).map(({ text }) => text),
        ...changes.flatMap(({ change }) => (change.field === 'note' ? [change.value] : [])),
      ],
    };
  });
  return withCounting(rows, state.corrections);
}

function rowOf(
  made: MadeFrame,
  changes: readonly Correction[],
  parts: Assembled | null,
): Omit<LogFrame, 'counts' | 'set' | 'restedS' | 'notes'> {
  const { settings, marks, openTime } = reallyMade(made, changes, parts);
  const fileNumber = lastOf(changes, 'fileNumber', made.fileNumber);
  return {
    id: made.id,
    planned: made.planned,
    rig: made.planned.rig,
    letter: parts?.rig.letter ?? null,
    attempt: made.attempt,
    settings,
    firstSettings:
      made.settings && settings && !sameWhole(made.settings, settings) ? made.settings : null,
    exact: marks && openTime.from !== 'unknown' ? { ...marks, t: openTime.s } : null,
    openTime,
    asPlanned: settings === null || sameSettings(settings, made.planned.settings),
    opened: openedAt(made),
    closed: endedAt(made, marks?.t),
    leadInS: made.leadInS,
    fileNumber,
    fileName: fileNumber === null || !parts ? null : fileName(parts.body.files, fileNumber),
    verdict: lastOf(changes, 'verdict', made.verdict),
    discarded: made.discarded,
    lateS: made.lateS,
    corrections: changes,
  };
}

/**
 * Of the tries of a planned frame one counts: the one that a correction named last, else the newest
 * that was not discarded; never one that a correction has ruled out.
 */
function withCounting(
  rows: readonly Omit<LogFrame, 'counts'>[],
  corrections: readonly Correction[],
): readonly LogFrame[] {
  const chosen = new Map<FrameKey, MadeId>();
  const keys = new Map(rows.map(({ id, planned }) => [id, planned.key]));
  for (const { planned, discarded, settings, id } of rows) {
    if (!discarded && settings) chosen.set(planned.key, id);
  }
  for (const { made, change } of corrections) {
    const key = keys.get(made);
    if (key && change.field === 'counts' && change.value) chosen.set(key, made);
  }
  return rows.map((row) => ({
    ...row,
    counts: chosen.get(row.planned.key) === row.id && lastOf(row.corrections, 'counts', true),
  }));
}

const sameWhole = (a: Settings, b: Settings): boolean =>
  sameSettings(a, b) &&
  (a.time.kind !== 'bulb' || b.time.kind !== 'bulb' || a.time.seconds === b.time.seconds);
