import type { Body } from '../../../gear/body.ts';
import { formatOf } from '../../../plan/framing.ts';
import { areaStops, cropRatio, diagonal } from '../../../science/formats.ts';
import { pixelPitch } from '../../../science/view.ts';
import { Figure } from '../../parts/Figure.tsx';
import { Figures } from '../../parts/Figures.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';

/** Figures that follow from the sensor, against the first body in the list. */
export function BodyFacts({ body }: { readonly body: Body }) {
  const { gear: desk } = useApp();
  const { format, gear } = useGearWords();
  const first = desk.gear.value.bodies.find(({ invented }) => invented === body.invented);
  const other = first && first.id !== body.id ? first : null;
  return (
    <Figures>
      <Figure
        label={gear.diagonal}
        value={gear.millimetres(format.number(diagonal(formatOf(body)), 2))}
      />
      <Figure
        label={gear.pitch}
        value={gear.micrometres(format.number(pixelPitch(body.widthMm, body.pixelsWide), 2))}
      />
      {other && (
        <>
          <Figure
            label={gear.crop}
            value={format.number(cropRatio(formatOf(other), formatOf(body)), 2)}
            note={gear.cropTo(other.name)}
          />
          <Figure
            label={gear.areaLight}
            value={format.stopsFine(areaStops(formatOf(other), formatOf(body)))}
            note={gear.areaTo(other.name)}
          />
        </>
      )}
    </Figures>
  );
}
