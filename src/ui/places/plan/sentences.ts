import type { RigId } from '../../../gear/ids.ts';
import { LETTERS } from '../../../gear/letter.ts';
import type { Settings } from '../../../gear/settings.ts';
import type { Dialled } from '../../../plan/frame.ts';
import { dialledIn } from '../../../plan/prepare.ts';
import type { Problem } from '../../../plan/problems.ts';
import { markedTime } from '../../../science/dialSeries.ts';
import { stopsBetweenTimes } from '../../../science/exposure.ts';
import { isRefusal } from '../../../science/refusal.ts';
import type { Stops } from '../../../science/units.ts';
import type { PlanWords } from '../../words/plan.ts';
import type { PlanView } from './usePlanView.ts';

/** A time as it is dialled: the mark, or bulb with how long it is held. */
export const timeWords = ({ format, plan }: PlanWords, time: Settings['time']): string =>
  time.kind === 'bulb' ? plan.bulb(format.duration(time.seconds)) : format.timeMark(time.mark);

/** 'A Alder 44', for lines and labels that carry no sign. */
export function rigWords({ plan }: PlanWords, view: Pick<PlanView, 'rig'>, id: RigId): string {
  const assembled = view.rig(id);
  return assembled ? plan.rigOf(assembled.rig.letter, assembled.body.name) : plan.rigGone;
}

/** A size in stops without its sign, as in '0.67'. */
export const sizeWords = ({ format }: PlanWords, size: Stops): string =>
  format.number(Math.abs(size), 2);

/** How far the time that is computed with stands from its mark; null where there is none. */
function fromMark({ settings: { time }, exact }: Dialled): Stops | null {
  const marked = time.kind === 'dial' ? markedTime(time.mark) : null;
  return marked === null || isRefusal(marked) ? null : stopsBetweenTimes(marked, exact.t);
}

type OutOfReach = Extract<Problem, { code: 'out-of-reach' }>;

/** '64 s wanted; 60 s is the last position and there is no bulb: 0.09 stop darker.' */
function unreachedWords(words: PlanWords, view: PlanView, problem: OutOfReach): string {
  const { format, plan } = words;
  const { unreached, rig, set: setId } = problem;
  const set = view.set(setId);
  const table = view.prepared.table.find((candidate) => candidate.set === setId);
  const nearest = dialledIn(table, rig)?.settings;
  if (!set || !nearest) return '';
  const body = view.rig(rig)?.body;
  const cost = plan.cost(sizeWords(words, unreached.cost), unreached.cost > 0);
  const hasBulb = body?.bulb.kind !== 'none';
  switch (unreached.code) {
    case 'time-beyond-dial':
    case 'time-short-of-dial':
      return plan.unreached(
        unreached.code,
        // Every hold asks for the reference's own time.
        format.timeChoice(set.settings.time),
        timeWords(words, nearest.time),
        hasBulb,
        cost,
      );
    case 'iso-above-dial':
    case 'iso-below-dial':
      return plan.unreached(
        unreached.code,
        set.hold.kind === 'same-picture'
          ? format.isoMark(format.number(unreached.wanted, 0))
          : format.isoMark(set.settings.isoMark),
        format.isoMark(nearest.isoMark),
        hasBulb,
        cost,
      );
    case 'aperture-wider-than-lens':
    case 'aperture-narrower-than-lens':
      return plan.unreached(
        unreached.code,
        format.fMark(format.plain(unreached.wanted, 1)),
        format.fMark(nearest.fMark),
        hasBulb,
        cost,
      );
  }
}

/** One sentence: what is wrong, and what to do. */
export function problemWords(words: PlanWords, view: PlanView, problem: Problem): string {
  const { format, plan } = words;
  const say = plan.problems;
  const name = (rig: RigId) => view.rig(rig)?.body.name ?? plan.rigGone;
  switch (problem.code) {
    case 'no-rigs':
    case 'one-rig':
    case 'rig-gone':
    case 'no-sets':
    case 'dark-without-light':
    case 'reference-not-in-plan':
      return say[problem.code];
    case 'too-many-rigs':
      return say.tooManyRigs(LETTERS.length);
    case 'letter-twice':
      return say.letterTwice(problem.letter);
    case 'settings-not-on-dials':
      return say.notOnDials(name(problem.rig), plan.dials[problem.rule] ?? plan.dial);
    case 'bulb-not-on-body':
      return say.bulbNotOnBody(name(problem.rig));
    case 'bulb-too-long':
      return say.bulbTooLong(name(problem.rig), format.duration(problem.longestS));
    case 'free-settings-missing':
      return say.freeMissing(name(problem.rig));
    case 'dials-refused':
      return say.dialsRefused(name(problem.rig));
    case 'out-of-reach':
      return unreachedWords(words, view, problem);
    case 'extended-iso':
      return say.extendedIso(name(problem.rig), format.isoMark(problem.isoMark));
    case 'time-uncertain': {
      const table = view.prepared.table.find((candidate) => candidate.set === problem.set);
      const dialled = dialledIn(table, problem.rig);
      const stops = dialled && fromMark(dialled);
      return say.timeUncertain(
        name(problem.rig),
        dialled ? timeWords(words, dialled.settings.time) : plan.time,
        stops && sizeWords(words, stops),
      );
    }
  }
}

/** The problems of the plan itself, or of one set of it. A plan without rigs says so once. */
export const problemsAt = (view: PlanView, set: string | null): readonly Problem[] =>
  view.prepared.problems.filter(
    (problem) =>
      ('set' in problem ? problem.set : null) === set &&
      !(problem.code === 'reference-not-in-plan' && view.plan.rigs.length === 0),
  );
