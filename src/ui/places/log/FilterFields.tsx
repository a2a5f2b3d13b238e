import { assemble } from '../../../gear/rig.ts';
import type { Wanted } from '../../../log/entries.ts';
import type { RunState } from '../../../outing/state.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Pick } from '../../parts/Pick.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { useLogDeskWords } from '../../words/logDesk.ts';
import { setWords } from './sentences.ts';

interface Props {
  readonly state: RunState;
  readonly wanted: Wanted;
  readonly onChange: (wanted: Wanted) => void;
}

const ALL = '';

/** Chooses which lines of the log are shown. */
export function FilterFields({ state: { plan, gear }, wanted, onChange }: Props) {
  const words = useLogDeskWords();
  const { log } = words;
  const letters = plan.rigs.flatMap((rig) => {
    const letter = assemble(gear, rig)?.rig.letter;
    return letter ? [{ value: rig, label: <RigSign letter={letter} /> }] : [];
  });
  return (
    <>
      <Choice
        label={log.only}
        options={(['all', 'changed', 'not-counting'] as const).map((value) => ({
          value,
          label: log.onlyWhat[value],
        }))}
        value={wanted.only}
        onChange={(only) => onChange({ ...wanted, only })}
      />
      <Choice<string>
        label={log.rig}
        options={[{ value: ALL, label: log.allRigs }, ...letters]}
        value={wanted.rig ?? ALL}
        onChange={(rig) => onChange({ ...wanted, rig: plan.rigs.find((id) => id === rig) ?? null })}
      />
      <Pick<string>
        label={log.set}
        options={[
          { value: ALL, label: log.allSets },
          ...plan.sets.map(({ id }) => ({ value: id, label: setWords(words, plan, id) })),
        ]}
        value={wanted.set ?? ALL}
        onPick={(set) => {
          onChange({ ...wanted, set: plan.sets.find(({ id }) => id === set)?.id ?? null });
          return null;
        }}
      />
    </>
  );
}
