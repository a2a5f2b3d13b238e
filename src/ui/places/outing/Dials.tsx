import type { Settings } from '../../../gear/settings.ts';
import type { Changed } from '../../../outing/step.ts';
import { useWords } from '../../words/words.ts';

interface Props {
  readonly settings: Settings;
  /** Which dials must be turned; left out where nothing is to be turned. */
  readonly changed?: Changed;
}

/** The settings in very large figures; what must be turned carries a mark and a word. */
export function Dials({ settings, changed }: Props) {
  const words = useWords();
  const { dial } = words.outing;
  const { format } = words;
  const { time } = settings;
  return (
    <dl class="dials">
      <One label={dial.aperture} turn={changed?.f} value={format.fMark(settings.fMark)} />
      <One
        label={dial.time}
        turn={changed?.time}
        value={time.kind === 'bulb' ? dial.bulb : format.timeMark(time.mark)}
        note={time.kind === 'bulb' ? format.duration(time.seconds) : undefined}
      />
      <One label={dial.iso} turn={changed?.iso} value={format.isoMark(settings.isoMark)} />
    </dl>
  );
}

interface OneProps {
  readonly label: string;
  readonly value: string;
  readonly turn: boolean | undefined;
  readonly note?: string | undefined;
}

function One({ label, value, turn, note }: OneProps) {
  const { dial } = useWords().outing;
  return (
    <div class={turn ? 'dial turn' : 'dial'}>
      <dt>
        {label}
        {turn !== undefined && <span class="turning"> {turn ? dial.changed : dial.same}</span>}
      </dt>
      <dd>
        {value}
        {note && <span class="note"> {note}</span>}
      </dd>
    </div>
  );
}
