import { useState } from 'preact/hooks';
import type { Started } from '../../../app/run.ts';
import { stopsStart } from '../../../plan/problems.ts';
import { Button } from '../../parts/Button.tsx';
import { useApp } from '../../shell/useApp.ts';
import { usePlanWords } from '../../words/plan.ts';
import { problemWords } from './sentences.ts';
import type { PlanView } from './usePlanView.ts';

/** The main act of a plan, or why it cannot be done yet. */
export function StartOuting({ view }: { readonly view: PlanView }) {
  const { run, gear, navigation } = useApp();
  const words = usePlanWords();
  const { plan, outing } = words;
  const [answer, setAnswer] = useState<Started | 'asked' | null>(null);
  const refused = (started: Started): string | null => {
    switch (started.how) {
      case 'started':
        return null;
      case 'another-runs':
        return plan.underWay;
      case 'plan-has-problems':
        return plan.hasProblems;
      case 'not-saved':
        return outing.notStarted(outing.notSaved[started.fault.kind]);
    }
  };
  const problem = view.prepared.problems.find(stopsStart);
  const reason = run.underWay.value
    ? plan.underWay
    : problem
      ? problemWords(words, view, problem)
      : answer === null || answer === 'asked'
        ? null
        : refused(answer);
  const start = async () => {
    setAnswer('asked');
    const started = await run.start(view.plan, gear.gear.peek());
    setAnswer(started);
    if (started.how === 'started') navigation.visit('outing');
  };
  return (
    <>
      {reason !== null && (
        <p class="reason" role="status">
          {reason}
        </p>
      )}
      <Button
        rank="main"
        busy={answer === 'asked'}
        disabled={run.underWay.value || problem !== undefined}
        onPress={() => void start()}
      >
        {plan.start}
      </Button>
    </>
  );
}
