import { positionsOf } from '../../../gear/positions.ts';
import type { Assembled } from '../../../gear/rig.ts';
import { formatOf } from '../../../plan/framing.ts';
import { entrancePupil } from '../../../science/focus.ts';
import { cropRatio, equivalentFocal } from '../../../science/formats.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { angleOfView } from '../../../science/view.ts';
import { Figure } from '../../parts/Figure.tsx';
import { Figures } from '../../parts/Figures.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';

/** Figures that follow from a body and the lens on it, and what its focal length corresponds to on others. */
export function RigFacts({ rig: { body, lens } }: { readonly rig: Assembled }) {
  const { gear: desk } = useApp();
  const { format, gear } = useGearWords();
  const others = desk.gear.value.bodies.filter(
    ({ id, invented }) => id !== body.id && invented === body.invented,
  );
  const positions = positionsOf(body, lens);
  const widest = isRefusal(positions) ? undefined : positions.fNumbers[0]?.exact;
  return (
    <Figures>
      <Figure
        label={gear.angleAcross}
        value={gear.angle(format.number(angleOfView(body.widthMm, lens.focalMm), 1))}
      />
      <Figure
        label={gear.angleUp}
        value={gear.angle(format.number(angleOfView(body.heightMm, lens.focalMm), 1))}
      />
      <Figure
        label={gear.pupil}
        value={
          widest === undefined
            ? null
            : gear.millimetres(format.number(entrancePupil(lens.focalMm, widest), 1))
        }
      />
      {others.map((other) => (
        <Figure
          key={other.id}
          label={gear.corresponds(other.name)}
          value={gear.millimetres(
            format.number(
              equivalentFocal(lens.focalMm, cropRatio(formatOf(body), formatOf(other))),
              1,
            ),
          )}
          note={gear.byDiagonal}
        />
      ))}
    </Figures>
  );
}
