import type { RigId } from '../gear/ids.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import { type Besides, besidesOf } from './besides.ts';
import type { Side } from './causes.ts';
import type { SetId } from './ids.ts';
import type { Plan } from './plan.ts';
import { dialledIn, type Prepared } from './prepare.ts';

/**
 * What sets a rig apart from the reference of a set besides brightness, as planned; null where one of
 * the two cannot be set. Apart from `preparePlan`, which an outing needs to start and this it does not.
 */
export function besidesOfRow(
  plan: Plan,
  gear: Gear,
  { table }: Pick<Prepared, 'table'>,
  set: SetId,
  rig: RigId,
): Besides | null {
  const planned = plan.sets.find(({ id }) => id === set);
  const row = table.find((one) => one.set === set);
  const side = (of: RigId): Side | null => {
    const assembled = assemble(gear, of);
    const dialled = dialledIn(row, of);
    return assembled && dialled && { assembled, ...dialled };
  };
  if (!planned) return null;
  const [reference, other] = [side(planned.reference), side(rig)];
  return reference && other && besidesOf(reference, other, planned.framing, plan);
}
