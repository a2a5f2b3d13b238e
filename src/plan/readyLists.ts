import { type Positions, positionsOf } from '../gear/positions.ts';
import type { Assembled } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import { fNumberForScene, timeForScene } from '../science/exposure.ts';
import { cropRatio, equivalentFNumber } from '../science/formats.ts';
import { isRefusal, type Refusal, refuse } from '../science/refusal.ts';
import {
  type Ev,
  ev,
  type FNumber,
  fNumber,
  type Iso,
  iso,
  millimetres,
  type Seconds,
  type Stops,
  seconds,
  stops,
} from '../science/units.ts';
import {
  type Candidate,
  fNumberCandidates,
  isoCandidates,
  nearest,
  timeCandidates,
} from './candidates.ts';
import { formatOf } from './framing.ts';
import type { SetId } from './ids.ts';
import { newSet } from './newPlan.ts';
import type { OrderName, Plan, PlanSet } from './plan.ts';

/** The lists that a plan can start from. */
export const READY_LISTS = [
  'base-iso-latitude',
  'high-iso-ladder',
  'long-exposure-heat',
  'mixed-dusk',
] as const;
export type ReadyListName = (typeof READY_LISTS)[number];

/** One light set before any dial. */
interface Step {
  /** Kept in the plan as its owner's own text. */
  readonly intent: string;
  /** The scene that it is worked out for. */
  readonly scene: Ev;
  readonly offset: Stops;
  readonly iso: Iso | 'base';
  /** A time that is asked for; the aperture then follows the scene. Null = the time follows. */
  readonly time: Seconds | null;
}

interface ReadyList {
  readonly order: OrderName;
  readonly repeats: number;
  /** Whether a capped dark follows each set. */
  readonly darks: boolean;
  readonly steps: readonly Step[];
}

const step = (
  intent: string,
  scene: number,
  offset: number,
  speed: number | 'base',
  time: number | null = null,
): Step => ({
  intent,
  scene: ev(scene),
  offset: stops(offset),
  iso: speed === 'base' ? speed : iso(speed),
  time: time === null ? null : seconds(time),
});

/**
 * Scenes in EV at ISO 100: 1 1/3 stands near the end of civil twilight, -0.67 some eight minutes
 * later at 55 degrees latitude, -2.67 and below from half way through nautical twilight (sky light
 * on level ground: sun at -6 degrees EV 0.5, at -7 EV -1.2, at -8 EV -2.8).
 *
 * The mixed list lets the light fall by about two stops a set of minute-long frames, so that two
 * stops under comes by the same settings.
 */
const LISTS: Readonly<Record<ReadyListName, ReadyList>> = {
  'base-iso-latitude': {
    order: 'mirror',
    repeats: 2,
    darks: false,
    steps: [
      step('Base ISO, well exposed', 4 / 3, 0, 'base'),
      step('Base ISO, two stops under', 4 / 3, -2, 'base'),
      step('Base ISO, four stops under', 4 / 3, -4, 'base'),
    ],
  },
  'high-iso-ladder': {
    order: 'mirror',
    repeats: 2,
    darks: false,
    steps: [1600, 3200, 6400, 12_800].map((speed) => step(`ISO ${speed}`, -8 / 3, 0, speed)),
  },
  // Each rig goes through the same rhythm by itself, so that both sensors have the same history.
  'long-exposure-heat': {
    order: 'rig-by-rig',
    repeats: 2,
    darks: true,
    steps: [15, 60, 240].map((time) => step(`Heat, ${time} s`, -2.57, 0, 400, time)),
  },
  'mixed-dusk': {
    order: 'mirror',
    repeats: 1,
    darks: false,
    steps: [
      step('Base ISO, well exposed', -2 / 3, 0, 'base'),
      step('Base ISO, two stops under', -8 / 3, -2, 'base'),
      step('ISO 12800, over', -11 / 3, 1, 12_800),
      step('ISO 12800, far under', -14 / 3, -4, 12_800),
    ],
  },
};

