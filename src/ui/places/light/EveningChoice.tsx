import { useState } from 'preact/hooks';
import type { LightDesk } from '../../../app/light.ts';
import { readDate } from '../../../gear/parse.ts';
import { isFault } from '../../../gear/read.ts';
import type { Night } from '../../../light/night.ts';
import type { Site } from '../../../light/site.ts';
import { daysLater } from '../../../light/zones.ts';
import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useLightWords } from '../../words/light.ts';

interface Props {
  readonly site: Site;
  readonly desk: LightDesk;
  readonly night: Night;
}

/** Which evening is shown: a day on, a day back, or any other. */
export function EveningChoice({ site, desk, night }: Props) {
  const { format, light } = useLightWords();
  const [open, setOpen] = useState(false);
  const date = desk.movedFrom.value ?? night.date;
  const shown = format.calendarDate(date);
  // Quicker taps than the sky can be worked out each count.
  const go = (days: number) => () => desk.setDate(daysLater(desk.date.peek() ?? date, days));
  return (
    <div class="light-date">
      <button type="button" class="icon-button" aria-label={light.dayBefore} onClick={go(-1)}>
        <Icon name="back" />
      </button>
      <button
        type="button"
        class="date"
        aria-haspopup="dialog"
        aria-label={light.otherDate(shown)}
        onClick={() => setOpen(true)}
      >
        {shown}
      </button>
      <button type="button" class="icon-button" aria-label={light.dayAfter} onClick={go(1)}>
        <Icon name="onward" />
      </button>
      {open && (
        <DateSheet
          site={site}
          shown={date}
          onPick={(picked) => {
            desk.setDate(picked);
            setOpen(false);
          }}
          onClose={() => setOpen(false)}
        />
      )}
    </div>
  );
}

interface SheetProps {
  readonly site: Site;
  readonly shown: string;
  readonly onPick: (date: string | null) => void;
  readonly onClose: () => void;
}

function DateSheet({ site, shown, onPick, onClose }: SheetProps) {
  const { light } = useLightWords();
  const [date, setDate] = useState(shown);
  return (
    <Sheet
      title={light.chooseDate}
      onClose={onClose}
      acts={
        <>
          <Button onPress={() => onPick(null)}>
            {site.invented ? light.practiceEvening : light.tonight}
          </Button>
          <Button onPress={() => onPick(date)}>{light.showDate}</Button>
        </>
      }
    >
      <TextField
        label={light.date}
        hint={light.dateHint}
        value={date}
        onCommit={(text) => {
          const read = readDate(text.trim());
          if (isFault(read)) return light.fault(read);
          setDate(read);
          return null;
        }}
      />
    </Sheet>
  );
}
