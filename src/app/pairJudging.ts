import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Offset, Rig } from '../gear/rig.ts';
import { judge, leftOversOf, type PairJudgement } from '../log/pair/judgement.ts';
import { MEASURES, type Measure } from '../log/pair/measures.ts';
import {
  type Agreement,
  agreementOf,
  type ProposedOffsets,
  proposedOffsets,
} from '../log/pair/proposedOffset.ts';
import { type Limits, USUAL_LIMITS } from '../log/pair/uses.ts';
import type { EvenedUp } from '../outing/cameraFile.ts';
import { madeOnce } from './desks.ts';
import type { Served } from './journal.ts';
import type { LogDesk, OutingLog } from './log.ts';
import { figuresOf } from './logFigures.ts';
import type { SafetyWorld } from './safetyCopy.ts';

const KEY = 'pair-limits';

/** The limits by which pairs are judged on this device. */
export interface LimitDesk {
  readonly limits: ReadonlySignal<Limits>;
  /** Null = not looked at. */
  change(measure: Measure, limit: number | null): void;
  /** Back to the stated ones. */
  restore(): void;
}

/** What is kept may come from another version: each limit is taken by itself, or left. */
function readLimits(kept: unknown): Limits {
  const found = Object(kept) as Readonly<Record<string, unknown>>;
  const limits = MEASURES.map((measure) => {
    const limit = found[measure];
    const taken =
      limit === null || (typeof limit === 'number' && Number.isFinite(limit) && limit >= 0);
    return [measure, taken ? limit : USUAL_LIMITS[measure]];
  });
  return Object.fromEntries(limits) as Limits;
}

export const limitDesk = madeOnce(
  ({ store, saving }: Pick<SafetyWorld, 'store' | 'saving'>): LimitDesk => {
    const limits = signal<Limits>(USUAL_LIMITS);
    let changed = false;
    store.setting(KEY).then(
      (kept) => {
        if (!changed) limits.value = readLimits(kept);
      },
      // Judged by the stated limits; a change is then kept or refused by its own write.
      () => undefined,
    );
    const set = (next: Limits): void => {
      changed = true;
      limits.value = next;
      saving.save(() => store.putSetting(KEY, next));
    };
    return {
      limits,
      change: (measure, limit) => set({ ...limits.peek(), [measure]: limit }),
      restore: () => set(USUAL_LIMITS),
    };
  },
);

/** The pairs of an outing, judged; anew when its journal or the limits move on. */
export const judgedPairs = (
  log: OutingLog,
  { limits }: Pick<LimitDesk, 'limits'>,
): ReadonlySignal<readonly PairJudgement[]> =>
  computed(() =>
    figuresOf(log).ledgers.value.map((ledger) =>
      judge(log.journal.state.value, ledger, log.frames.value, limits.value),
    ),
  );

/** What the leftovers of one pair of rigs say over all sets. */
export const agreementOver = (
  pairs: readonly PairJudgement[],
  { ledger }: PairJudgement,
  log: OutingLog,
): Agreement =>
  agreementOf(
    leftOversOf(
      pairs.filter(
        (pair) => pair.ledger.reference === ledger.reference && pair.ledger.other === ledger.other,
      ),
      log.frames.value,
    ),
  );

/** The offsets that agreeing leftovers propose; null if a rig is not among the outing's gear. */
export function offsetsFrom(
  { ledger }: PairJudgement,
  agreement: Extract<Agreement, { says: 'offset' }>,
  log: OutingLog,
  how: string,
): ProposedOffsets | null {
  const { gear, startedAt } = log.journal.state.value;
  const rig = (id: Rig['id']): Rig | undefined => gear.rigs.find((each) => each.id === id);
  const [reference, other] = [rig(ledger.reference), rig(ledger.other)];
  const on: Offset['date'] = new Date(startedAt.wallMs + startedAt.offsetMin * 60_000)
    .toISOString()
    .slice(0, 10);
  return reference && other ? proposedOffsets(reference, other, agreement, { on, how }) : null;
}

/** Says what a pair really needed; null takes it back. */
export const sayNeeded = (desk: Pick<LogDesk, 'tap'>, found: EvenedUp): Promise<Served> =>
  desk.tap({ tap: 'even-up', found });

/** Writes proposed offsets into this outing's copy of the gear; `Served` of the last. */
export async function takeOffsets(
  desk: Pick<LogDesk, 'tap'>,
  { reference, other }: ProposedOffsets,
): Promise<Served> {
  if (reference) {
    const served = await desk.tap({
      tap: 'correct-gear',
      change: { part: 'rig', value: reference },
    });
    if (served.how === 'refused') return served;
  }
  return desk.tap({ tap: 'correct-gear', change: { part: 'rig', value: other } });
}