/** The aperture to start from: f/5 on 36 x 24 mm, elsewhere the same depth of field (our choice). */
const START_F_NUMBER: FNumber = fNumber(5);
const START_FORMAT = { width: millimetres(36), height: millimetres(24) };

/** A step that no position comes nearer to than this is left out. */
const FARTHEST_STOPS = 1;

/** The nearest position, or null where none is near enough. */
function near<U, C>(candidates: readonly Candidate<U, C>[]): Candidate<U, C> | null {
  const [best] = nearest(candidates);
  return best && Math.abs(best.deviation) <= FARTHEST_STOPS ? best : null;
}

/** The reference's ISO positions that every rig has within its own range. */
function sharedIsos(
  reference: Positions,
  all: readonly Positions[],
  wanted: Iso,
): readonly Candidate<Iso, string>[] {
  const ranges = all.map((positions) => isoCandidates(positions, wanted).map(({ exact }) => exact));
  return isoCandidates(reference, wanted).filter(({ exact }) =>
    ranges.every((range) => exact >= Math.min(...range) && exact <= Math.max(...range)),
  );
}

/** The settings of a step on the reference's dials; null where they cannot come near it. */
function settingsOf(
  { scene, offset, iso: speed, time }: Step,
  reference: Assembled,
  positions: Positions,
  all: readonly Positions[],
): Settings | null {
  const isos = sharedIsos(positions, all, speed === 'base' ? iso(100) : speed);
  const chosenIso = speed === 'base' ? (isos[0] ?? null) : near(isos);
  if (!chosenIso) return null;
  const metered = ev(scene - offset);
  const wantedN =
    time === null
      ? equivalentFNumber(START_F_NUMBER, cropRatio(START_FORMAT, formatOf(reference.body)))
      : fNumberForScene(metered, time, chosenIso.exact);
  if (isRefusal(wantedN)) return null;
  const [aperture] = nearest(fNumberCandidates(positions, wantedN));
  if (!aperture) return null;
  const wantedT = time ?? timeForScene(metered, aperture.exact, chosenIso.exact);
  if (isRefusal(wantedT)) return null;
  const chosenTime = near(timeCandidates(positions, reference, wantedT));
  return (
    chosenTime && {
      fMark: aperture.choice,
      time: chosenTime.choice.time,
      isoMark: chosenIso.choice,
    }
  );
}

/**
 * A ready shot list for rigs at hand, the first being the reference: order and sets, by positions
 * that stand on the reference's dials. Base ISO is the lowest that all the rigs have. Steps that
 * the reference cannot come within a stop of are left out (240 s on a body that ends at 60 s).
 *
 * @param newId gives a fresh id at each call.
 * @returns a refusal if there are no rigs ('no-rigs') or a rig's dials refuse.
 */
export function readyList(
  name: ReadyListName,
  rigs: readonly Assembled[],
  newId: () => SetId,
): Pick<Plan, 'order' | 'sets'> | Refusal {
  const [reference] = rigs;
  if (!reference) return refuse('no-rigs');
  const all: Positions[] = [];
  for (const { body, lens } of rigs) {
    const positions = positionsOf(body, lens);
    if (isRefusal(positions)) return positions;
    all.push(positions);
  }
  const [positions] = all;
  if (!positions) return refuse('no-rigs');
  const { order, repeats, darks, steps } = LISTS[name];
  const sets = steps.flatMap((one): readonly PlanSet[] => {
    const settings = settingsOf(one, reference, positions, all);
    if (!settings) return [];
    const set: PlanSet = {
      ...newSet(newId(), reference.rig.id, settings, order),
      intent: one.intent,
      targetOffset: one.offset,
      repeats,
    };
    return darks ? [set, { ...set, id: newId(), kind: 'capped-dark' }] : [set];
  });
  return { order, sets };
}
