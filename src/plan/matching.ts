import { positionsOf } from '../gear/positions.ts';
import type { Assembled } from '../gear/rig.ts';
import type { Exact } from '../gear/settings.ts';
import { isRefusal, type Refusal, refuse } from '../science/refusal.ts';
import {
  addStops,
  type FNumber,
  fNumber,
  type Iso,
  iso,
  type Seconds,
  type Stops,
  seconds,
} from '../science/units.ts';
import {
  type Candidate,
  fNumberCandidates,
  isoCandidates,
  nearest,
  rank,
  timeCandidates,
} from './candidates.ts';
import type { Side } from './causes.ts';
import type { Dialled } from './frame.ts';
import type { Hold } from './plan.ts';
import { type Target, targetOf } from './target.ts';

/** A wanted value beyond the end of a dial, the nearest that can be set, and what it costs. */
export type Unreached =
  | {
      readonly code: 'time-beyond-dial' | 'time-short-of-dial';
      readonly wanted: Seconds;
      readonly nearest: Seconds;
      readonly cost: Stops;
    }
  | {
      readonly code: 'aperture-wider-than-lens' | 'aperture-narrower-than-lens';
      readonly wanted: FNumber;
      readonly nearest: FNumber;
      readonly cost: Stops;
    }
  | {
      readonly code: 'iso-above-dial' | 'iso-below-dial';
      readonly wanted: Iso;
      readonly nearest: Iso;
      readonly cost: Stops;
    };

/** What to set on the other rig. */
export interface Match extends Dialled {
  /** What the hold asks for, before any dial. */
  readonly wanted: Exact;
  /** Set minus wanted, per quantity: positive renders brighter. */
  readonly deviation: Target;
  readonly unreached: readonly Unreached[];
  /** Nobody has measured whether the time chosen runs as marked. */
  readonly timeUncertain: boolean;
}

/** Half of the last decimal that a ledger shows: less than this past the end of a dial is nothing. */
const NOTICED_FROM = 0.005;

/** Which end of the dial a wanted value lies beyond, if any. */
function beyond(
  wanted: number,
  candidates: readonly { readonly exact: number }[],
  chosen: Stops,
): 'low' | 'high' | null {
  if (Math.abs(chosen) < NOTICED_FROM) return null;
  const values = candidates.map(({ exact }) => exact);
  if (wanted < Math.min(...values)) return 'low';
  return wanted > Math.max(...values) ? 'high' : null;
}

/**
 * The settings of the other rig that keep what a set holds, on that rig's real dials.
 *
 * Of all combinations of its positions the one is taken whose deviations from the hold's wishes
 * are least, in this order: time, ISO, aperture, each by absolute value in stops; then the absolute
 * sum of the three; then the shorter time, the lower ISO, the larger f-number. 'same-picture'
 * minimises the largest of the three, then the sum of their absolute values, then as before.
 *
 * The three deviations do not depend on each other, so that both rules come to the same: each
 * quantity at its own least, and only ties are left to be combined. (The largest of three is least
 * when each is least, and so is the sum.) The test proves it against every combination.
 *
 * Extended positions are never chosen. How the frames are framed plays no part: see `target.ts`.
 *
 * @returns a refusal for settings that are free ('hold-is-free'), for a dial with nothing but
 * extended positions ('dial-empty'), or the refusal of the other rig's dials.
 */
export function matchSettings({
  reference,
  other,
  hold,
}: {
  readonly reference: Side;
  readonly other: Assembled;
  readonly hold: Hold;
}): Match | Refusal {
  const target = targetOf(hold, reference.assembled, other);
  if (!target) return refuse('hold-is-free');
  const positions = positionsOf(other.body, other.lens);
  if (isRefusal(positions)) return positions;
  const wanted: Exact = {
    n: fNumber(reference.exact.n * 2 ** (-target.aperture / 2)),
    t: seconds(reference.exact.t * 2 ** target.time),
    s: iso(reference.exact.s * 2 ** target.iso),
  };
  const times = timeCandidates(positions, other, wanted.t);
  const isos = isoCandidates(positions, wanted.s);
  const fNumbers = fNumberCandidates(positions, wanted.n);
  const [best] = nearest(times)
    .flatMap((time) =>
      nearest(isos).flatMap((speed) =>
        nearest(fNumbers).map((aperture) => ({
          time,
          speed,
          aperture,
          sum: rank(addStops(time.deviation, speed.deviation, aperture.deviation)),
        })),
      ),
    )
    .sort(
      (a, b) =>
        a.sum - b.sum ||
        a.time.exact - b.time.exact ||
        a.speed.exact - b.speed.exact ||
        b.aperture.exact - a.aperture.exact,
    );
  if (!best) return refuse('dial-empty');
  const { time, speed, aperture } = best;
  return {
    settings: { fMark: aperture.choice, time: time.choice.time, isoMark: speed.choice },
    exact: { n: aperture.exact, t: time.exact, s: speed.exact },
    wanted,
    deviation: { time: time.deviation, aperture: aperture.deviation, iso: speed.deviation },
    unreached: unreachedOf(wanted, { times, isos, fNumbers }, { time, speed, aperture }),
    timeUncertain: time.choice.uncertain,
  };
}

/** What the dials could not reach, in the order time, ISO, aperture. */
function unreachedOf(
  wanted: Exact,
  candidates: {
    readonly times: readonly Candidate<Seconds, unknown>[];
    readonly isos: readonly Candidate<Iso, unknown>[];
    readonly fNumbers: readonly Candidate<FNumber, unknown>[];
  },
  chosen: {
    readonly time: Candidate<Seconds, unknown>;
    readonly speed: Candidate<Iso, unknown>;
    readonly aperture: Candidate<FNumber, unknown>;
  },
): readonly Unreached[] {
  const { time, speed, aperture } = chosen;
  const timeEnd = beyond(wanted.t, candidates.times, time.deviation);
  const isoEnd = beyond(wanted.s, candidates.isos, speed.deviation);
  const fNumberEnd = beyond(wanted.n, candidates.fNumbers, aperture.deviation);
  const unreached: Unreached[] = [];
  if (timeEnd) {
    unreached.push({
      code: timeEnd === 'high' ? 'time-beyond-dial' : 'time-short-of-dial',
      wanted: wanted.t,
      nearest: time.exact,
      cost: time.deviation,
    });
  }
  if (isoEnd) {
    unreached.push({
      code: isoEnd === 'high' ? 'iso-above-dial' : 'iso-below-dial',
      wanted: wanted.s,
      nearest: speed.exact,
      cost: speed.deviation,
    });
  }
  if (fNumberEnd) {
    unreached.push({
      code: fNumberEnd === 'low' ? 'aperture-wider-than-lens' : 'aperture-narrower-than-lens',
      wanted: wanted.n,
      nearest: aperture.exact,
      cost: aperture.deviation,
    });
  }
  return unreached;
}
