import { type Allowances, MOUNTINGS, mountingOf } from '../../../plan/plan.ts';
import type { Seconds } from '../../../science/units.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { useOrderWords } from '../../words/planOrder.ts';
import { useOrderDesk } from './useOrder.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import type { PlanView } from './usePlanView.ts';

/** How the rigs stand. */
export function MountingChoice({ view: { plan } }: { readonly view: PlanView }) {
  const desk = useOrderDesk();
  const { inOrder: say } = useOrderWords();
  const mounting = mountingOf(plan);
  return (
    <div class="order-part">
      <Choice
        label={say.mounting}
        options={MOUNTINGS.map((value) => ({ value, label: say.mountings[value].label }))}
        value={mounting}
        onChange={(chosen) => desk.mount(plan.id, chosen)}
      />
      <p class="hint">{say.mountings[mounting].note}</p>
    </div>
  );
}

/** What hands and bodies take between exposures. */
export function AllowanceFields({ view: { plan } }: { readonly view: PlanView }) {
  const plans = usePlanDesk();
  const { plan: say, inOrder, format, fault } = useOrderWords();
  const { allowances } = plan;
  const { swapS, reframeS, dialChangeS, settleS, writeS } = allowances;
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
      stated={inOrder.allowancesInShort(
        format.duration(swapS),
        format.duration(reframeS),
        format.duration(dialChangeS),
        format.duration(settleS),
        format.duration(writeS),
      )}
    >
      {field('swapS', say.swap)}
      {field('reframeS', inOrder.reframe, inOrder.reframeHint)}
      {field('dialChangeS', say.dialChange)}
      {field('settleS', say.settle, say.settleHint)}
      {field('writeS', say.write)}
      <p class="hint">{say.commonPractice}</p>
    </Disclosure>
  );
}
