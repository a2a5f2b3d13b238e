import type { RigId } from '../../../gear/ids.ts';
import { LETTERS } from '../../../gear/letter.ts';
import { assemble } from '../../../gear/rig.ts';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useApp } from '../../shell/useApp.ts';
import { usePlanWords } from '../../words/plan.ts';

interface Props {
  readonly picked: readonly RigId[];
  readonly onChange: (picked: readonly RigId[]) => void;
}

/** The rigs of Gear to take into a plan; those that are gone can only be taken out. */
export function RigTicks({ picked, onChange }: Props) {
  const { gear } = useApp();
  const { plan } = usePlanWords();
  const now = gear.gear.value;
  const gone = picked.filter((rig) => !assemble(now, rig));
  const full = picked.length >= LETTERS.length;
  const tick = (rig: RigId, checked: boolean) => {
    if (!checked) onChange(picked.filter((other) => other !== rig));
    else if (!full) onChange([...picked, rig]);
  };
  return (
    <fieldset aria-label={plan.rigs}>
      <p class="hint">{full ? plan.enoughRigs(LETTERS.length) : plan.pickRigs(LETTERS.length)}</p>
      {now.rigs.map(({ id, letter, invented }) => {
        const assembled = assemble(now, id);
        return (
          assembled && (
            <Tick key={id} checked={picked.includes(id)} onChange={(checked) => tick(id, checked)}>
              <span class="rig-line">
                <RigSign letter={letter} /> {assembled.body.name}, {assembled.lens.name}{' '}
                {invented && <InventedTag />}
              </span>
            </Tick>
          )
        );
      })}
      {gone.map((rig) => (
        <Tick key={rig} checked onChange={() => tick(rig, false)}>
          {plan.rigGone}
        </Tick>
      ))}
    </fieldset>
  );
}
