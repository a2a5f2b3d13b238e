import { weightsAt } from '../../../plan/orderChoices.ts';
import type { CostParts } from '../../../plan/orderCost.ts';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { Table } from '../../parts/Table.tsx';
import { useOrderWords } from '../../words/planOrder.ts';
import { intentWords } from './SetCard.tsx';
import type { OrderView } from './useOrder.ts';

type Part = Exclude<keyof CostParts, 'total'>;

/** The computed order's cost, weighed as the plan weighs: a point may have its swaps at another worth. */
export function computedCost({ point, view }: OrderView): CostParts | null {
  if (!point) return null;
  const { cost, swaps } = point.costed;
  const weighed = view.plan.swapWorth * swaps;
  return { ...cost, swaps: weighed, total: cost.total - cost.swaps + weighed };
}

/** What the order that stands costs, part by part, beside the computed one. */
export function OrderCosts({ order }: { readonly order: OrderView }) {
  const words = useOrderWords();
  const { inOrder: say, format } = words;
  const { current, view } = order;
  if (!current) return null;
  const computed = computedCost(order);
  const weights = weightsAt(view.plan.swapWorth);
  const worths: Readonly<Record<Part, number>> = {
    fade: weights.fadePerStop,
    heat: weights.heatPerStop,
    outside: weights.outsidePerMinute,
    swaps: weights.perSwap,
    wall: weights.wallPerMinute,
  };
  const parts = Object.keys(worths) as Part[];
  const figure = (value: number) => format.number(value, 2);
  const cells = (of: keyof CostParts, label: string) => ({
    key: of,
    cells: {
      part: label,
      own: figure(current.cost[of]),
      ...(computed && { computed: figure(computed[of]) }),
    },
  });
  return (
    <Disclosure
      label={say.costs}
      stated={
        computed
          ? say.costsAgainst(figure(current.cost.total), figure(computed.total))
          : say.costsInShort(figure(current.cost.total))
      }
    >
      <p class="hint">{say.costsAre}</p>
      <Table
        caption={say.costs}
        stack="never"
        columns={[
          { key: 'part', head: say.part },
          { key: 'own', head: say.thisOrder, figures: true },
          ...(computed ? [{ key: 'computed', head: say.computedShort, figures: true }] : []),
        ]}
        rows={parts.map((part) => cells(part, say.parts[part](format.plain(worths[part]))))}
        foot={cells('total', say.sum)}
      />
      {current.outside.map(({ set, minutes }) => (
        <p key={set} class="hint">
          {say.outsideBy(intentWords(words, view.set(set)), format.number(minutes, 1))}
        </p>
      ))}
    </Disclosure>
  );
}
