import type { RigId } from '../../../gear/ids.ts';
import { forecastAt, nineInTen } from '../../../light/forecast.ts';
import type { Scene } from '../../../light/scene.ts';
import type { FrameKey, SetId } from '../../../plan/ids.ts';
import { isCapped, type Plan, type SetKind } from '../../../plan/plan.ts';
import type { Prepared } from '../../../plan/prepare.ts';
import {
  type Ev,
  later,
  type MinutesEast,
  type Seconds,
  type UtcMs,
} from '../../../science/units.ts';

/** What one rig does in its lane, in seconds from the start of the list. */
export interface LaneAct {
  readonly act: 'exposure' | 'capped' | 'own-dark' | 'rest' | 'swap';
  readonly rig: RigId;
  readonly fromS: Seconds;
  readonly toS: Seconds;
  /** Of an exposure and of the body's dark frame after it. */
  readonly frame: FrameKey | null;
}

/** Everything that is drawn in the lanes, in order of time. */
export function laneActs(
  { sets, allowances }: Plan,
  { frames, timeline }: Prepared,
): readonly LaneAct[] {
  const kinds = new Map<SetId, SetKind>(sets.map(({ id, kind }) => [id, kind]));
  const exposures = timeline.frames.flatMap(({ key, rig, startS, endS, freeS }, at): LaneAct[] => {
    const kind = frames[at] && kinds.get(frames[at].set);
    const darkUntil = (freeS - allowances.writeS) as Seconds;
    return [
      { act: isCapped(kind) ? 'capped' : 'exposure', rig, fromS: startS, toS: endS, frame: key },
      ...(darkUntil > endS + 1e-6
        ? [{ act: 'own-dark', rig, fromS: endS, toS: darkUntil, frame: key } as const]
        : []),
    ];
  });
  const spans = (act: 'rest' | 'swap', all: Prepared['timeline']['rests']): LaneAct[] =>
    all.map((span) => ({ ...span, act, frame: null }));
  return [...exposures, ...spans('rest', timeline.rests), ...spans('swap', timeline.swaps)].sort(
    (a, b) => a.fromS - b.fromS,
  );
}

/** The light beneath at an instant of the list, with where it lies nine times in ten. */
export interface LightPoint {
  readonly atS: Seconds;
  readonly ev: Ev;
  readonly low: Ev;
  readonly high: Ev;
}

/** Finer than a pixel on any phone. */
const MOST_POINTS = 200;
const LEAST_STEP_S = 15;

/** The light over a list; null where it is not known for all of it. */
export function lightUnder(
  scene: Scene,
  startMs: UtcMs,
  wallS: Seconds,
): readonly LightPoint[] | null {
  const count = Math.max(1, Math.min(MOST_POINTS, Math.ceil(wallS / LEAST_STEP_S)));
  const points: LightPoint[] = [];
  for (let step = 0; step <= count; step += 1) {
    const atS = ((wallS * step) / count) as Seconds;
    const forecast = forecastAt(scene, later(startMs, atS));
    if (!forecast) return null;
    const half = nineInTen(forecast.sigma);
    const ev = forecast.ev100;
    points.push({ atS, ev, low: (ev - half) as Ev, high: (ev + half) as Ev });
  }
  return points;
}

const STEPS_MIN = [1, 2, 5, 10, 15, 30, 60, 120, 240];

/**
 * Instants of a list at which its axis has a mark, none nearer to the next than `leastPx`: whole
 * steps of the site's clock, or of minutes from the start.
 *
 * @param clock null where nobody knows when the list starts.
 */
export function axisTicks(
  wallS: Seconds,
  widthPx: number,
  leastPx: number,
  clock: { readonly startMs: UtcMs; readonly offsetMin: MinutesEast } | null,
): readonly Seconds[] {
  const minutePx = (widthPx / Math.max(1, wallS)) * 60;
  const stepS = 60 * (STEPS_MIN.find((each) => each * minutePx >= leastPx) ?? 480);
  const sinceMidnightS = clock ? clock.startMs / 1000 + clock.offsetMin * 60 : 0;
  const ticks: Seconds[] = [];
  const first = Math.ceil(sinceMidnightS / stepS) * stepS - sinceMidnightS;
  for (let at = first; at <= wallS; at += stepS) ticks.push(at as Seconds);
  return ticks;
}

/** The act of a frame that lies nearest to an instant; null if there is none. */
export function nearestFrame(acts: readonly LaneAct[], at: Seconds): FrameKey | null {
  const away = ({ fromS, toS }: LaneAct) => Math.max(fromS - at, at - toS, 0);
  return (
    acts.reduce<LaneAct | null>(
      (near, act) => (act.frame !== null && (near === null || away(act) < away(near)) ? act : near),
      null,
    )?.frame ?? null
  );
}
