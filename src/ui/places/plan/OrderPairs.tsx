import type { PairLeft } from '../../../plan/orderCost.ts';
import type { Stops } from '../../../science/units.ts';
import { RigSign } from '../../parts/RigSign.tsx';
import { Section } from '../../parts/Section.tsx';
import { useOrderWords } from '../../words/planOrder.ts';
import { intentWords } from './SetCard.tsx';
import type { OrderView } from './useOrder.ts';
import type { PlanView } from './usePlanView.ts';

/** What the order that stands leaves of each pair, set by set. */
export function OrderPairs({ order: { current, view } }: { readonly order: OrderView }) {
  const words = useOrderWords();
  const { inOrder: say } = words;
  const pairs = current?.pairs ?? [];
  const sets = [...new Set(pairs.map(({ set }) => set))];
  return (
    <Section title={say.left}>
      {pairs.length === 0 ? (
        <p>{say.noPair}</p>
      ) : (
        <>
          <p class="hint">{say.leftIs}</p>
          <ul class="order-left">
            {sets.map((set) => (
              <li key={set}>
                <h3>{intentWords(words, view.set(set))}</h3>
                <ul>
                  {pairs
                    .filter((pair) => pair.set === set)
                    .map((pair) => (
                      <li key={pair.other}>
                        <PairLine view={view} pair={pair} />
                      </li>
                    ))}
                </ul>
              </li>
            ))}
          </ul>
        </>
      )}
    </Section>
  );
}

function PairLine({
  view,
  pair: { reference, other, fade, heat },
}: {
  readonly view: PlanView;
  readonly pair: PairLeft;
}) {
  const { inOrder: say, format } = useOrderWords();
  const [one, two] = [view.rig(reference), view.rig(other)];
  if (!one || !two) return null;
  const stops = (value: number) => format.stopsFine(value as Stops);
  const size = (value: number) => format.number(Math.abs(value), 2);
  const isZero = (value: number) => size(value) === size(0);
  return (
    <>
      <p class="pair">
        <RigSign letter={two.rig.letter} /> – <RigSign letter={one.rig.letter} />
        <span>
          {fade
            ? say.fadeLeft(stops(fade.whole), stops(fade.linear), stops(fade.curved))
            : say.fadeUnknown}{' '}
          {say.heatLeft(stops(heat))}
        </span>
      </p>
      <p class="hint">
        {say.means(
          two.body.name,
          fade === null
            ? null
            : isZero(fade.whole)
              ? say.sameLight
              : say.light(size(fade.whole), fade.whole > 0),
          isZero(heat) ? say.sameDark : say.dark(size(heat), heat > 0),
        )}
      </p>
    </>
  );
}
