import { DEFAULT_REST } from '../../../plan/newPlan.ts';
import type { Allowances, Rest, RestRule } from '../../../plan/plan.ts';
import type { Seconds } from '../../../science/units.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { Switch } from '../../parts/Switch.tsx';
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
        <RestFields view={view} />
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

function RestFields({ view: { plan } }: { readonly view: PlanView }) {
  const plans = usePlanDesk();
  const { plan: say, format, fault } = usePlanWords();
  const rule = plan.rest.kind === 'thumb' ? plan.rest.rule : null;
  const put = (rest: Rest): string | null => {
    const wrong = plans.change(plan.id, (before) => ({ ...before, rest }));
    return wrong && fault(wrong);
  };
  const change = (part: Partial<RestRule>): string | null =>
    put({ kind: 'thumb', rule: { ...DEFAULT_REST, ...rule, ...part } });
  return (
    <Disclosure
      label={say.rest}
      stated={
        rule
          ? say.restInShort(
              format.plain(rule.factor),
              format.duration(rule.offUpToS),
              format.duration(rule.longestS),
            )
          : say.restOff
      }
    >
      <Switch
        label={say.restOn}
        hint={say.restHint}
        on={rule !== null}
        onChange={(on) => void (on ? change({}) : put({ kind: 'none' }))}
      />
      {rule && (
        <>
          <NumberField
            label={say.factor}
            value={rule.factor}
            onCommit={(factor) => change({ factor })}
          />
          <NumberField
            label={say.offUpTo}
            unit={say.seconds}
            value={rule.offUpToS}
            onCommit={(value) => change({ offUpToS: value as Seconds })}
          />
          <NumberField
            label={say.longestRest}
            unit={say.seconds}
            value={rule.longestS}
            onCommit={(value) => change({ longestS: value as Seconds })}
          />
        </>
      )}
      <p class="hint">{say.commonPractice}</p>
    </Disclosure>
  );
}
