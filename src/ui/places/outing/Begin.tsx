import { useState } from 'preact/hooks';
import type { Started } from '../../../app/run.ts';
import { stopsStart } from '../../../plan/problems.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { notLeftNotice } from './safetyParts.ts';

/** No outing in hand: the plans that can be walked. */
export function Begin() {
  const { navigation, plans, run, gear } = useApp();
  const { outing: words, format } = useWords();
  const [answer, setAnswer] = useState<Started | null>(null);
  const all = plans.plans.value;
  return (
    <Screen title={words.title}>
      {answer && answer.how !== 'started' && (
        <Notice urgent>
          {answer.how === 'another-runs'
            ? words.anotherRuns
            : answer.how === 'not-saved'
              ? words.notStarted(words.notSaved[answer.fault.kind])
              : words.planNotReady}
        </Notice>
      )}
      <notLeftNotice.Content />
      {all.length === 0 ? (
        <EmptyHint
          acts={
            <Button rank="main" onPress={() => navigation.visit('plan')}>
              {words.toPlans}
            </Button>
          }
        >
          {words.noPlans}
        </EmptyHint>
      ) : (
        <div class="begin">
          <p>
            {words.none} {words.noneHint}
          </p>
          <ul>
            {all.map((plan) => {
              const prepared = plans.prepared(plan.id).value;
              const ready = prepared !== null && !prepared.problems.some(stopsStart);
              return (
                <li key={plan.id}>
                  <h2>
                    {plan.name} {plan.invented && <InventedTag />}
                  </h2>
                  {prepared && (
                    <p>
                      {words.planFrames(
                        prepared.frames.length,
                        format.number(Math.ceil(prepared.timeline.wallS / 60), 0),
                      )}
                    </p>
                  )}
                  {!ready && <p>{words.planNotReady}</p>}
                  <Button
                    rank="main"
                    disabled={!ready}
                    name={words.startPlan(plan.name)}
                    onPress={async () => setAnswer(await run.start(plan, gear.gear.value))}
                  >
                    {words.start}
                  </Button>
                </li>
              );
            })}
          </ul>
          <p>{words.caution}</p>
        </div>
      )}
    </Screen>
  );
}
