import type { RigId } from '../../../gear/ids.ts';
import { assemble, type Gear } from '../../../gear/rig.ts';
import { RigSign } from '../../parts/RigSign.tsx';

/** Sign and body of a rig: `A ● Alder 44`. */
export function RigName({ gear, rig }: { readonly gear: Gear; readonly rig: RigId }) {
  const parts = assemble(gear, rig);
  if (!parts) return null;
  return (
    <span class="rig-name">
      <RigSign letter={parts.rig.letter} /> {parts.body.name}
    </span>
  );
}

/** The rig's letter and body as plain words, for names of buttons and lines read out. */
export function rigText(gear: Gear, rig: RigId): string {
  const parts = assemble(gear, rig);
  return parts ? `${parts.rig.letter} ${parts.body.name}` : '';
}
