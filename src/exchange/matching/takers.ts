import type { RigId } from '../../gear/ids.ts';
import type { Written } from './groups.ts';
import { mayBeOneBody, NONE_THOUGH_IT_SUITS, suitsWell, type Taker } from './identity.ts';
import { KEPT_LOSS, type Reading } from './sequence.ts';

/** Which rig took which group of files, and what that costs. */
export interface Takers {
  /** One for each group, in their order. */
  readonly rigs: readonly Taker[];
  readonly cost: number;
}

/** What is needed to weigh who took what. */
export interface TakersProblem {
  readonly groups: readonly Written[];
  readonly rigs: readonly RigId[];
  /** Who somebody has said took a group; undefined = nobody has. */
  readonly said: (group: Written) => Taker | undefined;
  readonly identity: (rig: RigId, group: Written) => number;
  /** The readings of a rig's frames beside these groups' files, cheapest first. */
  readonly readings: (rig: RigId, groups: readonly number[]) => readonly Reading[];
}

/** More ways than this are cut to the likeliest takers of each group. */
const MOST_WAYS = 3000;

/**
 * All ways that cost little more than the cheapest, which stands first. A rig's frames are weighed
 * against all files it took at once, so that two bodies never share a frame.
 */
export function takersOf(problem: TakersProblem): readonly Takers[] {
  const { groups, rigs, said, identity } = problem;
  const options = groups.map((group, place): readonly { taker: Taker; alone: number }[] => {
    const by = said(group);
    const none = noneCost(problem, group);
    const may = by === undefined ? [null, ...rigs] : [by];
    return may
      .map((taker) => ({
        taker,
        alone:
          taker === null
            ? none
            : identity(taker, group) + (problem.readings(taker, [place])[0]?.cost ?? 0),
      }))
      .filter(({ taker, alone }) => by !== undefined || taker === null || alone < none + KEPT_LOSS)
      .sort((a, b) => a.alone - b.alone);
  });
  let depth = Math.max(1, rigs.length + 1);
  const ways = (): number =>
    options.reduce((product, each) => product * Math.min(each.length, depth), 1);
  while (depth > 1 && ways() > MOST_WAYS) depth -= 1;
  const found: Takers[] = [];
  const choose = (chosen: readonly Taker[]): void => {
    const place = chosen.length;
    if (place === groups.length) {
      found.push({ rigs: chosen, cost: costOf(problem, chosen) });
      return;
    }
    for (const { taker } of options[place]?.slice(0, depth) ?? []) {
      if (taker !== null && !fits(problem, chosen, taker)) continue;
      choose([...chosen, taker]);
    }
  };
  choose([]);
  found.sort((a, b) => a.cost - b.cost);
  const best = found[0]?.cost ?? 0;
  return found.filter(({ cost }) => cost <= best + KEPT_LOSS);
}

/** A rig takes two groups only if one body can have written both, or somebody says so. */
const fits = ({ groups, said }: TakersProblem, chosen: readonly Taker[], taker: RigId): boolean => {
  const group = groups[chosen.length] as Written;
  return chosen.every((other, place) => {
    const before = groups[place] as Written;
    return other !== taker || said(group) === taker || mayBeOneBody(before, group);
  });
};

const noneCost = ({ rigs, identity }: TakersProblem, group: Written): number =>
  rigs.some((rig) => suitsWell(identity(rig, group))) ? NONE_THOUGH_IT_SUITS : 0;

/** The groups that a rig took. */
export const takenBy = (rig: RigId, takers: readonly Taker[]): readonly number[] =>
  takers.flatMap((taker, group) => (taker === rig ? [group] : []));

function costOf(problem: TakersProblem, chosen: readonly Taker[]): number {
  const { groups, rigs, identity, readings } = problem;
  let cost = 0;
  chosen.forEach((taker, place) => {
    const group = groups[place] as Written;
    cost += taker === null ? noneCost(problem, group) : identity(taker, group);
  });
  for (const rig of rigs) {
    const taken = takenBy(rig, chosen);
    if (taken.length > 0) cost += readings(rig, taken)[0]?.cost ?? 0;
  }
  return cost;
}
