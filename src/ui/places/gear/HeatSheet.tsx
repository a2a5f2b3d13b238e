import { useState } from 'preact/hooks';
import type { Body, MeasuredHeat } from '../../../gear/body.ts';
import { thermalRangeOf } from '../../../gear/bodyHeat.ts';
import { heatFields, heatFigures } from '../../../gear/parse.ts';
import { isFault } from '../../../gear/read.ts';
import type { ThermalRange } from '../../../science/thermalRange.ts';
import { UNMEASURED_FROM } from '../../../science/thermalSources.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useGearWords } from '../../words/gear.ts';
import { useGearDesk } from './useGearDesk.ts';

interface Props {
  readonly body: Body;
  readonly figure: keyof ThermalRange;
  /** Returns one sentence to refuse it. */
  readonly onChange: (heat: MeasuredHeat) => string | null;
  readonly onClose: () => void;
}

interface Entered {
  readonly usual: number | null;
  readonly least: number | null;
  readonly most: number | null;
  readonly from: string;
}

const NOTHING: Entered = { usual: null, least: null, most: null, from: '' };

/** One figure of how a body warms: value, range and source belong together and are saved together. */
export function HeatSheet({ body, figure, onChange, onClose }: Props) {
  const desk = useGearDesk();
  const { fault, format, gear } = useGearWords();
  const { heat: say } = gear;
  const own = body.heat[figure];
  const [entered, setEntered] = useState<Entered>(own ?? NOTHING);
  const [refusal, setRefusal] = useState<string | null>(null);
  const unit = say.units[figure];

  const commit = (end: 'usual' | 'least' | 'most') => (value: number) => {
    const read = heatFigures[figure](value);
    // A figure that is refused must not leave the one before it to be saved unseen.
    setEntered((before) => ({ ...before, [end]: isFault(read) ? null : read }));
    return isFault(read) ? fault(read) : null;
  };
  const save = (): string | null => {
    const { usual, least, most } = entered;
    // The field has several lines, the source is one.
    const from = entered.from.replace(/\s+/g, ' ').trim();
    if (usual === null || least === null || most === null) return say.figuresFirst;
    if (from === '') return say.sourceFirst;
    const read = heatFields[figure]({ usual, least, most, from });
    const broken = isFault(read) ? fault(read) : onChange({ ...body.heat, [figure]: read });
    if (broken !== null) return say.notSaved(broken);
    onClose();
    return null;
  };
  const forget = () => {
    desk.forgetHeat(body.id, figure);
    onClose();
  };
  const stated = thermalRangeOf({ ...body, heat: { ...body.heat, [figure]: null } })[figure];

  return (
    <Sheet
      title={say.figures[figure]}
      onClose={onClose}
      acts={
        <>
          {refusal && <Notice urgent>{refusal}</Notice>}
          {own && <Button onPress={forget}>{say.forget}</Button>}
          <Button rank="main" onPress={() => setRefusal(save())}>
            {say.save}
          </Button>
        </>
      }
    >
      <p>{say.means[figure]}</p>
      <NumberField
        label={say.usual}
        hint={say.usualHint}
        unit={unit}
        value={entered.usual}
        onCommit={commit('usual')}
      />
      <div class="pair">
        <NumberField
          label={say.least}
          unit={unit}
          value={entered.least}
          onCommit={commit('least')}
        />
        <NumberField label={say.most} unit={unit} value={entered.most} onCommit={commit('most')} />
      </div>
      <TextField
        label={say.source}
        long
        hint={say.sourceHint}
        value={entered.from}
        onCommit={(from) => {
          setEntered((before) => ({ ...before, from }));
          return null;
        }}
      />
      <p class="hint">
        {say.inUse(
          format.plain(stated.usual),
          format.plain(stated.least),
          format.plain(stated.most),
          unit,
        )}
        . {say.statedFrom(UNMEASURED_FROM[figure])}
      </p>
    </Sheet>
  );
}
