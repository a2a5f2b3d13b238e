import { positionsOf } from '../gear/positions.ts';
import type { Assembled } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import { isRefusal, type Refusal, refuse } from '../science/refusal.ts';
import { duration, iso, type Seconds, seconds, stops } from '../science/units.ts';
import { isoCandidates, nearest, timeCandidates } from './candidates.ts';
import type { SetId } from './ids.ts';
import { newSet } from './newPlan.ts';
import type { OrderName, Plan, PlanSet } from './plan.ts';

/*
 * A ready list for one body at home: how it warms and cools, cap on. Two frames of the shortest time
 * give the noise of reading out; long frames back to back warm the sensor; two after each of three
 * waits, switched off, show how it cools. Lengths and counts: heat and noise, section 1.5.
 */

const WARMING = { t: seconds(120), frames: 12 };
const WAITS: readonly Seconds[] = [duration(240), duration(480), duration(960)];

/** A frame that is shorter than wanted by more than this shows too little dark current (our choice). */
const FARTHEST = stops(2);

/** The highest ISO of the ready lists: few bodies are used above it (our choice). */
const USUAL_ISO = iso(12_800);

const ORDER: OrderName = 'rig-by-rig';

/** The ISO marks that a body can be measured at; none if its dials refuse. */
export function seriesIsos({ body, lens }: Assembled): readonly string[] {
  const positions = positionsOf(body, lens);
  return isRefusal(positions)
    ? []
    : isoCandidates(positions, USUAL_ISO).map(({ choice }) => choice);
}

/** The one to measure it at unless its owner says otherwise; null if its dials refuse. */
export function usualSeriesIso({ body, lens }: Assembled): string | null {
  const positions = positionsOf(body, lens);
  if (isRefusal(positions)) return null;
  return nearest(isoCandidates(positions, USUAL_ISO))[0]?.choice ?? null;
}

/**
 * The capped series that a body's heat is fitted from. A body that cannot time 120 s takes the
 * nearest time, and of shorter frames as many more as warm it as long. The aperture is the lens's
 * narrowest, which lets the least stray light in (common practice, no source).
 *
 * @param isoMark the highest that the body is to be used at, as its dial shows it.
 * @param newId gives a fresh id at each call.
 * @returns a refusal if its dials refuse, or ('no-long-time') if it has no time of 30 s or more.
 */
export function heatSeries(
  rig: Assembled,
  isoMark: string,
  newId: () => SetId,
): Pick<Plan, 'order' | 'sets' | 'rest'> | Refusal {
  const positions = positionsOf(rig.body, rig.lens);
  if (isRefusal(positions)) return positions;
  const shortest = positions.times.find(({ extended }) => !extended);
  const [long] = nearest(timeCandidates(positions, rig, WARMING.t));
  const narrowest = positions.fNumbers.at(-1);
  if (!shortest || !long || !narrowest || Math.abs(long.deviation) > FARTHEST) {
    return refuse('no-long-time');
  }
  const at = (time: Settings['time']): Settings => ({ fMark: narrowest.mark, time, isoMark });
  const series = (
    intent: string,
    settings: Settings,
    repeats: number,
    restBeforeS: Seconds | null = null,
  ): PlanSet => ({
    ...newSet(newId(), rig.rig.id, settings, ORDER),
    intent,
    kind: 'capped-series',
    repeats,
    restBeforeS,
  });
  const warming = at(long.choice.time);
  // Rounding must not ask for one more.
  const frames = Math.ceil((WARMING.frames * WARMING.t) / long.exact - 1e-9);
  return {
    order: ORDER,
    rest: { kind: 'none' },
    sets: [
      series('Shortest time, cold', at({ kind: 'dial', mark: shortest.mark }), 2),
      series('Warming, back to back', warming, Math.max(WARMING.frames, frames)),
      ...WAITS.map((wait) => series(`After ${wait / 60} min switched off`, warming, 2, wait)),
    ],
  };
}
