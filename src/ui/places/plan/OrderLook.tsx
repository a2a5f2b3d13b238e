import { turnsOf } from '../../../plan/order.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useOrderWords } from '../../words/planOrder.ts';
import { siteTime } from './siteTime.ts';
import { type OrderView, useOrderDesk } from './useOrder.ts';

/** Has the cheapest order looked for: begins, shows how far it is, ends, and says what came of it. */
export function OrderLook({ order }: { readonly order: OrderView }) {
  const desk = useOrderDesk();
  const words = useOrderWords();
  const { inOrder: say } = words;
  const { question, state, lightIs, view, current } = order;
  const { inLight } = view;
  if (!current) return null;
  const look = (label: string) => (
    <Button disabled={lightIs === 'computing'} onPress={() => desk.look(question)}>
      {label}
    </Button>
  );
  const turns = turnsOf(view.plan, current.frames).length;
  return (
    <div class="order-part">
      {lightIs === 'known' && question.light && 'site' in inLight && (
        <p class="hint">{say.startsAt(siteTime(words, inLight.site, question.light.startMs))}</p>
      )}
      {lightIs === 'unknown' && <p>{say.lightUnknown}</p>}
      {lightIs === 'computing' && <p>{say.lightComputing}</p>}
      {state.kind === 'looking' ? (
        <OrderProgress share={state.share} onCancel={() => desk.cancel()} />
      ) : state.kind === 'found' ? (
        !state.isWhole && <Notice acts={look(say.lookAgain)}>{say.ended}</Notice>
      ) : state.kind === 'refused' ? (
        <Notice urgent>{say.refusals[state.rule] ?? say.refused}</Notice>
      ) : state.kind === 'failed' ? (
        <Notice urgent acts={look(say.lookAgain)}>
          {say.failed}
        </Notice>
      ) : state.isOutdated ? (
        <Notice acts={look(say.lookAgain)}>{say.outdated}</Notice>
      ) : (
        <>
          {look(say.look)}
          <p class="hint">{say.lookHint(turns)}</p>
        </>
      )}
    </div>
  );
}

function OrderProgress({
  share,
  onCancel,
}: {
  readonly share: number;
  readonly onCancel: () => void;
}) {
  const { inOrder: say, format } = useOrderWords();
  const percent = Math.floor(100 * share);
  const words = say.looking(format.number(percent, 0));
  return (
    <div class="order-progress">
      <p>{words}</p>
      <div
        class="bar"
        role="progressbar"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={percent}
        aria-label={words}
      >
        <div style={{ width: `${percent}%` }} />
      </div>
      <Button onPress={onCancel}>{say.cancel}</Button>
    </div>
  );
}
