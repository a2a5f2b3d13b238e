import { useEffect, useRef } from 'preact/hooks';
import type { PlanId } from '../../../plan/ids.ts';
import { Split } from '../../parts/Split.tsx';
import { useApp } from '../../shell/useApp.ts';
import { usePlanWords } from '../../words/plan.ts';
import { NewPlan } from './NewPlan.tsx';
import { OrderScreen } from './OrderScreen.tsx';
import './Plan.css';
import { PlanList } from './PlanList.tsx';
import { PlanScreen } from './PlanScreen.tsx';
import { RestScreen } from './RestScreen.tsx';
import { SetScreen } from './SetScreen.tsx';
import { usePlanView } from './usePlanView.ts';

/** The Plan place: the plans; then a plan with one of its sets, its order of frames, or its rests. */
export function PlanPlace() {
  const { navigation, plans } = useApp();
  const { plan: say } = usePlanWords();
  const [id, ...detail] = navigation.at.value.path;
  const view = usePlanView((id ?? '') as PlanId);

  // What is open is remembered, the list being nothing open. After a start of the app the plan that
  // was left open comes back.
  const started = useRef(false);
  const shown = view?.plan.id;
  useEffect(() => {
    const left = plans.open.peek();
    if (shown !== undefined) plans.show(shown);
    else if (id === undefined && left !== null) {
      if (started.current) plans.show(null);
      else navigation.go('plan', left);
    }
    started.current = true;
  }, [id, shown, plans, navigation]);

  if (!view) {
    return (
      <Split list={<PlanList />} detail={id === 'new' ? <NewPlan /> : null} hint={say.chooseHint} />
    );
  }
  const set = detail[0] === 'set' && view.plan.sets.find((candidate) => candidate.id === detail[1]);
  return (
    <Split
      list={<PlanScreen key={view.plan.id} view={view} detail={detail} />}
      detail={
        set ? (
          <SetScreen key={set.id} view={view} set={set} />
        ) : detail[0] === 'order' ? (
          <OrderScreen view={view} />
        ) : detail[0] === 'rest' ? (
          <RestScreen view={view} />
        ) : null
      }
      hint={say.openHint}
    />
  );
}
