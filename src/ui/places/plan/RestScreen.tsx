import { useMemo } from 'preact/hooks';
import {
  inRestWay,
  type RestOutcome,
  type RestWay,
  restOutcomes,
  restWayOf,
} from '../../../plan/restWays.ts';
import { isRefusal, type Refusal } from '../../../science/refusal.ts';
import { duration, type Seconds } from '../../../science/units.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { type HeatWords, useHeatWords } from '../../words/planHeat.ts';
import './heatLines.css';
import { heatRange, pairHeatWords, signedHeat } from './heatWords.ts';
import { LimitFields, RuleFields, WarmUpSays } from './RestFields.tsx';
import { RestList } from './RestList.tsx';
import { intentWords } from './SetCard.tsx';
import { usePlanDesk } from './usePlanDesk.ts';
import { type PlanView, preparedAs } from './usePlanView.ts';
import { useRefusal } from './useRefusal.tsx';

/** Why a way cannot be gone. */
const whyNot = ({ heat }: HeatWords, { rule }: Refusal): string =>
  rule === 'hardly-warms' ? heat.hardlyWarms : heat.noFrames;

interface WayProps {
  readonly way: RestWay;
  readonly outcome: RestOutcome;
  /** How long the list takes without any rest. */
  readonly bareS: Seconds | null;
}

/** A way in words, with what it leaves and what it costs in figures. */
function Way({ way, outcome: { pair, firstToLast, restS, wallS }, bareS }: WayProps) {
  const words = useHeatWords();
  const { format, heat: say } = words;
  const wall = format.duration(wallS);
  return (
    <>
      {say.ways[way]}
      <span class="way">
        <span>{say.wayNotes[way]}</span>
        {pair && <span>{say.pairLeft(signedHeat(words, pair.usual), heatRange(words, pair))}</span>}
        {firstToLast && (
          <span>
            {say.driftLeft(signedHeat(words, firstToLast.usual), heatRange(words, firstToLast))}
          </span>
        )}
        <span>
          {way === 'warm-up' && bareS !== null
            ? say.costWarm(wall, format.duration(duration(Math.max(0, wallS - bareS))))
            : say.cost(format.duration(restS), wall)}
        </span>
      </span>
    </>
  );
}

/** What is done about heat: each way with what it leaves and costs, then the one that is chosen. */
export function RestScreen({ view }: { readonly view: PlanView }) {
  const plans = usePlanDesk();
  const words = useHeatWords();
  const { heat: say } = words;
  const { plan, gear, prepared, inLight } = view;
  const { refusal, done } = useRefusal();
  const way = restWayOf(plan);
  const evening = inLight.how === 'ready' ? inLight.evening : null;
  const ways = useMemo(
    () => restOutcomes(plan, gear, prepared.frames, (changed) => preparedAs(view, changed)),
    [plan, gear, prepared, evening],
  );
  const none = ways.find((each) => each.way === 'none')?.outcome;
  const bareS = none && !isRefusal(none) ? none.wallS : null;
  const choose = (to: RestWay) =>
    done(
      plans.change(plan.id, (before) => {
        const changed = inRestWay(before, gear, prepared.frames, to);
        return isRefusal(changed) ? before : changed;
      }),
    );
  return (
    <Screen inner title={say.title}>
      <p class="hint">{say.unit}</p>
      <Choice
        label={say.chooseWay}
        as="list"
        options={ways.flatMap(({ way: each, outcome }) =>
          isRefusal(outcome)
            ? []
            : [
                {
                  value: each,
                  label: <Way way={each} outcome={outcome} bareS={bareS} />,
                },
              ],
        )}
        value={way}
        onChange={choose}
      />
      {ways.map(
        ({ way: each, outcome }) =>
          isRefusal(outcome) && (
            <p key={each} class="hint">
              {say.ways[each]}: {whyNot(words, outcome)}
            </p>
          ),
      )}
      {refusal}
      {way === 'limit' && <LimitFields view={view} />}
      {way === 'thumb' && <RuleFields view={view} />}
      {way === 'warm-up' && <WarmUpSays view={view} />}
      {way === 'limit' && <RestList view={view} />}
      <Pairs view={view} />
    </Screen>
  );
}

/** The heat line of each pair, set by set. */
function Pairs({ view }: { readonly view: PlanView }) {
  const words = useHeatWords();
  const { heat: say, plan } = words;
  const { pairs } = view.heat;
  return (
    <Section title={say.pairs}>
      {pairs.length === 0 ? (
        <p>{say.noPair}</p>
      ) : (
        <ul class="heat-lines">
          {pairs.map(({ set, other, withBodies }) => (
            <li key={`${set}/${other}`}>
              <span class="hint">
                {plan.setAt(
                  view.plan.sets.findIndex(({ id }) => id === set) + 1,
                  intentWords(words, view.set(set)),
                )}
              </span>
              <span>{pairHeatWords(words, view, set, other)}</span>
              <span class="hint">{say.withBodies(heatRange(words, withBodies))}</span>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
