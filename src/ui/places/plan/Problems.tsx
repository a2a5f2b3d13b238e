import { stopsStart } from '../../../plan/problems.ts';
import { Notice } from '../../parts/Notice.tsx';
import { usePlanWords } from '../../words/plan.ts';
import { problemsAt, problemWords } from './sentences.ts';
import type { PlanView } from './usePlanView.ts';

/**
 * What is wrong with the plan, or with one set of it. What concerns a rig that is shown stands in
 * that rig's row.
 */
export function Problems({ view, set }: { readonly view: PlanView; readonly set: string | null }) {
  const words = usePlanWords();
  const table = view.prepared.table.find((candidate) => candidate.set === set);
  const shown =
    table?.kind === 'compared' ? [table.reference.rig, ...table.others.map(({ rig }) => rig)] : [];
  return problemsAt(view, set)
    .filter((problem) => !('rig' in problem && 'set' in problem && shown.includes(problem.rig)))
    .map((problem) => {
      const sentence = problemWords(words, view, problem);
      return (
        <Notice key={sentence} urgent={stopsStart(problem)}>
          {sentence}
        </Notice>
      );
    });
}
