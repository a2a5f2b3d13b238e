import { useState } from 'preact/hooks';
import { COMMON_FORMATS } from '../../../gear/defaults.ts';
import { bodyFields } from '../../../gear/parse.ts';
import { isFault } from '../../../gear/read.ts';
import { Choice } from '../../parts/Choice.tsx';
import { FormatOutline } from '../../parts/FormatOutline.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { useGearWords } from '../../words/gear.ts';

/** Sides and pixels as far as they are entered. */
export interface Sensor {
  readonly widthMm: number | null;
  readonly heightMm: number | null;
  readonly pixelsWide: number | null;
  readonly pixelsHigh: number | null;
}

const OWN = 'own';

/** A sensor by its dimensions, from the published ones or the owner's own figures, and its pixels. */
export function SensorFields({
  sensor,
  onChange,
}: {
  readonly sensor: Sensor;
  readonly onChange: (change: Partial<Sensor>) => void;
}) {
  const { fault, format, gear } = useGearWords();
  const known = COMMON_FORMATS.findIndex(
    ({ widthMm, heightMm }) => widthMm === sensor.widthMm && heightMm === sensor.heightMm,
  );
  const [own, setOwn] = useState(known < 0 && sensor.widthMm !== null);
  const choose = (choice: string) => {
    setOwn(choice === OWN);
    const chosen = COMMON_FORMATS[Number(choice)];
    if (chosen) onChange(chosen);
  };
  const commit = (field: keyof Sensor) => (value: number) => {
    const read = bodyFields[field](value);
    // A figure that is refused must not leave the one before it to be saved unseen.
    onChange({ [field]: isFault(read) ? null : read });
    return isFault(read) ? fault(read) : null;
  };
  return (
    <>
      <Choice
        label={gear.sensorSize}
        as="list"
        value={own ? OWN : known < 0 ? null : String(known)}
        onChange={choose}
        options={[
          ...COMMON_FORMATS.map(({ widthMm, heightMm }, index) => ({
            value: String(index),
            label: (
              <span class="format-option">
                <span class="outline-cell">
                  <FormatOutline widthMm={widthMm} heightMm={heightMm} />
                </span>
                {gear.size(format.plain(widthMm), format.plain(heightMm))}
              </span>
            ),
          })),
          { value: OWN, label: gear.ownSize },
        ]}
      />
      {own && (
        <div class="pair">
          <NumberField
            label={gear.width}
            unit={gear.mm}
            value={sensor.widthMm}
            onCommit={commit('widthMm')}
          />
          <NumberField
            label={gear.height}
            unit={gear.mm}
            value={sensor.heightMm}
            onCommit={commit('heightMm')}
          />
        </div>
      )}
      <div class="pair">
        <NumberField
          label={gear.pixelsWide}
          value={sensor.pixelsWide}
          onCommit={commit('pixelsWide')}
        />
        <NumberField
          label={gear.pixelsHigh}
          value={sensor.pixelsHigh}
          onCommit={commit('pixelsHigh')}
        />
      </div>
    </>
  );
}
