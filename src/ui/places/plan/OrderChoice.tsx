import { useId } from 'preact/hooks';
import { changeOrder } from '../../../plan/edit.ts';
import type { CostedOrder } from '../../../plan/orderCost.ts';
import type { TradePoint } from '../../../plan/orderTrade.ts';
import { ORDERS, type OrderName } from '../../../plan/plan.ts';
import { type OrderWords, useOrderWords } from '../../words/planOrder.ts';
import { written } from './orderFigures.ts';
import { orderWords } from './orderWords.ts';
import { type OrderView, useOrderDesk } from './useOrder.ts';
import type { PlanView } from './usePlanView.ts';

/** How many passes the sets of a plan would have in an order. */
function passesIn({ inOrder }: OrderWords, { plan }: PlanView, order: OrderName): string {
  const passes = new Set(
    changeOrder(plan, order).sets.flatMap((set) =>
      set.kind === 'light' || set.kind === 'flat' ? [set.passes] : [],
    ),
  );
  const [one] = passes;
  return passes.size === 1 ? inOrder.passes(String(one)) : inOrder.ownPasses;
}

/** Whether no order is cheaper than a found one, or what is known instead. */
export const howFound = ({ inOrder, format }: OrderWords, point: TradePoint): string =>
  point.proven ? inOrder.proven : inOrder.nearest(format.number(point.least, 2));

/** The orders to choose from, each with what it leaves and costs: the named ones, and the computed. */
export function OrderChoice({ order }: { readonly order: OrderView }) {
  const desk = useOrderDesk();
  const words = useOrderWords();
  const { plan: say, inOrder } = words;
  const { view, named, current, point, isTaken, lightIs } = order;
  const { plan } = view;
  const name = useId();
  return (
    <fieldset class="orders">
      <legend class="heard">{inOrder.choose}</legend>
      {ORDERS.map((each) => {
        const isChosen = plan.arranged === null && plan.order === each;
        return (
          <OrderRow
            key={each}
            group={name}
            label={orderWords(words, view, each)}
            hint={passesIn(words, view, each)}
            note={isChosen ? say.orderNotes[each] : null}
            costed={lightIs === 'computing' ? null : (named.get(each) ?? null)}
            isChosen={isChosen}
            onChoose={() => desk.choose(plan.id, each)}
          />
        );
      })}
      {plan.arranged !== null && !isTaken && (
        <OrderRow
          group={name}
          label={inOrder.ownOrder}
          hint={null}
          note={inOrder.ownNote}
          costed={current}
          isChosen
          onChoose={() => {}}
        />
      )}
      {point && (
        <OrderRow
          group={name}
          label={inOrder.computed}
          hint={null}
          note={howFound(words, point)}
          costed={point.costed}
          isChosen={isTaken}
          onChoose={() => desk.take(plan.id, point)}
        />
      )}
    </fieldset>
  );
}

function OrderRow({
  group,
  label,
  hint,
  note,
  costed,
  isChosen,
  onChoose,
}: {
  /** The name that the rows share. */
  readonly group: string;
  readonly label: string;
  readonly hint: string | null;
  readonly note: string | null;
  /** Null while it is worked out. */
  readonly costed: CostedOrder | null;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
}) {
  const words = useOrderWords();
  const { inOrder: say } = words;
  const figures = costed && written(words, costed);
  const figure = (value: string | undefined, of: string) => (
    <span class="order-figure">
      <span class="is">{value ?? '…'} </span>
      <span class="of">{of} </span>
    </span>
  );
  return (
    <label class="order-row">
      <input type="radio" name={group} checked={isChosen} onChange={onChoose} />
      <span class="name">
        <span class="word">{label} </span>
        {hint && <span class="hint">{hint} </span>}
      </span>
      <span class="order-figures">
        {figure(figures?.fade, say.fade)}
        {figure(figures?.heat, say.heat)}
        {figure(figures ? String(figures.swaps) : undefined, say.swaps(figures?.swaps ?? 0))}
        {figure(figures?.time, say.time)}
      </span>
      {note && <span class="hint note">{note}</span>}
    </label>
  );
}
