import type { Allowances } from '../../../plan/plan.ts';
import type { Seconds } from '../../../science/units.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { usePlanWords } from '../../words/plan.ts';
import { FrameList } from './FrameList.tsx';
import { orderWords } from './orderWords.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import type { PlanView } from './usePlanView.ts';
import { useRefusal } from './useRefusal.tsx';

/** The order of the frames: what each would cost, what it reckons with, and the frames themselves. */
export function OrderScreen({ view }: { readonly view: PlanView }) {
  const plans = usePlanDesk();
  const words = usePlanWords();
  const { plan: say, format } = words;
  const { plan } = view;
  const { refusal, done } = useRefusal();
  return (
    <Screen inner title={say.order}>
      <Choice
        label={say.chooseOrder}
        as="list"
        options={plans.orders(plan.id).map(({ order, swaps, wallS }) => ({
          value: order,
          label: orderWords(words, view, order),
          note: `${say.orderInShort(swaps, format.duration(wallS))}. ${say.orderNotes[order]}`,
        }))}
        value={plan.order}
        onChange={(order) => done(plans.setOrder(plan.id, order))}
      />
      {refusal}
      <div>
        <AllowanceFields view={view} />
      </div>
      <Section title={say.frames}>
        <FrameList view={view} />
      </Section>
    </Screen>
  );
}

function AllowanceFields({ view: { plan } }: { readonly view: PlanView }) {
  const plans = usePlanDesk();
  const { plan: say, format, fault } = usePlanWords();
  const { allowances } = plan;
  const { swapS, dialChangeS, settleS, writeS } = allowances;
  const field = (key: keyof Allowances, label: string, hint?: string) => (
    <NumberField
      label={label}
      unit={say.seconds}
      value={allowances[key]}
      {...(hint !== undefined && { hint })}
      // The plan is parsed whole: a time that is none is refused there.
      onCommit={(value) => {
        const wrong = plans.change(plan.id, (before) => ({
          ...before,
          allowances: { ...before.allowances, [key]: value as Seconds },
        }));
        return wrong && fault(wrong);
      }}
    />
  );
  return (
    <Disclosure
      label={say.allowances}
      stated={say.allowancesInShort(
        format.duration(swapS),
        format.duration(dialChangeS),
        format.duration(settleS),
        format.duration(writeS),
      )}
    >
      {field('swapS', say.swap)}
      {field('dialChangeS', say.dialChange)}
      {field('settleS', say.settle, say.settleHint)}
      {field('writeS', say.write)}
      <p class="hint">{say.commonPractice}</p>
    </Disclosure>
  );
}
