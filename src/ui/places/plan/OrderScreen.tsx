import { useState } from 'preact/hooks';
import { arrange } from '../../../plan/edit.ts';
import { turnsOf } from '../../../plan/order.ts';
import { isOfAnotherList } from '../../../plan/turnMoves.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { useOrderWords } from '../../words/planOrder.ts';
import { FrameList } from './FrameList.tsx';
import './Order.css';
import { HandCost, OrderByHand } from './OrderByHand.tsx';
import { OrderChoice } from './OrderChoice.tsx';
import { OrderCosts } from './OrderCosts.tsx';
import { OrderLook } from './OrderLook.tsx';
import { OrderPairs } from './OrderPairs.tsx';
import { AllowanceFields, MountingChoice } from './OrderStand.tsx';
import { OrderTrade } from './OrderTrade.tsx';
import { type OrderView, useOrder, useOrderDesk } from './useOrder.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import type { PlanView } from './usePlanView.ts';

/**
 * The order of the frames: how the rigs stand, the named orders beside the computed one, what lies
 * between few swaps and fairness, what is left of each pair, and the turns by hand.
 */
export function OrderScreen({ view }: { readonly view: PlanView }) {
  const { plan: say, inOrder } = useOrderWords();
  const order = useOrder(view);
  const [arranging, setArranging] = useState(false);
  return (
    <Screen inner title={say.order} foot={arranging && <HandCost order={order} />}>
      <AnotherList order={order} />
      <MountingChoice view={view} />
      <Section title={inOrder.orders}>
        <p class="hint">{inOrder.figuresAre}</p>
        <OrderChoice order={order} />
        <OrderLook order={order} />
        <div>
          <OrderCosts order={order} />
          <AllowanceFields view={view} />
        </div>
      </Section>
      <OrderTrade order={order} />
      {order.lightIs !== 'computing' && <OrderPairs order={order} />}
      <OrderByHand order={order} arranging={arranging} onArrange={setArranging} />
      <Section title={say.frames}>
        <FrameList view={view} />
      </Section>
    </Screen>
  );
}

/** Says that the plan's own arrangement no longer fits its list. */
function AnotherList({ order: { view, question, lightIs } }: { readonly order: OrderView }) {
  const desk = useOrderDesk();
  const plans = usePlanDesk();
  const { inOrder: say } = useOrderWords();
  const { plan, prepared } = view;
  if (!isOfAnotherList(plan, prepared.frames)) return null;
  return (
    <Notice
      acts={
        <>
          <Button disabled={lightIs === 'computing'} onPress={() => desk.look(question)}>
            {say.lookAgain}
          </Button>
          <Button
            onPress={() =>
              void plans.change(plan.id, (before) =>
                arrange(before, turnsOf(before, prepared.frames)),
              )
            }
          >
            {say.keepIt}
          </Button>
        </>
      }
    >
      {say.anotherList}
    </Notice>
  );
}
