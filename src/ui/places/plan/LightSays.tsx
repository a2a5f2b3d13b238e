import type { Night } from '../../../light/night.ts';
import type { SwapAgainstFade } from '../../../plan/swapFade.ts';
import type { UtcMs } from '../../../science/units.ts';
import { Notice } from '../../parts/Notice.tsx';
import { usePlanWords } from '../../words/plan.ts';
import { orderWords } from './orderWords.ts';
import { siteTime } from './siteTime.ts';
import type { InLight } from './useEvening.ts';
import type { PlanView } from './usePlanView.ts';

/** When to start, how many sets fit, how sure that is, and whether swaps are too slow. */
export function LightSays({ view }: { readonly view: PlanView }) {
  const { plan } = usePlanWords();
  const { inLight: say } = plan;
  const { inLight } = view;
  switch (inLight.how) {
    case 'none':
      return null;
    case 'site-gone':
      return <Notice>{say.siteGone}</Notice>;
    case 'computing':
      return <p role="status">{say.computing}</p>;
    case 'failed':
      return <Notice>{say.failed}</Notice>;
    case 'no-light':
      return <Notice>{say.noLight}</Notice>;
    case 'ready':
      return <Ready view={view} ready={inLight} />;
    default:
      return inLight satisfies never;
  }
}

type ReadyLight = Extract<InLight, { how: 'ready' }>;

function Ready({ view, ready }: { readonly view: PlanView; readonly ready: ReadyLight }) {
  const words = usePlanWords();
  const { inLight: say } = words.plan;
  const { light, site, evening } = ready;
  const { best, startMs, sets, swap, within } = light;
  const off = sets.filter(({ beyond }) => beyond !== 0).length;
  const stated = view.plan.evening?.startMs !== null;
  const clock = siteTime(words, site, best.startMs);
  return (
    <>
      <p class="lead">{say.startsAt(siteTime(words, site, startMs))}</p>
      <p>
        {off === 0
          ? stated
            ? say.statedFits
            : say.fitsAll
          : stated
            ? `${say.statedMisses(off)} ${say.better(clock, best.fits)}`
            : say.missesLeast(off)}
      </p>
      <p class="hint">{say.width(words.format.number(within, 1))}</p>
      {isSunUp(evening.night, startMs) && <Notice>{say.sunUp}</Notice>}
      {swap && <SwapNotice view={view} ready={ready} swap={swap} />}
    </>
  );
}

const isSunUp = ({ bands }: Night, at: UtcMs): boolean =>
  bands.some(({ band, fromMs, toMs }) => band === 'day' && at >= fromMs && at < toMs);

function SwapNotice({
  view,
  ready: { site },
  swap,
}: {
  readonly view: PlanView;
  readonly ready: ReadyLight;
  readonly swap: SwapAgainstFade;
}) {
  const words = usePlanWords();
  const { format } = words;
  const { inLight: say } = words.plan;
  const orders = swap.orders.map((order) => orderWords(words, view, order));
  return (
    <Notice>
      {say.swapTitle(format.number(swap.least, 2), format.number(swap.most, 2))}{' '}
      {say.swapHelp([
        say.sideBySide,
        say.quicker(format.duration(swap.quickS)),
        ...(orders.length > 0 ? [say.otherOrder(orders.join(' / '))] : []),
        ...(swap.laterMs === null ? [] : [say.slower(siteTime(words, site, swap.laterMs))]),
      ])}
    </Notice>
  );
}
