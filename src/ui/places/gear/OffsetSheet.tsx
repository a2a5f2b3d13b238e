import { useState } from 'preact/hooks';
import { offsetFields } from '../../../gear/parse.ts';
import { isFault } from '../../../gear/read.ts';
import { assemble, type Offset, type Rig } from '../../../gear/rig.ts';
import { isoPositions } from '../../../science/dials.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Pick } from '../../parts/Pick.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';
import { useGearDesk } from './useGearDesk.ts';

type Entered = Omit<Offset, 'stops'> & { readonly stops: Offset['stops'] | null };

/** One offset of a rig: at which ISO, how many stops, when and how it was found. */
export function OffsetSheet({ rig, onClose }: { readonly rig: Rig; readonly onClose: () => void }) {
  const { gear: kept, today } = useApp();
  const desk = useGearDesk();
  const { fault, format, gear } = useGearWords();
  const [entered, setEntered] = useState<Entered>({
    isoMark: null,
    stops: null,
    date: today(),
    how: '',
  });
  const [refusal, setRefusal] = useState<string | null>(null);
  const body = assemble(kept.gear.value, rig.id)?.body;
  const positions = body ? isoPositions(body.iso) : [];

  const commit = (field: keyof Offset) => (value: unknown) => {
    const read = offsetFields[field](value);
    if (isFault(read)) return fault(read);
    setEntered((before) => ({ ...before, [field]: read }));
    return null;
  };
  const save = (): string | null => {
    const { stops, ...rest } = entered;
    if (stops === null) return gear.stopsFirst;
    const broken = desk.addOffset(rig.id, { ...rest, stops });
    if (broken) return fault(broken);
    onClose();
    return null;
  };
  return (
    <Sheet
      title={gear.addOffset}
      onClose={onClose}
      acts={
        <Button rank="main" onPress={() => setRefusal(save())}>
          {gear.saveOffset}
        </Button>
      }
    >
      <Pick
        label={gear.offsetAt}
        value={entered.isoMark}
        options={[
          { value: null, label: gear.everyIso },
          ...(isRefusal(positions) ? [] : positions).map(({ mark }) => ({
            value: mark,
            label: format.isoMark(mark),
          })),
        ]}
        onPick={commit('isoMark')}
      />
      <NumberField
        label={gear.offsetStops}
        hint={gear.offsetStopsHint}
        unit={gear.stop}
        value={entered.stops}
        onCommit={commit('stops')}
      />
      <TextField
        label={gear.date}
        hint={gear.dateHint}
        value={entered.date}
        onCommit={commit('date')}
      />
      <TextField label={gear.how} long value={entered.how} onCommit={commit('how')} />
      {refusal && <Notice urgent>{refusal}</Notice>}
    </Sheet>
  );
}
