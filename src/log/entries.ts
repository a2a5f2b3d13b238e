import type { RigId } from '../gear/ids.ts';
import type { Instant } from '../outing/instant.ts';
import type {
  Noted,
  Rematched,
  RunState,
  SkippedFrame,
  SkippedRest,
  TakenReading,
} from '../outing/state.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import type { SetId } from '../plan/ids.ts';
import type { LogFrame } from './frames.ts';

/** One line of an outing's log. */
export type LogEntry = { readonly at: Instant } & (
  | { readonly kind: 'frame'; readonly frame: LogFrame }
  /** Frames that were left out by one act. */
  | {
      readonly kind: 'left-out';
      readonly why: SkippedFrame['why'];
      readonly frames: readonly PlannedFrame[];
    }
  | { readonly kind: 'reading'; readonly reading: TakenReading }
  /** A note on no one frame; that of a frame stands with it. */
  | { readonly kind: 'note'; readonly note: Noted }
  /** A set followed the light. */
  | { readonly kind: 'rematched'; readonly rematched: Rematched }
  | { readonly kind: 'rest-skipped'; readonly rest: SkippedRest }
  | { readonly kind: 'battery-changed' | 'switched-off'; readonly rig: RigId }
);

/**
 * Everything that the log tells of an outing, in the order in which it happened. A clock that was
 * set moves lines of different kinds against each other, never two frames or two notes.
 *
 * @param frames the outing's frames, from `framesOf`.
 */
export function entriesOf(state: RunState, frames: readonly LogFrame[]): readonly LogEntry[] {
  return merged([
    frames.map((frame): LogEntry => ({ kind: 'frame', at: frame.opened, frame })),
    leftOut(state.skipped),
    state.readings.map((reading): LogEntry => ({ kind: 'reading', at: reading.at, reading })),
    state.notes.flatMap((note): LogEntry[] =>
      note.made === null ? [{ kind: 'note', at: note.at, note }] : [],
    ),
    state.rematched.map(
      (rematched): LogEntry => ({ kind: 'rematched', at: rematched.at, rematched }),
    ),
    state.restsSkipped.map((rest): LogEntry => ({ kind: 'rest-skipped', at: rest.at, rest })),
    state.batteries.map(({ rig, at }): LogEntry => ({ kind: 'battery-changed', at, rig })),
    state.acts.flatMap(({ what, rig, at }): LogEntry[] =>
      what === 'switched-off' ? [{ kind: what, at, rig }] : [],
    ),
  ]);
}

/** One line for what one tap left out: it carries one instant. */
function leftOut(skipped: readonly SkippedFrame[]): readonly LogEntry[] {
  const lines: {
    kind: 'left-out';
    at: Instant;
    why: SkippedFrame['why'];
    frames: PlannedFrame[];
  }[] = [];
  for (const { frame, at, why } of skipped) {
    const last = lines.at(-1);
    if (last && sameMoment(last.at, at) && last.why === why) last.frames.push(frame);
    else lines.push({ kind: 'left-out', at, why, frames: [frame] });
  }
  return lines;
}

const sameMoment = (a: Instant, b: Instant): boolean =>
  a.wallMs === b.wallMs && a.monoMs === b.monoMs && a.session === b.session;

/** Lists that keep their own order, merged by wall time. */
function merged(lanes: readonly (readonly LogEntry[])[]): readonly LogEntry[] {
  const heads = lanes.map(() => 0);
  const out: LogEntry[] = [];
  for (;;) {
    let next = -1;
    let first: LogEntry | undefined;
    for (const [lane, entries] of lanes.entries()) {
      const head = entries[heads[lane] ?? 0];
      if (head && (!first || head.at.wallMs < first.at.wallMs)) {
        next = lane;
        first = head;
      }
    }
    if (!first) return out;
    heads[next] = (heads[next] ?? 0) + 1;
    out.push(first);
  }
}

/** Which lines are wanted; null and 'all' leave nothing out. */
export interface Wanted {
  readonly rig: RigId | null;
  readonly set: SetId | null;
  readonly only: 'all' | 'changed' | 'not-counting';
}

export const EVERYTHING: Wanted = { rig: null, set: null, only: 'all' };

/** Whether a line is wanted. What belongs to no rig and no set is shown only among everything. */
export function isWanted(entry: LogEntry, { rig, set, only }: Wanted): boolean {
  const fits = (planned: PlannedFrame): boolean =>
    (rig === null || planned.rig === rig) && (set === null || planned.set === set);
  switch (entry.kind) {
    case 'frame': {
      const { planned, asPlanned, counts } = entry.frame;
      const wanted = { all: true, changed: !asPlanned, 'not-counting': !counts }[only];
      return wanted && fits(planned);
    }
    case 'left-out':
      return only === 'all' && entry.frames.some(fits);
    case 'rematched':
      return only === 'all' && entry.rematched.frames.some(fits);
    case 'rest-skipped':
      return only === 'all' && set === null && (rig === null || entry.rest.rig === rig);
    case 'battery-changed':
    case 'switched-off':
      return only === 'all' && set === null && (rig === null || entry.rig === rig);
    case 'reading':
    case 'note':
      return only === 'all' && set === null && rig === null;
  }
}
