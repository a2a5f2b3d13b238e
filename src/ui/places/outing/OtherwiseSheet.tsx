import { useState } from 'preact/hooks';
import { fileName } from '../../../gear/files.ts';
import { positionsOf } from '../../../gear/positions.ts';
import { assemble } from '../../../gear/rig.ts';
import type { Settings } from '../../../gear/settings.ts';
import type { MadeFrame } from '../../../outing/state.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { Button } from '../../parts/Button.tsx';
import { MarkStepper } from '../../parts/MarkStepper.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { useWords } from '../../words/words.ts';
import { FileStepper } from './FileStepper.tsx';
import { timeText } from './marks.ts';
import { useRun } from './useRun.ts';

/** What was really set, by clicks on the body's own positions; nothing is typed in the dark. */
export function OtherwiseSheet({
  frame,
  onClose,
}: {
  readonly frame: MadeFrame;
  readonly onClose: () => void;
}) {
  const { state, tap } = useRun();
  const words = useWords();
  const { outing, format } = words;
  const { planned } = frame;
  const parts = assemble(state.gear, planned.rig);
  const [settings, setSettings] = useState<Settings>(planned.settings);
  const [file, setFile] = useState(state.rigs.get(planned.rig)?.nextFile ?? null);
  const positions = parts && positionsOf(parts.body, parts.lens);
  if (!parts || !positions || isRefusal(positions)) return null;
  const marks = (list: readonly { readonly mark: string }[]) => list.map(({ mark }) => mark);
  const { time } = settings;
  const fMarks = marks(positions.fNumbers);
  const times = marks(positions.times);
  const isos = marks(positions.isos);
  const record = async () => {
    await tap({ tap: 'record', made: frame.id, settings, fileNumber: file });
    onClose();
  };
  return (
    <Sheet
      title={outing.record.title}
      onClose={onClose}
      acts={
        <Button rank="act" onPress={() => void record()}>
          {outing.record.recordThis}
        </Button>
      }
    >
      <p class="lead">
        <RigSign letter={parts.rig.letter} /> {parts.body.name}
      </p>
      <MarkStepper
        label={outing.dial.aperture}
        marks={fMarks}
        at={fMarks.indexOf(settings.fMark)}
        write={format.fMark}
        note={outing.record.planned(format.fMark(planned.settings.fMark))}
        onTurn={(to) => setSettings({ ...settings, fMark: fMarks[to] ?? settings.fMark })}
      />
      {time.kind === 'bulb' ? (
        <p>
          {outing.dial.bulb}, {outing.record.bulbMeasured}
        </p>
      ) : (
        <MarkStepper
          label={outing.dial.time}
          marks={times}
          at={times.indexOf(time.mark)}
          write={format.timeMark}
          note={outing.record.planned(timeText(words, planned.settings.time))}
          onTurn={(to) =>
            setSettings({ ...settings, time: { kind: 'dial', mark: times[to] ?? time.mark } })
          }
        />
      )}
      <MarkStepper
        label={outing.dial.iso}
        marks={isos}
        at={isos.indexOf(settings.isoMark)}
        write={format.isoMark}
        note={outing.record.planned(format.isoMark(planned.settings.isoMark))}
        onTurn={(to) => setSettings({ ...settings, isoMark: isos[to] ?? settings.isoMark })}
      />
      <FileStepper
        value={file}
        write={(number) => fileName(parts.body.files, number)}
        onChange={setFile}
      />
    </Sheet>
  );
}
