import { DEFAULT_PASSES } from '../../../plan/passes.ts';
import type { Framing, PlanSet, SetKind } from '../../../plan/plan.ts';
import type { Seconds, Stops } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { usePlanWords } from '../../words/plan.ts';
import { Dials } from './Dials.tsx';
import { HoldFields } from './HoldFields.tsx';
import { options } from './options.ts';
import { PairDetail } from './PairDetail.tsx';
import { Problems } from './Problems.tsx';
import { RigChoice } from './RigChoice.tsx';
import { RigRows } from './RigRows.tsx';
import { intentWords } from './SetCard.tsx';
import { RightAt, SetLight } from './SetLight.tsx';
import { usePlanDesk } from './usePlanDesk.ts';
import type { PlanView } from './usePlanView.ts';
import { useRefusal } from './useRefusal.tsx';

interface Props {
  readonly view: PlanView;
  readonly set: PlanSet;
}

/** One set: what it is, what it holds, what each rig is to be set to, and how the rigs differ. */
export function SetScreen({ view, set }: Props) {
  const { navigation } = useApp();
  const plans = usePlanDesk();
  const words = usePlanWords();
  const { plan, fault } = words;
  const { id } = view.plan;
  const change = (part: Partial<PlanSet>): string | null => {
    const wrong = plans.changeSet(id, set.id, part);
    return wrong && fault(wrong);
  };
  const table = view.prepared.table.find((candidate) => candidate.set === set.id);
  const place = view.plan.sets.indexOf(set) + 1;
  const reference = view.rig(set.reference);
  const { refusal, done } = useRefusal();
  const isDark = set.kind === 'capped-dark';
  const isSeries = set.kind === 'capped-series';
  const { targetOffset, framing, passes, repeats, restBeforeS } = set;

  return (
    <Screen inner title={plan.setOf(place, view.plan.sets.length)}>
      <div class="fields">
        <TextField
          label={plan.intent}
          value={set.intent}
          onCommit={(intent) => change({ intent })}
        />
        <Choice<SetKind>
          label={plan.kind}
          options={options(plan.kinds)}
          value={set.kind}
          // A series is shot once through, and only a series has a wait of its own to be seen here.
          onChange={(kind) =>
            change(kind === 'capped-series' ? { kind, passes: 1 } : { kind, restBeforeS: null })
          }
        />
        {set.kind !== 'light' && <p class="hint">{plan.kindNotes[set.kind]}</p>}
      </div>
      <SetLight view={view} set={set} />
      <Problems view={view} set={set.id} />
      {table?.kind === 'follows' && (
        <p>{plan.follows(intentWords(words, view.set(table.after)))}.</p>
      )}
      {!isDark && (
        <>
          <Section title={plan.toDial}>
            <RigChoice
              view={view}
              value={set.reference}
              onChange={(rig) => done(plans.setReference(id, set.id, rig))}
            />
            {reference && (
              <Dials
                assembled={reference}
                settings={set.settings}
                onTurn={(settings) => change({ settings })}
              />
            )}
            {table?.kind === 'compared' && (
              <RigRows caption={plan.toDial} view={view} table={table} othersOnly />
            )}
            {isSeries && view.plan.rigs.length > 1 && <p class="hint">{plan.seriesDial}</p>}
          </Section>
          {!isSeries && (
            <Section title={plan.hold}>
              <HoldFields view={view} set={set} change={change} />
            </Section>
          )}
        </>
      )}
      {(isDark || isSeries) && (
        <NumberField
          label={plan.repeats}
          hint={isSeries ? plan.seriesRepeatsHint : plan.repeatsHint}
          value={repeats}
          onCommit={(value) => change({ repeats: value })}
        />
      )}
      {isSeries && (
        <NumberField
          label={plan.wait}
          hint={plan.waitHint}
          unit={plan.seconds}
          value={restBeforeS}
          optional
          // The plan is parsed whole: a time that is none is refused there.
          onCommit={(wait) => change({ restBeforeS: wait as Seconds | null })}
        />
      )}
      {!isDark && !isSeries && (
        <Disclosure
          label={plan.more}
          stated={plan.moreInShort(
            targetOffset === 0 ? plan.asMetered : plan.fromMeter(words.format.stops(targetOffset)),
            plan.framings[framing],
            plan.turns(passes, repeats),
          )}
        >
          <NumberField
            label={plan.targetOffset}
            hint={plan.targetOffsetHint}
            unit={plan.stop}
            value={targetOffset}
            onCommit={(value) => change({ targetOffset: value as Stops })}
          />
          <Choice<Framing>
            label={plan.framing}
            options={options(plan.framings)}
            value={framing}
            onChange={(value) => change({ framing: value })}
          />
          <p class="hint">{plan.framingHint}</p>
          <NumberField
            label={plan.passes}
            hint={plan.passesHint(DEFAULT_PASSES[view.plan.order])}
            value={passes}
            onCommit={(value) => change({ passes: value })}
          />
          <NumberField
            label={plan.repeats}
            hint={plan.repeatsHint}
            value={repeats}
            onCommit={(value) => change({ repeats: value })}
          />
        </Disclosure>
      )}
      {table?.kind === 'compared' &&
        !isSeries &&
        table.others.map((row) => <PairDetail key={row.rig} view={view} set={set} row={row} />)}
      <RightAt view={view} set={set} />
      {refusal}
      <div class="acts">
        <Button
          onPress={() => {
            const copied = plans.copySet(id, set.id);
            if (done(copied)) navigation.replace('plan', id, 'set', copied);
          }}
        >
          {plan.copySet}
        </Button>
        <Button
          onPress={() => {
            navigation.back();
            plans.removeSet(id, set.id);
          }}
        >
          {plan.deleteSet}
        </Button>
      </div>
    </Screen>
  );
}
