import { useState } from 'preact/hooks';
import type { PictureDesk } from '../../../app/pictures.ts';
import type { Matching } from '../../../exchange/matching/types.ts';
import type { LogFrame } from '../../../log/frames.ts';
import type { CameraFile } from '../../../outing/cameraFile.ts';
import { Notice } from '../../parts/Notice.tsx';
import { Row } from '../../parts/Row.tsx';
import { Section } from '../../parts/Section.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { usePictureWords } from '../../words/pictures.ts';
import { fileFacts, frameFacts } from './fileWords.ts';
import type { OpenedLog } from './LogPlace.tsx';
import { Windowed } from './Windowed.tsx';

interface Props extends OpenedLog {
  readonly desk: PictureDesk;
  readonly matching: Matching;
  readonly files: readonly CameraFile[];
}

/** Enough lines for more than one screen. */
const STRETCH = 20;
const LINE_REM = 5;
/** Files offered for one frame: those that a hand might have meant. */
const NEAREST = 10;

/** Each frame with its file; a tap changes it by hand. */
export function FramesAndFiles({ log, access, desk, matching, files }: Props) {
  const words = usePictureWords();
  const { pictures: say } = words;
  const [open, setOpen] = useState<number | null>(null);
  const [refused, setRefused] = useState(false);
  const frames = log.frames.value;
  const { gear, files: written } = log.journal.state.value;
  const lines = matching.frames.map((match, place) => ({ match, place, frame: frames[place] }));
  const stretches = Array.from({ length: Math.ceil(lines.length / STRETCH) }, (_, index) => {
    const items = lines.slice(index * STRETCH, (index + 1) * STRETCH);
    return { key: `${index}`, items, rem: items.length * LINE_REM };
  });
  const chosen = open === null ? undefined : matching.frames[open];
  const frame = open === null ? undefined : frames[open];
  const give = async (made: LogFrame['id'], file: CameraFile | null) => {
    setOpen(null);
    const served = await desk.say(made, file);
    setRefused(served.how === 'refused');
  };
  return (
    <Section title={say.framesTitle}>
      {refused && <Notice urgent>{say.refused}</Notice>}
      <Windowed
        stretches={stretches}
        draw={({ items }) => (
          <ul class="rows">
            {items.map(({ match: { made, file, sure, said }, place, frame: of }) => {
              const kept = written.get(made);
              const name = (file === null ? kept?.name : files[file]?.name) ?? say.noneYet;
              const how = said ? say.said : file === null ? null : sure ? say.sure : say.doubtful;
              const facts = of && frameFacts(words, gear, of);
              return (
                <li key={made}>
                  {access === 'full' ? (
                    <Row
                      title={`${place + 1} · ${name}`}
                      note={[how, facts].filter(Boolean).join(' · ')}
                      onPress={() => setOpen(place)}
                    />
                  ) : (
                    <p>{[`${place + 1} · ${name}`, how, facts].filter(Boolean).join(' · ')}</p>
                  )}
                </li>
              );
            })}
          </ul>
        )}
      />
      {open !== null && chosen && frame && (
        <Sheet title={say.changeTitle(open + 1)} onClose={() => setOpen(null)}>
          <p class="hint">{frameFacts(words, gear, frame)}</p>
          <p class="hint">{say.changeHint}</p>
          <ul class="rows">
            {offered(chosen, matching, files, frame).map((file) => (
              <li key={`${file.bytes} ${file.name}`}>
                <Row
                  title={file.name}
                  note={fileFacts(words, file)}
                  onPress={() => void give(chosen.made, file)}
                />
              </li>
            ))}
            <li>
              <Row title={say.noFile} onPress={() => void give(chosen.made, null)} />
            </li>
          </ul>
        </Sheet>
      )}
    </Section>
  );
}

/** The file it has and those in doubt; then the nearest in time by the clock of its body. */
function offered(
  match: Matching['frames'][number],
  { clocks }: Matching,
  files: readonly CameraFile[],
  frame: LogFrame,
): readonly CameraFile[] {
  const doubtful = [match.file, ...match.others.map(({ file }) => file)];
  const clock = clocks.find(({ rig }) => rig === frame.rig);
  const { wallMs, offsetMin } = frame.opened;
  const expected = wallMs + offsetMin * 60_000 + (clock?.aheadS ?? 0) * 1000;
  const far = ({ time }: CameraFile): number =>
    time === null ? Number.POSITIVE_INFINITY : Math.abs(time.shownMs - expected);
  const nearest = [...files].sort((a, b) => far(a) - far(b)).slice(0, NEAREST);
  return [
    ...new Set([
      ...doubtful.flatMap((file) => (file === null ? [] : (files[file] ?? []))),
      ...nearest,
    ]),
  ];
}
