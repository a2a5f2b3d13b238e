import type { RigId } from '../../../gear/ids.ts';
import { assemble } from '../../../gear/rig.ts';
import { seriesIsos, usualSeriesIso } from '../../../plan/heatSeries.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useDrafts } from '../../shell/useDrafts.ts';
import { usePlanWords } from '../../words/plan.ts';
import { Cautions } from './Cautions.tsx';
import { optionsWithNotes } from './options.ts';
import { RigTicks } from './RigTicks.tsx';
import { SeriesIso } from './SeriesIso.tsx';
import { rigWords } from './sentences.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import { useRefusal } from './useRefusal.tsx';

/** A new plan: for which rigs, from which list. */
export function NewPlan() {
  const { gear, navigation } = useApp();
  const plans = usePlanDesk();
  const words = usePlanWords();
  const { plan: say } = words;
  const { current, change, clear } = useDrafts();
  const { list, name, seriesIso, ...draft } = current.value.newPlan;
  const { refusal, done } = useRefusal();
  const view = { rig: (id: RigId) => assemble(gear.gear.value, id) };
  // A draft may be older than what has become of the gear.
  const rigs = draft.rigs.filter(view.rig);
  const chosen = draft.reference;
  const reference = chosen && rigs.includes(chosen) ? chosen : (rigs[0] ?? null);
  const lists = { ...say.lists, 'body-heat': say.series, nothing: say.nothing };
  const usual = list === 'nothing' ? say.unnamed : lists[list].label;
  const isSeries = list === 'body-heat';
  const measured = isSeries && reference !== null ? view.rig(reference) : null;
  // A mark that was picked for another body may not be on this one's dial.
  const isoMark =
    measured &&
    (seriesIsos(measured).find((mark) => mark === seriesIso) ?? usualSeriesIso(measured));
  const missing =
    reference === null ? say.pickFirst : isSeries && rigs.length > 1 ? say.seriesPickOne : null;

  const make = () => {
    if (reference === null) return;
    const called = name ?? usual;
    const made =
      isoMark !== null
        ? plans.makeSeries({
            name: called,
            note: say.seriesCautions.join('\n'),
            rig: reference,
            isoMark,
          })
        : plans.make({
            name: called,
            rigs: [reference, ...rigs.filter((rig) => rig !== reference)],
            list: list === 'nothing' || isSeries ? null : list,
          });
    if (!done(made)) return;
    clear('newPlan');
    navigation.replace('plan', made);
  };

  return (
    <Screen
      inner
      title={say.newPlan}
      foot={
        <>
          {missing !== null && <p class="reason">{missing}</p>}
          <Button rank="main" disabled={missing !== null} onPress={make}>
            {say.makeIt}
          </Button>
        </>
      }
    >
      <Section title={say.rigs}>
        <RigTicks picked={rigs} onChange={(picked) => change('newPlan', { rigs: picked })} />
        {reference !== null && rigs.length > 1 && !isSeries && (
          <>
            <Choice
              label={say.reference}
              options={rigs.map((rig) => ({ value: rig, label: rigWords(words, view, rig) }))}
              value={reference}
              onChange={(picked) => change('newPlan', { reference: picked })}
            />
            <p class="hint">{say.referenceHint}</p>
          </>
        )}
      </Section>
      <Section title={say.startFrom}>
        <Choice
          label={say.shotList}
          as="list"
          options={optionsWithNotes(lists)}
          value={list}
          onChange={(picked) => change('newPlan', { list: picked })}
        />
        {measured && rigs.length === 1 && (
          <SeriesIso
            rig={measured}
            isoMark={isoMark}
            onPick={(picked) => change('newPlan', { seriesIso: picked })}
          />
        )}
        <TextField
          label={say.name}
          hint={say.nameHint}
          value={name ?? usual}
          onCommit={(typed) => {
            change('newPlan', { name: typed });
            return null;
          }}
        />
        {refusal}
      </Section>
      <Section title={isSeries ? say.seriesTitle : say.cautionTitle}>
        <Cautions of={isSeries ? say.seriesCautions : say.cautions} />
      </Section>
    </Screen>
  );
}
