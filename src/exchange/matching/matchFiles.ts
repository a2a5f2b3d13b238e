import type { LogFrame } from '../../log/frames.ts';
import type { BodyClock, CameraFile } from '../../outing/cameraFile.ts';
import type { RunState } from '../../outing/state.ts';
import { asksOf } from './asks.ts';
import { bodyClockOf } from './bodyClock.ts';
import { answersOf } from './frameAnswers.ts';
import { groupsOf } from './groups.ts';
import { leftFiles } from './left.ts';
import { takenBy } from './takers.ts';
import { type Decided, type Matching, NOTHING_DECIDED } from './types.ts';
import { cheapest, isDoubted, localOffsetS, type Weighed, weigh } from './weighed.ts';

/**
 * Finds the files of the frames: for each rig one pairing of two sequences in the order of time,
 * under the clock, the believed file numbers and the sharing of files among rigs that together cost
 * least. What `run.files` holds was accepted before and stands; hand in a run without it to match
 * anew.
 *
 * @param frames the log's, in its order
 * @param files of any bodies and evenings, in any order
 */
export function matchFiles(
  run: RunState,
  frames: readonly LogFrame[],
  files: readonly CameraFile[],
  decided: Decided = NOTHING_DECIDED,
): Matching {
  const weighed = weigh(run, frames, files, decided);
  const { copies } = groupsOf(files);
  const answers = answersOf(weighed);
  const clocks = clocksOf(weighed);
  return {
    frames: answers,
    left: leftFiles(weighed, answers, copies),
    groups: weighed.groups.map((group, place) => ({
      key: group.key,
      make: group.make,
      model: group.model,
      serial: group.serial,
      files: group.files,
      rig: cheapest(weighed).rigs[place] ?? null,
      sure: !isDoubted(weighed, place),
    })),
    clocks,
    asks: asksOf(weighed, answers),
    untimed: files.flatMap((file, place) =>
      file.time === null && !answers.some((answer) => answer.file === place) ? [place] : [],
    ),
  };
}

function clocksOf(weighed: Weighed): readonly BodyClock[] {
  const { run, decided } = weighed;
  return run.plan.rigs.flatMap((rig) => {
    const beside = weighed.beside(rig, takenBy(rig, cheapest(weighed).rigs));
    const by = decided.clocks.has(rig) ? ('by-hand' as const) : null;
    return bodyClockOf(rig, beside, localOffsetS(run), by) ?? [];
  });
}
