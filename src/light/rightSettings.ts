import { type Positions, positionsOf } from '../gear/positions.ts';
import type { Assembled } from '../gear/rig.ts';
import type { Exact, Settings } from '../gear/settings.ts';
import { isRefusal, type Refusal } from '../science/refusal.ts';
import { type Stops, seconds, type UtcMs } from '../science/units.ts';
import type { Scene } from './scene.ts';
import { missAt } from './windows.ts';

/** One dial turned so that the exposure comes out as near as it can. */
export interface TurnedDial {
  readonly dial: 'time' | 'iso' | 'f-number';
  readonly settings: Settings;
  readonly exact: Exact;
  /** What is left to what is meant; positive = too bright. */
  readonly miss: Stops;
}

interface Option {
  readonly settings: Settings;
  readonly exact: Exact;
}

/**
 * The exposures that come out as meant when they start at an instant: from the settings that stand,
 * one with another time, one with another ISO, one with another f-number, on the rig's dials. The
 * light's change during a long exposure is counted. Extended positions are never chosen; bulb only
 * where the dial is too short. A dial is left out if the sky is known for none of its positions.
 *
 * @returns the dials' own refusal for a profile that was never parsed.
 */
export function rightSettingsAt(
  scene: Scene,
  rig: Assembled,
  standing: Option,
  targetOffset: Stops,
  startMs: UtcMs,
): readonly TurnedDial[] | Refusal {
  const positions = positionsOf(rig.body, rig.lens);
  if (isRefusal(positions)) return positions;
  const miss = (exact: Exact): Stops | null => missAt(scene, { exact, targetOffset }, startMs);
  const nearest = (dial: TurnedDial['dial'], options: readonly Option[]): TurnedDial[] => {
    let best: TurnedDial | null = null;
    for (const option of options) {
      const left = miss(option.exact);
      if (left === null || (best && Math.abs(left) >= Math.abs(best.miss))) continue;
      best = { dial, ...option, miss: left };
    }
    return best ? [best] : [];
  };
  return [
    ...nearest('time', [
      ...timedOptions(positions, standing),
      ...bulbOptions(positions, rig, standing, miss),
    ]),
    ...nearest('iso', isoOptions(positions, standing)),
    ...nearest('f-number', fNumberOptions(positions, standing)),
  ];
}

const timedOptions = ({ times }: Positions, { settings, exact }: Option): readonly Option[] =>
  times
    .filter(({ extended }) => !extended)
    .map((position) => ({
      settings: { ...settings, time: { kind: 'dial', mark: position.mark } },
      exact: { ...exact, t: position.exact },
    }));

const isoOptions = ({ isos }: Positions, { settings, exact }: Option): readonly Option[] =>
  isos
    .filter(({ extended }) => !extended)
    .map((position) => ({
      settings: { ...settings, isoMark: position.mark },
      exact: { ...exact, s: position.exact },
    }));

const fNumberOptions = ({ fNumbers }: Positions, { settings, exact }: Option): readonly Option[] =>
  fNumbers
    .filter(({ extended }) => !extended)
    .map((position) => ({
      settings: { ...settings, fMark: position.mark },
      exact: { ...exact, n: position.exact },
    }));

/** The whole seconds in bulb on either side of the right one, where the dial is too short. */
function bulbOptions(
  { times }: Positions,
  { body }: Assembled,
  { settings, exact }: Option,
  miss: (exact: Exact) => Stops | null,
): readonly Option[] {
  if (body.bulb.kind === 'none') return [];
  const tooShort = (t: number): boolean => (miss({ ...exact, t: seconds(t) }) ?? 0) < 0;
  const timed = Math.max(...times.map((position) => position.exact));
  let short = Math.ceil(timed);
  let long = Math.floor(body.bulb.longestS);
  if (short >= long || !tooShort(short)) return [];
  // The longer it is held the brighter it comes out, however fast the light falls.
  while (long - short > 1) {
    const middle = Math.floor((short + long) / 2);
    if (tooShort(middle)) short = middle;
    else long = middle;
  }
  return [short, long].map((t) => ({
    settings: { ...settings, time: { kind: 'bulb', seconds: seconds(t) } },
    exact: { ...exact, t: seconds(t) },
  }));
}
