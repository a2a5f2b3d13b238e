import type { Settings } from '../../../gear/settings.ts';
import type { Changed } from '../../../outing/step.ts';
import { useWords } from '../../words/words.ts';

interface Props {
  readonly settings: Settings;
  /** Which dials must be turned; left out where nothing is to be turned. */
  readonly changed?: Changed;
  /** To be read again, not dialled. */
  readonly small?: boolean;
}

/** The settings in very large figures; what must be turned carries a mark and a word. */
export function Dials({ settings, changed, small }: Props) {
  const words = useWords();
  const { dial } = words.outing;
  const { format } = words;
  const { time } = settings;
  return (
    <dl class={small ? 'to-dial small' : 'to-dial'}>
      <One label={dial.aperture} turn={changed?.f} before="f/" value={settings.fMark} />
      {time.kind === 'bulb' ? (
        <One
          label={dial.time}
          turn={changed?.time}
          value={dial.bulb}
          after={format.duration(time.seconds)}
        />
      ) : (
        <One label={dial.time} turn={changed?.time} value={time.mark} after="s" />
      )}
      <One
        label={dial.iso}
        turn={changed?.iso}
        before="ISO"
        value={format.isoMark(settings.isoMark).replace(/^ISO\s*/, '')}
      />
    </dl>
  );
}

interface OneProps {
  /** Heard only: the mark itself tells the eye which dial it is. */
  readonly label: string;
  readonly value: string;
  readonly turn: boolean | undefined;
  /** What stands small before and after the figure. */
  readonly before?: string;
  readonly after?: string;
}

function One({ label, value, turn, before, after }: OneProps) {
  const { dial } = useWords().outing;
  return (
    <div class={turn === false ? 'dial stays' : turn ? 'dial turn' : 'dial'}>
      <dt class="heard">{label}</dt>
      <dd>
        {before && <span class="unit">{before}</span>}
        <span class="mark">{value}</span>
        {after && <span class="unit">{after}</span>}
        {turn !== undefined && <span class="turning">{turn ? dial.changed : dial.same}</span>}
      </dd>
    </div>
  );
}
