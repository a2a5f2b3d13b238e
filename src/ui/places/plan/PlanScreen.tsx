import { useState } from 'preact/hooks';
import { CAUSES } from '../../../plan/causes.ts';
import { moveSet } from '../../../plan/edit.ts';
import { swapCount } from '../../../plan/order.ts';
import { Button } from '../../parts/Button.tsx';
import { causeWords } from '../../parts/causeWords.ts';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Reorder } from '../../parts/Reorder.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { useApp } from '../../shell/useApp.ts';
import { usePlanWords } from '../../words/plan.ts';
import { useHeatWords } from '../../words/planHeat.ts';
import { useOrderWords } from '../../words/planOrder.ts';
import { About } from './About.tsx';
import { LightSection } from './LightSection.tsx';
import { orderWords } from './orderWords.ts';
import { Problems } from './Problems.tsx';
import { restWords } from './restWords.ts';
import { intentWords, SetCard } from './SetCard.tsx';
import { StartOuting } from './StartOuting.tsx';
import { TimelineLanes } from './TimelineLanes.tsx';
import { usePlanDesk } from './usePlanDesk.ts';
import type { PlanView } from './usePlanView.ts';
import { useRefusal } from './useRefusal.tsx';

interface Props {
  readonly view: PlanView;
  /** What stands open beside it on a wide screen. */
  readonly detail: readonly string[];
}

/** A plan: its shot list, its order, and what it stands on. */
export function PlanScreen({ view, detail }: Props) {
  const { navigation } = useApp();
  const plans = usePlanDesk();
  const words = useHeatWords();
  const { plan: say, heat, format } = words;
  const { inOrder } = useOrderWords();
  const { plan, prepared } = view;
  const { refusal, done } = useRefusal();
  const open = (...path: string[]) =>
    (detail.length > 0 ? navigation.replace : navigation.go)('plan', plan.id, ...path);
  return (
    <Screen
      inner
      title={plan.name}
      tag={plan.invented && <InventedTag />}
      foot={<StartOuting view={view} />}
    >
      <Problems view={view} set={null} />
      <ShotList view={view} current={detail[0] === 'set' ? detail[1] : undefined} open={open} />
      <LightSection view={view} />
      {prepared.frames.length > 0 && (
        <Section title={heat.timeline}>
          <TimelineLanes view={view} />
        </Section>
      )}
      <Section title={say.order}>
        <Row
          title={plan.arranged === null ? orderWords(words, view, plan.order) : inOrder.ownOrder}
          note={say.orderInShort(
            swapCount(prepared.frames),
            format.duration(prepared.timeline.wallS),
          )}
          current={detail[0] === 'order'}
          onPress={() => open('order')}
        />
        <Row
          title={heat.title}
          note={restWords(words, view)}
          current={detail[0] === 'rest'}
          onPress={() => open('rest')}
        />
      </Section>
      <Section title={say.about}>
        <About view={view} />
      </Section>
      {refusal}
      <div class="acts">
        <Button
          onPress={() => {
            const copied = plans.copy(plan.id, say.copyOf(plan.name.slice(0, 50)));
            if (done(copied)) navigation.replace('plan', copied);
          }}
        >
          {say.copyPlan}
        </Button>
        <Button
          onPress={() => {
            navigation.back();
            plans.remove(plan.id);
          }}
        >
          {say.deletePlan}
        </Button>
      </div>
    </Screen>
  );
}

/** The sets as cards; as short rows while their order is changed. */
function ShotList({
  view,
  current,
  open,
}: {
  readonly view: PlanView;
  readonly current: string | undefined;
  readonly open: (...path: string[]) => void;
}) {
  const plans = usePlanDesk();
  const words = usePlanWords();
  const { plan: say } = words;
  const [arranging, setArranging] = useState(false);
  const { plan } = view;
  const { refusal, done } = useRefusal();
  const missing = CAUSES.filter((cause) =>
    view.prepared.table.some(
      (table) =>
        table.kind === 'compared' &&
        table.others.some(({ differences }) => differences.sum.missing.includes(cause)),
    ),
  );
  const add = () => {
    const added = plans.addSet(plan.id);
    if (done(added) && added !== null) open('set', added);
  };
  return (
    <Section
      title={say.shotList}
      act={
        plan.sets.length > 1 && (
          <Button onPress={() => setArranging(!arranging)}>
            {arranging ? say.arranged : say.arrange}
          </Button>
        )
      }
    >
      {plan.sets.length === 0 && <EmptyHint>{say.noSet}</EmptyHint>}
      {arranging ? (
        <Reorder
          label={say.shotList}
          items={plan.sets.map((set) => {
            const name = intentWords(words, set);
            return {
              key: set.id,
              name,
              content: (
                <>
                  {name}
                  <span class="acts">
                    <Button
                      rank="quiet"
                      name={say.copyNamed(name)}
                      onPress={() => done(plans.copySet(plan.id, set.id))}
                    >
                      {say.copy}
                    </Button>
                    <Button
                      rank="quiet"
                      name={say.deleteNamed(name)}
                      onPress={() => plans.removeSet(plan.id, set.id)}
                    >
                      {say.delete}
                    </Button>
                  </span>
                </>
              ),
            };
          })}
          onMove={(from, to) => {
            const moved = plan.sets[from];
            if (moved) done(plans.change(plan.id, (before) => moveSet(before, moved.id, to)));
          }}
        />
      ) : (
        <ol class="set-cards">
          {plan.sets.map((set, index) => (
            <li key={set.id}>
              <SetCard
                view={view}
                set={set}
                place={index + 1}
                current={current === set.id}
                onOpen={() => open('set', set.id)}
              />
            </li>
          ))}
        </ol>
      )}
      {!arranging && missing.length > 0 && (
        <p class="hint">{say.knownOnly(causeWords(words, missing))}</p>
      )}
      {refusal}
      <div class="acts">
        <Button disabled={!plan.rigs.some((rig) => view.rig(rig))} onPress={add}>
          {say.addSet}
        </Button>
      </div>
    </Section>
  );
}
