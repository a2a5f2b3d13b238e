import { useState } from 'preact/hooks';
import type { Body } from '../../../gear/body.ts';
import { bodyFields } from '../../../gear/parse.ts';
import { type Fault, isFault } from '../../../gear/read.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { useGearWords } from '../../words/gear.ts';
import { type Sensor, SensorFields } from './SensorFields.tsx';
import { useGearDesk } from './useGearDesk.ts';

/** Sides and pixels change together: one alone would not fit the others. */
export function SensorSheet({
  body,
  onClose,
}: {
  readonly body: Body;
  readonly onClose: () => void;
}) {
  const desk = useGearDesk();
  const { fault, gear } = useGearWords();
  const [sensor, setSensor] = useState<Sensor>(body);
  const [refusal, setRefusal] = useState<string | null>(null);

  const save = (): Fault | null => {
    const widthMm = bodyFields.widthMm(sensor.widthMm);
    const heightMm = bodyFields.heightMm(sensor.heightMm);
    const pixelsWide = bodyFields.pixelsWide(sensor.pixelsWide);
    const pixelsHigh = bodyFields.pixelsHigh(sensor.pixelsHigh);
    if (isFault(widthMm)) return widthMm;
    if (isFault(heightMm)) return heightMm;
    if (isFault(pixelsWide)) return pixelsWide;
    if (isFault(pixelsHigh)) return pixelsHigh;
    return desk.changeBody(body.id, { widthMm, heightMm, pixelsWide, pixelsHigh });
  };

  return (
    <Sheet
      title={gear.changeSensor}
      onClose={onClose}
      acts={
        <Button
          rank="main"
          field
          onPress={() => {
            const broken = save();
            if (broken) setRefusal(fault(broken));
            else onClose();
          }}
        >
          {gear.save}
        </Button>
      }
    >
      <SensorFields
        sensor={sensor}
        onChange={(change) => setSensor((before) => ({ ...before, ...change }))}
      />
      {refusal && <Notice urgent>{refusal}</Notice>}
    </Sheet>
  );
}
