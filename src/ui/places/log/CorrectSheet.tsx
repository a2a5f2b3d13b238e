import { useState } from 'preact/hooks';
import { fileName } from '../../../gear/files.ts';
import { positionsOf } from '../../../gear/positions.ts';
import { type Assembled, assemble, type Gear } from '../../../gear/rig.ts';
import type { Settings } from '../../../gear/settings.ts';
import type { LogFrame } from '../../../log/frames.ts';
import { type CorrectionValue, VERDICTS } from '../../../outing/events.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { parseSeconds, type Seconds } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { MarkStepper } from '../../parts/MarkStepper.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { useLogDeskWords } from '../../words/logDesk.ts';
import { FileStepper } from '../outing/FileStepper.tsx';
import type { SheetField } from './FrameScreen.tsx';
import { marksOf, timeMarkText } from './sentences.ts';

interface Props {
  readonly gear: Gear;
  readonly frame: LogFrame;
  readonly field: SheetField;
  readonly onCorrect: (change: CorrectionValue) => void;
  readonly onClose: () => void;
}

/** One field of a frame, corrected by clicks on the body's own positions. */
export function CorrectSheet(props: Props) {
  const { gear, frame, field } = props;
  const parts = assemble(gear, frame.rig);
  if (!parts || !frame.settings) return null;
  const shared = { ...props, parts, settings: frame.settings };
  switch (field) {
    case 'fMark':
    case 'isoMark':
      return <MarkSheet {...shared} field={field} />;
    case 'time':
      return <TimeSheet {...shared} />;
    case 'elapsedS':
      return <ElapsedSheet {...shared} />;
    case 'fileNumber':
      return <FileSheet {...shared} />;
    case 'verdict':
      return <VerdictSheet {...shared} />;
  }
}

interface Shared extends Props {
  readonly parts: Assembled;
  readonly settings: Settings;
}

/** The act at the foot: it says what will be logged, and waits for a change. */
function CorrectAct({ to, onPress }: { readonly to: string | null; readonly onPress: () => void }) {
  const { log } = useLogDeskWords();
  return (
    <Button rank="main" field disabled={to === null} onPress={onPress}>
      {to === null ? log.unchanged : log.correct(to)}
    </Button>
  );
}

function MarkSheet(props: Shared & { readonly field: 'fMark' | 'isoMark' }) {
  const { parts, frame, field, settings, onCorrect, onClose } = props;
  const words = useLogDeskWords();
  const { log, format } = words;
  const [mark, setMark] = useState(settings[field]);
  const positions = positionsOf(parts.body, parts.lens);
  if (isRefusal(positions)) return null;
  const dial = field === 'fMark' ? positions.fNumbers : positions.isos;
  const marks = dial.map((position) => position.mark);
  return (
    <Sheet
      title={log.fields[field]}
      onClose={onClose}
      acts={
        <CorrectAct
          to={mark === settings[field] ? null : format[field](mark)}
          onPress={() => onCorrect({ field, value: mark })}
        />
      }
    >
      <MarkStepper
        label={log.fields[field]}
        marks={marks}
        at={marks.indexOf(mark)}
        write={format[field]}
        note={log.planned(marksOf(words, frame.planned.settings)[field])}
        onTurn={(to) => setMark(marks[to] ?? mark)}
      />
    </Sheet>
  );
}

/** Stands on the time dial after its last position. */
const BULB = 'bulb';

