import type { Plan } from '../../../plan/plan.ts';
import type { Millimetres } from '../../../science/units.ts';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { usePlanWords } from '../../words/plan.ts';
import { Cautions } from './Cautions.tsx';
import { RigTicks } from './RigTicks.tsx';
import { rigWords } from './sentences.ts';
import { usePlanDesk } from './usePlanDesk.ts';
import type { PlanView } from './usePlanView.ts';
import { useRefusal } from './useRefusal.tsx';

const METRE_MM = 1000;

/** Rigs, name, note, stand and cautions, each stated and to be opened. */
export function About({ view }: { readonly view: PlanView }) {
  const plans = usePlanDesk();
  const words = usePlanWords();
  const { plan: say, format, parts, fault } = words;
  const { plan } = view;
  const { refusal, done } = useRefusal();
  const change = (part: Partial<Plan>): string | null => {
    const wrong = plans.change(plan.id, (before) => ({ ...before, ...part }));
    return wrong && fault(wrong);
  };
  // The plan is parsed whole: a length that is none is refused there.
  const length = (mm: number | null) => mm as Millimetres | null;
  const { nearestSubjectMm, axesApartMm } = plan;
  const metres = nearestSubjectMm === null ? null : nearestSubjectMm / METRE_MM;
  return (
    <div>
      <Disclosure
        label={say.rigs}
        stated={plan.rigs.map((rig) => rigWords(words, view, rig)).join(', ') || say.noneYet}
      >
        <RigTicks picked={plan.rigs} onChange={(rigs) => done(plans.setRigs(plan.id, rigs))} />
        {refusal}
      </Disclosure>
      <Disclosure
        label={say.stand}
        stated={
          metres === null && axesApartMm === null
            ? say.standUnknown
            : say.standInShort(
                metres === null ? parts.unknown : say.metresOf(format.plain(metres)),
                axesApartMm === null ? parts.unknown : say.mmOf(format.plain(axesApartMm)),
              )
        }
      >
        <NumberField
          label={say.nearest}
          hint={say.nearestHint}
          unit={say.metres}
          value={metres}
          optional
          onCommit={(value) =>
            change({ nearestSubjectMm: length(value && value * METRE_MM) }) && say.nearestRange
          }
        />
        <NumberField
          label={say.axes}
          hint={say.axesHint}
          unit={say.millimetres}
          value={axesApartMm}
          optional
          onCommit={(value) => change({ axesApartMm: length(value) })}
        />
      </Disclosure>
      <Disclosure label={say.nameAndNote} stated={plan.note.trim() || say.noNote}>
        <TextField label={say.name} value={plan.name} onCommit={(name) => change({ name })} />
        <TextField label={say.note} long value={plan.note} onCommit={(note) => change({ note })} />
      </Disclosure>
      <Disclosure label={say.cautionTitle} stated={say.cautionShort}>
        <Cautions of={say.cautions} />
      </Disclosure>
    </div>
  );
}
