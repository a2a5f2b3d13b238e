import { exactSettings } from '../gear/positions.ts';
import type { Assembled } from '../gear/rig.ts';
import type { Exact, Settings } from '../gear/settings.ts';
import { isRefusal } from '../science/refusal.ts';
import { duration, type Seconds } from '../science/units.ts';
import type { CorrectionValue } from './events.ts';
import { openedAt } from './exposure.ts';
import type { MadeId } from './ids.ts';
import type { Correction, MadeFrame } from './state.ts';
import { elapsedBetween } from './timing.ts';

/** How far a time taken by hand may be off: reaction at both ends (common practice, no source). */
export const HAND_TIMING_S = duration(0.3);

/** How long the shutter was open, and how that is known. */
export type OpenTime =
  /** The body timed it: the exact value behind its mark. */
  | { readonly from: 'dial'; readonly s: Seconds }
  /** From tap to tap, within `HAND_TIMING_S`; `wall` = only the wall clock bridged it. */
  | { readonly from: 'hand'; readonly s: Seconds; readonly certainty: 'steady' | 'wall' }
  | { readonly from: 'correction'; readonly s: Seconds }
  | { readonly from: 'unknown' };

/** A made frame as every correction leaves it. */
export interface ReallyMade {
  /** What was really set; null while not recorded. */
  readonly settings: Settings | null;
  /** The values behind the marks; null while not recorded, or where the dials do not have them. */
  readonly marks: Exact | null;
  readonly openTime: OpenTime;
}

/** What was really set on a made frame, and how long its shutter was open. */
export function reallyMade(
  made: MadeFrame,
  changes: readonly Correction[],
  parts: Assembled | null,
): ReallyMade {
  const settings = made.settings && corrected(made.settings, changes);
  const exact = settings && parts && exactSettings(parts, settings);
  const marks = exact && !isRefusal(exact) ? exact : null;
  return { settings, marks, openTime: openTimeOf(made, changes, marks) };
}

function corrected(settings: Settings, changes: readonly Correction[]): Settings {
  if (changes.length === 0) return settings;
  return {
    fMark: lastOf(changes, 'fMark', settings.fMark),
    isoMark: lastOf(changes, 'isoMark', settings.isoMark),
    time: lastOf(changes, 'time', settings.time),
  };
}

function openTimeOf(
  made: MadeFrame,
  changes: readonly Correction[],
  marks: Exact | null,
): OpenTime {
  const said = changes.findLast(
    ({ change }) => change.field === 'elapsedS' || change.field === 'time',
  );
  if (said?.change.field === 'elapsedS') return { from: 'correction', s: said.change.value };
  if (said) return marks ? { from: 'correction', s: marks.t } : { from: 'unknown' };
  if (made.closedAt) {
    const open = elapsedBetween(openedAt(made), made.closedAt);
    return open.certainty === 'unknown' ? { from: 'unknown' } : { from: 'hand', ...open };
  }
  return marks ? { from: 'dial', s: marks.t } : { from: 'unknown' };
}

type Field = CorrectionValue['field'];
type ValueOf<F extends Field> = Extract<CorrectionValue, { field: F }>['value'];

/** The last correction of a field, else what was first logged. */
export function lastOf<F extends Field>(
  changes: readonly Correction[],
  field: F,
  first: ValueOf<F>,
): ValueOf<F> {
  const last = changes.findLast(({ change }) => change.field === field);
  return last ? (last.change.value as ValueOf<F>) : first;
}

/** What was said of frames, by the frame. */
export function byFrame<T extends { readonly made: MadeId | null }>(
  remarks: readonly T[],
): ReadonlyMap<MadeId, readonly T[]> {
  const groups = new Map<MadeId, T[]>();
  for (const remark of remarks) {
    if (remark.made === null) continue;
    const group = groups.get(remark.made);
    if (group) group.push(remark);
    else groups.set(remark.made, [remark]);
  }
  return groups;
}
