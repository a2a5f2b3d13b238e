import { addPractice } from '../../../app/practice.ts';
import type { RigId } from '../../../gear/ids.ts';
import { assemble } from '../../../gear/rig.ts';
import type { PlanId } from '../../../plan/ids.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { useApp } from '../../shell/useApp.ts';
import { usePlanWords } from '../../words/plan.ts';
import { rigWords } from './sentences.ts';

/** All plans, own ones first. */
export function PlanList() {
  const app = useApp();
  const { plans, gear, navigation } = app;
  const words = usePlanWords();
  const { plan: say } = words;
  const all = plans.plans.value;
  const now = gear.gear.value;
  const rig = (id: RigId) => assemble(now, id);
  const open = (id: PlanId) => navigation.go('plan', id);
  const acts = (
    <>
      {now.rigs.length > 0 ? (
        <Button rank="main" onPress={() => navigation.go('plan', 'new')}>
          {say.make}
        </Button>
      ) : (
        <Button rank="main" onPress={() => navigation.visit('gear')}>
          {say.toGear}
        </Button>
      )}
      {!all.some(({ invented }) => invented) && (
        <Button onPress={() => open(addPractice(app))}>{say.practice}</Button>
      )}
    </>
  );
  return (
    <Screen title={say.title}>
      {all.length === 0 ? (
        <EmptyHint acts={acts}>{now.rigs.length === 0 ? say.noRig : say.none}</EmptyHint>
      ) : (
        <>
          <ul class="rows">
            {all.map((plan) => (
              <li key={plan.id}>
                <Row
                  title={plan.name}
                  tag={plan.invented && <InventedTag />}
                  note={say.inShort(
                    plan.rigs.map((id) => rigWords(words, { rig }, id)).join(', ') || say.noRigs,
                    plan.sets.length,
                  )}
                  onPress={() => open(plan.id)}
                />
              </li>
            ))}
          </ul>
          <div class="acts">{acts}</div>
        </>
      )}
    </Screen>
  );
}
