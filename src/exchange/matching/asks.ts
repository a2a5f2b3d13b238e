import type { RigId } from '../../gear/ids.ts';
import { clockRead } from './bodyClock.ts';
import { SURE_MARGIN } from './evidence.ts';
import { takenBy } from './takers.ts';
import type { Ask, FileChoice, FrameMatch } from './types.ts';
import { cheapest, isDoubted, localOffsetS, type Weighed } from './weighed.ts';

/**
 * What is to be decided: first whose files they are, then how a clock stood, then single frames. The
 * later questions of a rig wait until the earlier are settled, which settles most of them.
 */
export function asksOf(weighed: Weighed, answers: readonly FrameMatch[]): readonly Ask[] {
  const whose = whoseAsks(weighed);
  const waits = new Set<RigId>();
  for (const ask of whose) {
    if (ask.ask === 'which-rig') for (const { rig } of ask.choices) if (rig) waits.add(rig);
  }
  const clocks = weighed.run.plan.rigs
    .filter((rig) => !waits.has(rig))
    .flatMap((rig) => clockAsk(weighed, rig));
  for (const ask of clocks) if (ask.ask === 'which-clock') waits.add(ask.rig);
  const rigOf = new Map(weighed.frames.map(({ id, rig }) => [id, rig]));
  const frames = answers.flatMap(({ made, file, sure, others }): readonly Ask[] => {
    const rig = rigOf.get(made);
    if (sure || (rig && waits.has(rig))) return [];
    const first: FileChoice = { file, cost: 0 };
    return [{ ask: 'which-file', made, choices: [first, ...others] }];
  });
  return [...whose, ...clocks, ...frames];
}

function whoseAsks(weighed: Weighed): readonly Ask[] {
  return weighed.groups.flatMap((group, place): readonly Ask[] => {
    if (!isDoubted(weighed, place)) return [];
    const costs = new Map<RigId | null, number>();
    for (const { rigs, cost } of weighed.takers) {
      const rig = rigs[place] ?? null;
      if (!costs.has(rig)) costs.set(rig, cost - cheapest(weighed).cost);
    }
    const choices = [...costs].map(([rig, cost]) => ({ rig, cost }));
    return [{ ask: 'which-rig', group: group.key, choices }];
  });
}

/** Clocks nearer than this are told apart by single frames, not by a question about the clock. */
const SAME_CLOCK_S = 5;

function clockAsk(weighed: Weighed, rig: RigId): readonly Ask[] {
  const beside = weighed.beside(rig, takenBy(rig, cheapest(weighed).rigs));
  const [best] = beside.readings;
  if (!best?.clock || weighed.decided.clocks.has(rig)) return [];
  const choices: Extract<Ask, { ask: 'which-clock' }>['choices'][number][] = [];
  for (const reading of beside.readings) {
    const cost = reading.cost - best.cost;
    if (cost >= SURE_MARGIN) break;
    const clock = clockRead(rig, beside, reading, localOffsetS(weighed.run));
    if (!clock) continue;
    const known = choices.some(
      (choice) => Math.abs(choice.clock.aheadS - clock.aheadS) < SAME_CLOCK_S,
    );
    const others = reading.taken.some((column, row) => column !== best.taken[row]);
    if (choices.length === 0 || (!known && others)) choices.push({ clock, cost });
  }
  return choices.length > 1 ? [{ ask: 'which-clock', rig, choices }] : [];
}