function TimeSheet({ parts, frame, settings, onCorrect, onClose }: Shared) {
  const words = useLogDeskWords();
  const { log, format } = words;
  const [time, setTime] = useState(settings.time);
  const positions = positionsOf(parts.body, parts.lens);
  if (isRefusal(positions)) return null;
  const timed = positions.times.map(({ mark }) => mark);
  const marks = parts.body.bulb.kind === 'none' ? timed : [...timed, BULB];
  // Held as long as the shutter was open, as far as that is known.
  const held = frame.exact?.t ?? frame.planned.exact.t;
  const text = timeMarkText(words, time);
  return (
    <Sheet
      title={log.fields.time}
      onClose={onClose}
      acts={
        <CorrectAct
          to={text === timeMarkText(words, settings.time) ? null : text}
          onPress={() => onCorrect({ field: 'time', value: time })}
        />
      }
    >
      <MarkStepper
        label={log.fields.time}
        marks={marks}
        at={marks.indexOf(time.kind === 'bulb' ? BULB : time.mark)}
        write={(mark) =>
          mark === BULB
            ? log.bulb(format.duration(time.kind === 'bulb' ? time.seconds : held))
            : format.timeMark(mark)
        }
        note={log.planned(timeMarkText(words, frame.planned.settings.time))}
        onTurn={(to) => {
          const mark = marks[to] ?? BULB;
          setTime(mark === BULB ? { kind: 'bulb', seconds: held } : { kind: 'dial', mark });
        }}
      />
      {time.kind === 'bulb' && settings.time.kind !== 'bulb' && (
        <SecondsField
          value={time.seconds}
          onCommit={(seconds) => setTime({ kind: 'bulb', seconds })}
        />
      )}
    </Sheet>
  );
}

function ElapsedSheet({ frame, onCorrect, onClose }: Shared) {
  const { log } = useLogDeskWords();
  const known = frame.openTime.from === 'unknown' ? null : frame.openTime.s;
  return (
    <Sheet
      title={log.fields.elapsedS}
      onClose={onClose}
      acts={
        // Leaving the field is what logs it.
        <Button rank="main" field onPress={onClose}>
          {log.done}
        </Button>
      }
    >
      <SecondsField value={known} onCommit={(value) => onCorrect({ field: 'elapsedS', value })} />
    </Sheet>
  );
}

interface SecondsProps {
  readonly value: Seconds | null;
  readonly onCommit: (value: Seconds) => void;
}

function SecondsField({ value, onCommit }: SecondsProps) {
  const { log } = useLogDeskWords();
  return (
    <NumberField
      label={log.fields.elapsedS}
      hint={log.elapsedHint}
      unit={log.seconds}
      value={value}
      onCommit={(typed) => {
        const seconds = parseSeconds(typed);
        if (isRefusal(seconds)) return log.secondsBad;
        onCommit(seconds);
        return null;
      }}
    />
  );
}

function FileSheet({ parts, frame, onCorrect, onClose }: Shared) {
  const { log } = useLogDeskWords();
  const [number, setNumber] = useState(frame.fileNumber);
  const write = (value: number) => fileName(parts.body.files, value);
  const changed = number !== frame.fileNumber;
  return (
    <Sheet
      title={log.fields.fileNumber}
      onClose={onClose}
      acts={
        <CorrectAct
          to={changed ? (number === null ? log.noFile : write(number)) : null}
          onPress={() => onCorrect({ field: 'fileNumber', value: number })}
        />
      }
    >
      <FileStepper value={number} write={write} onChange={setNumber} />
      <div class="acts">
        <Button disabled={number === null} onPress={() => setNumber(null)}>
          {log.withoutNumber}
        </Button>
      </div>
    </Sheet>
  );
}

/** Stands for no verdict: a choice needs a value. */
const NONE = 'none';

function VerdictSheet({ frame, onCorrect, onClose }: Shared) {
  const { log, outing } = useLogDeskWords();
  return (
    <Sheet title={log.fields.verdict} onClose={onClose}>
      <Choice
        label={log.fields.verdict}
        as="list"
        options={[
          ...VERDICTS.map((value) => ({ value, label: outing.verdict.words[value] })),
          { value: NONE, label: log.noVerdict } as const,
        ]}
        value={frame.verdict ?? NONE}
        onChange={(value) => onCorrect({ field: 'verdict', value: value === NONE ? null : value })}
      />
    </Sheet>
  );
}
