import { DEFAULT_HEAT_LIMIT, DEFAULT_REST } from '../../../plan/newPlan.ts';
import type { HeatLimit, Rest, RestRule } from '../../../plan/plan.ts';
import { restOwed } from '../../../plan/rest.ts';
import { rhythmsOf } from '../../../plan/rhythm.ts';
import { warmUp, warmUpOf } from '../../../plan/warmUp.ts';
import { isRefusal } from '../../../science/refusal.ts';
import type { SnrStops } from '../../../science/sensorUnits.ts';
import { duration, type Ratio, type Seconds } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Section } from '../../parts/Section.tsx';
import { useHeatWords } from '../../words/planHeat.ts';
import './heatLines.css';
import { heatFigure } from './heatWords.ts';
import { rigWords } from './sentences.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import type { PlanView } from './usePlanView.ts';

interface Props {
  readonly view: PlanView;
}

/** Puts another way of resting, or the same with another figure; the fault in words if it is none. */
function usePutRest({ plan }: PlanView): (rest: Rest) => string | null {
  const plans = usePlanDesk();
  const { fault } = useHeatWords();
  return (rest) => {
    const wrong = plans.change(plan.id, (before) => ({ ...before, rest }));
    return wrong && fault(wrong);
  };
}

/** The limit on heat. */
export function LimitFields({ view }: Props) {
  const { heat: say, plan } = useHeatWords();
  const put = usePutRest(view);
  const limit = view.plan.rest.kind === 'limit' ? view.plan.rest.limit : DEFAULT_HEAT_LIMIT;
  const change = (part: Partial<HeatLimit>) => put({ kind: 'limit', limit: { ...limit, ...part } });
  return (
    <Section title={say.limit}>
      <div class="fields">
        <NumberField
          label={say.tolerated}
          hint={say.toleratedHint}
          unit={plan.stop}
          value={limit.tolerated}
          onCommit={(value) => change({ tolerated: value as SnrStops })}
        />
        <NumberField
          label={say.unknownRatio}
          hint={say.unknownRatioHint}
          unit={say.times}
          value={limit.unknownRatio}
          onCommit={(value) => change({ unknownRatio: value as Ratio })}
        />
        <NumberField
          label={say.longest}
          hint={say.longestHint}
          unit={plan.seconds}
          value={limit.longestS}
          onCommit={(value) => change({ longestS: value as Seconds })}
        />
      </div>
    </Section>
  );
}

/** The rule of thumb, and what it leaves at the longest exposure of the list. */
export function RuleFields({ view }: Props) {
  const { heat: say, plan } = useHeatWords();
  const put = usePutRest(view);
  const rule = view.plan.rest.kind === 'thumb' ? view.plan.rest.rule : DEFAULT_REST;
  const change = (part: Partial<RestRule>) => put({ kind: 'thumb', rule: { ...rule, ...part } });
  return (
    <Section title={say.rule}>
      <Rhythms view={view} rule={rule} />
      <p class="hint">{say.notRested}</p>
      <div class="fields">
        <NumberField
          label={say.factor}
          value={rule.factor}
          onCommit={(factor) => change({ factor })}
        />
        <NumberField
          label={say.offUpTo}
          unit={plan.seconds}
          value={rule.offUpToS}
          onCommit={(value) => change({ offUpToS: value as Seconds })}
        />
        <NumberField
          label={say.longest}
          unit={plan.seconds}
          value={rule.longestS}
          onCommit={(value) => change({ longestS: value as Seconds })}
        />
      </div>
      <p class="hint">{plan.commonPractice}</p>
    </Section>
  );
}

function Rhythms({ view, rule }: Props & { readonly rule: RestRule }) {
  const words = useHeatWords();
  const { format, heat: say } = words;
  const { plan, gear, prepared } = view;
  return (
    <ul class="heat-lines">
      {rhythmsOf(rule, gear, plan.sets, prepared.frames).map(({ rig, t, rest, leaves }) => {
        const [name, time, heat] = [
          rigWords(words, view, rig),
          format.duration(t),
          heatFigure(words, leaves),
        ];
        return (
          <li key={rig}>
            {rest > 0
              ? say.thumbLeaves(name, time, format.duration(rest), heat)
              : say.thumbNone(name, time, heat)}
          </li>
        );
      })}
    </ul>
  );
}

/** What the warm-up is, and whether it still fits the list. */
export function WarmUpSays({ view }: Props) {
  const plans = usePlanDesk();
  const { format, heat: say } = useHeatWords();
  const { plan, gear, prepared } = view;
  const series = warmUpOf(plan);
  const rule = plan.rest.kind === 'thumb' ? plan.rest.rule : DEFAULT_REST;
  const own = series ? prepared.frames.filter(({ set }) => set === series.id) : [];
  const longest = duration(Math.max(0, ...own.map(({ exact }) => exact.t)));
  const renewed = warmUp(plan, gear, prepared.frames);
  const stale = !isRefusal(renewed) && JSON.stringify(renewed) !== JSON.stringify(plan);
  return (
    <Section title={say.warmUp}>
      <p>
        {say.warmUpIs(
          series?.repeats ?? 0,
          format.duration(longest),
          format.duration(restOwed(rule, longest, duration(0))),
        )}
      </p>
      {stale && (
        <Notice
          acts={
            <Button onPress={() => void plans.change(plan.id, () => renewed)}>
              {say.warmUpRenew}
            </Button>
          }
        >
          {say.warmUpStale}
        </Notice>
      )}
      <RuleFields view={view} />
    </Section>
  );
}
