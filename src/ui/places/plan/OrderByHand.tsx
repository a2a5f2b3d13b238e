import { useState } from 'preact/hooks';
import { arrange, lockSet } from '../../../plan/edit.ts';
import { turnsOf } from '../../../plan/order.ts';
import { mountingOf, type TurnPlace } from '../../../plan/plan.ts';
import { comesBack, moveTurn, sameTurns } from '../../../plan/turnMoves.ts';
import { Button } from '../../parts/Button.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Reorder } from '../../parts/Reorder.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { Section } from '../../parts/Section.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { useOrderWords } from '../../words/planOrder.ts';
import { computedCost } from './OrderCosts.tsx';
import { intentWords } from './SetCard.tsx';
import type { OrderView } from './useOrder.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import { useRefusal } from './useRefusal.tsx';

/** A turn in the list, with how many of its set and rig came before it. */
interface Listed {
  readonly turn: TurnPlace;
  readonly number: number;
}

function listed(turns: readonly TurnPlace[]): readonly Listed[] {
  const seen = new Map<string, number>();
  return turns.map((turn) => {
    const key = `${turn.set}/${turn.rig}`;
    const number = (seen.get(key) ?? 0) + 1;
    seen.set(key, number);
    return { turn, number };
  });
}

/** The turns, put in order by hand, and the sets that are held in their places. */
export function OrderByHand({
  order,
  arranging,
  onArrange,
}: {
  readonly order: OrderView;
  readonly arranging: boolean;
  readonly onArrange: (on: boolean) => void;
}) {
  const plans = usePlanDesk();
  const words = useOrderWords();
  const { inOrder: say } = words;
  const { view } = order;
  const { plan, prepared } = view;
  const { refusal, done } = useRefusal();
  const [wrong, setWrong] = useState<string | null>(null);
  const turns = turnsOf(plan, prepared.frames);
  const move = (from: number, to: number): void => {
    const held = turns[from];
    if (!held) return;
    if (plan.locked.includes(held.set)) {
      setWrong(say.isHeld(intentWords(words, view.set(held.set))));
      return;
    }
    const moved = moveTurn(turns, plan.locked, from, to);
    if (mountingOf(plan) === 'one-rig-at-a-time' && comesBack(moved)) {
      setWrong(say.wouldComeBack);
      return;
    }
    setWrong(null);
    if (!sameTurns(moved, turns)) done(plans.change(plan.id, (before) => arrange(before, moved)));
  };
  return (
    <Section
      title={say.turns}
      act={
        turns.length > 1 && (
          <Button onPress={() => onArrange(!arranging)}>{arranging ? say.done : say.byHand}</Button>
        )
      }
    >
      <HoldFields order={order} />
      {wrong && <Notice urgent>{wrong}</Notice>}
      {refusal}
      {arranging && (
        <Reorder
          label={say.turns}
          items={listed(turns).map(({ turn, number }) => {
            const rig = turn.rig === null ? null : view.rig(turn.rig);
            const set = intentWords(words, view.set(turn.set));
            return {
              key: `${turn.set}/${turn.rig}/${number}`,
              name: say.turnOf(rig?.rig.letter ?? say.allRigs, set, number),
              content: (
                <span class="order-turn">
                  <span>
                    {rig ? <RigSign letter={rig.rig.letter} /> : say.allRigs} {set}
                  </span>
                  <span class="hint">
                    {say.turnNumber(number)}
                    {plan.locked.includes(turn.set) && `, ${say.held}`}
                  </span>
                </span>
              ),
            };
          })}
          onMove={move}
        />
      )}
    </Section>
  );
}

function HoldFields({ order: { view } }: { readonly order: OrderView }) {
  const plans = usePlanDesk();
  const words = useOrderWords();
  const { inOrder: say } = words;
  const { plan, prepared } = view;
  const { refusal, done } = useRefusal();
  const own = new Set(turnsOf(plan, prepared.frames).map(({ set }) => set));
  const sets = plan.sets.filter(({ id }) => own.has(id));
  if (sets.length === 0) return null;
  const held = sets.filter(({ id }) => plan.locked.includes(id));
  return (
    <Disclosure
      label={say.holdSets}
      stated={held.map((set) => intentWords(words, set)).join(', ') || say.noneHeld}
    >
      <p class="hint">{say.holdHint}</p>
      {sets.map((set) => (
        <Switch
          key={set.id}
          label={intentWords(words, set)}
          on={plan.locked.includes(set.id)}
          onChange={(on) => done(plans.change(plan.id, (before) => lockSet(before, set.id, on)))}
        />
      ))}
      {refusal}
    </Disclosure>
  );
}

/** What the order that stands costs, and by how much more than the computed one; at the foot. */
export function HandCost({ order }: { readonly order: OrderView }) {
  const { inOrder: say, format } = useOrderWords();
  const { current } = order;
  if (!current) return null;
  const computed = computedCost(order);
  const more = computed ? current.cost.total - computed.total : null;
  const figure = format.number(Math.abs(more ?? 0), 2);
  return (
    <p class="hand-cost" role="status">
      {say.handCost(
        format.number(current.cost.total, 2),
        say.swapsOf(current.swaps),
        format.duration(current.wallS),
      )}{' '}
      {more === null
        ? say.handAlone
        : figure === format.number(0, 2)
          ? say.handSame
          : say.handAgainst(`${more > 0 ? '+' : '\u2212'}${figure}`)}
    </p>
  );
}
