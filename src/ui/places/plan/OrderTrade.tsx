import { type TradePoint, unfairness } from '../../../plan/orderTrade.ts';
import { Button } from '../../parts/Button.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { Section } from '../../parts/Section.tsx';
import { Table } from '../../parts/Table.tsx';
import { useOrderWords } from '../../words/planOrder.ts';
import { type OrderView, useOrderDesk } from './useOrder.ts';

/** Between 'fewest swaps' and 'fairest': the orders found as a small curve, and the one looked at. */
export function OrderTrade({ order }: { readonly order: OrderView }) {
  const desk = useOrderDesk();
  const { inOrder: say, format } = useOrderWords();
  const { points, point, lookAt, isTaken, view } = order;
  const fairest = points.at(-1);
  if (!point || !fairest) return null;
  const place = points.indexOf(point);
  const step = (by: number) => {
    const next = points[place + by];
    if (next) lookAt(next);
  };
  const unfair = (of: TradePoint) => format.number(unfairness(of.costed), 2);
  const swaps = (of: TradePoint) => say.swapsOf(of.costed.swaps);
  return (
    <Section title={say.trade}>
      {points.length === 1 ? (
        <p>{say.nothingToTrade(swaps(point))}</p>
      ) : (
        <div class="order-part">
          <TradeCurve points={points} place={place} onLook={lookAt} />
          <div class="trade-steps">
            <Button disabled={place === 0} rapid onPress={() => step(-1)}>
              {say.fewer}
            </Button>
            <Button disabled={place === points.length - 1} rapid onPress={() => step(1)}>
              {say.fairer}
            </Button>
          </div>
          <p class="trade-says">
            <strong>
              {place === 0 ? say.fewest : place === points.length - 1 ? say.fairest : say.between}
            </strong>
            {say.tradeOf(swaps(point), unfair(point), format.duration(point.costed.wallS))}{' '}
            {point !== fairest &&
              say.againstFairest(
                say.swapsOf(fairest.costed.swaps - point.costed.swaps),
                format.number(unfairness(point.costed) - unfairness(fairest.costed), 2),
              )}
          </p>
        </div>
      )}
      {isTaken ? (
        <p>{say.taken}</p>
      ) : (
        <Button rank="main" onPress={() => desk.take(view.plan.id, point)}>
          {say.takeIt}
        </Button>
      )}
      <p class="hint">{say.tradeIs}</p>
      {points.length > 1 && (
        <Disclosure label={say.tradeTable} stated={say.tradeTableInShort(points.length)}>
          <Table
            caption={say.trade}
            stack="never"
            columns={[
              { key: 'swaps', head: say.columns.swaps },
              { key: 'unfair', head: say.columns.unfair, figures: true },
              { key: 'time', head: say.columns.time, figures: true },
            ]}
            rows={points.map((each) => ({
              key: String(each.perSwap),
              cells: {
                swaps: String(each.costed.swaps),
                unfair: unfair(each),
                time: format.duration(each.costed.wallS),
              },
            }))}
          />
        </Disclosure>
      )}
    </Section>
  );
}

/** A part of the drawing kept free around the points, so that none stands on its frame. */
const MARGIN = 8;

/** Where a value lies between two others, in percent of the drawing. */
const percentOf = (value: number, least: number, most: number): number =>
  most > least ? MARGIN + ((100 - 2 * MARGIN) * (value - least)) / (most - least) : 50;

const KEYS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
};

/** Swaps to the right, unfairness upwards; moved along by finger or by keys. */
function TradeCurve({
  points,
  place,
  onLook,
}: {
  readonly points: readonly TradePoint[];
  readonly place: number;
  readonly onLook: (point: TradePoint) => void;
}) {
  const { inOrder: say, format } = useOrderWords();
  const swaps = points.map(({ costed }) => costed.swaps);
  const unfair = points.map(({ costed }) => unfairness(costed));
  const [leastSwaps, mostSwaps] = [Math.min(...swaps), Math.max(...swaps)];
  const [leastUnfair, mostUnfair] = [Math.min(...unfair), Math.max(...unfair)];
  const spots = points.map((_, index) => ({
    x: percentOf(swaps[index] ?? 0, leastSwaps, mostSwaps),
    y: 100 - percentOf(unfair[index] ?? 0, leastUnfair, mostUnfair),
  }));
  const at = spots[place] ?? { x: 0, y: 0 };
  const reach = (event: PointerEvent & { currentTarget: Element }): void => {
    const { left, width } = event.currentTarget.getBoundingClientRect();
    const x = (100 * (event.clientX - left)) / width;
    const away = spots.map((spot) => Math.abs(spot.x - x));
    const nearest = points[away.indexOf(Math.min(...away))];
    if (nearest) onLook(nearest);
  };
  const press = (event: KeyboardEvent): void => {
    const by = KEYS[event.key];
    if (by === undefined) return;
    event.preventDefault();
    const next = points[Math.max(0, Math.min(points.length - 1, place + by))];
    if (next) onLook(next);
  };
  return (
    <div class="trade">
      <p class="hint">{say.tradeAxis}</p>
      <div class="trade-scale" aria-hidden="true">
        <span>{format.number(mostUnfair, 2)}</span>
        <span>{format.number(leastUnfair, 2)}</span>
      </div>
      <div
        class="trade-plot"
        role="slider"
        tabIndex={0}
        aria-label={say.trade}
        aria-valuemin={1}
        aria-valuemax={points.length}
        aria-valuenow={place + 1}
        aria-valuetext={say.point(
          say.swapsOf(swaps[place] ?? 0),
          format.number(unfair[place] ?? 0, 2),
        )}
        onKeyDown={press}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          reach(event);
        }}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId)) reach(event);
        }}
      >
        <svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
          <path class="drop" d={`M${at.x} ${at.y}V100M${at.x} ${at.y}H0`} />
          <polyline points={spots.map(({ x, y }) => `${x},${y}`).join(' ')} />
        </svg>
        {spots.map(({ x, y }, index) => (
          <span
            key={points[index]?.perSwap}
            class={index === place ? 'spot chosen' : 'spot'}
            style={{ left: `${x}%`, top: `${y}%` }}
            aria-hidden="true"
          />
        ))}
      </div>
      <div class="trade-foot" aria-hidden="true">
        <span>{say.swapsOf(leastSwaps)}</span>
        <span>{say.swapsOf(mostSwaps)}</span>
      </div>
    </div>
  );
}
