import type { RigId } from '../../../gear/ids.ts';
import { Choice } from '../../parts/Choice.tsx';
import { usePlanWords } from '../../words/plan.ts';
import { rigWords } from './sentences.ts';
import type { PlanView } from './usePlanView.ts';

interface Props {
  readonly view: PlanView;
  readonly value: RigId;
  readonly onChange: (rig: RigId) => void;
}

/** Which rig of the plan is the reference of a set. */
export function RigChoice({ view, value, onChange }: Props) {
  const words = usePlanWords();
  return (
    <Choice
      label={words.plan.reference}
      options={view.plan.rigs.map((rig) => ({ value: rig, label: rigWords(words, view, rig) }))}
      value={value}
      onChange={onChange}
    />
  );
}
