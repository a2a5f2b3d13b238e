import type { Decision } from '../../../app/pictures.ts';
import type { Ask, Matching } from '../../../exchange/matching/types.ts';
import type { CameraFile } from '../../../outing/cameraFile.ts';
import type { MadeId } from '../../../outing/ids.ts';
import { Row } from '../../parts/Row.tsx';
import { type PictureWords, usePictureWords } from '../../words/pictures.ts';
import { rigText } from '../outing/RigName.tsx';
import { clockText } from './ClockLines.tsx';
import { fileFacts, frameFacts } from './fileWords.ts';
import type { OpenedLog } from './LogPlace.tsx';

interface Props extends Pick<OpenedLog, 'log'> {
  readonly ask: Ask;
  readonly matching: Matching;
  readonly files: readonly CameraFile[];
  readonly onDecide: (decision: Decision) => void;
}

interface Choice {
  readonly title: string;
  readonly note?: string;
  readonly decision: Decision;
}

/** One question that the files leave open, with an answer a line. */
export function AskedOf({ ask, log, matching, files, onDecide }: Props) {
  const words = usePictureWords();
  const { question, about, choices } = told(words, ask, log, matching, files);
  return (
    <div class="pictures-ask">
      <h3>{question}</h3>
      {about && <p class="hint">{about}</p>}
      <ul class="rows">
        {choices.map(({ title, note, decision }, index) => (
          <li key={index}>
            <Row title={title} note={note} onPress={() => onDecide(decision)} />
          </li>
        ))}
      </ul>
    </div>
  );
}

function told(
  words: PictureWords,
  ask: Ask,
  log: Props['log'],
  { groups }: Matching,
  files: readonly CameraFile[],
): {
  readonly question: string;
  readonly about?: string;
  readonly choices: readonly Choice[];
} {
  const { pictures: say } = words;
  const { gear } = log.journal.state.value;
  switch (ask.ask) {
    case 'which-rig': {
      const group = groups.find(({ key }) => key === ask.group);
      const named = [group?.model, group?.serial].filter(Boolean).join(' ') || say.unnamed;
      return {
        question: say.whichRig(named, group?.files.length ?? 0),
        choices: ask.choices.map(({ rig }) => ({
          title: rig === null ? say.noRig : rigText(gear, rig),
          decision: { ask: 'which-rig', group: ask.group, rig },
        })),
      };
    }
    case 'which-clock':
      return {
        question: say.whichClock(rigText(gear, ask.rig)),
        choices: ask.choices.map(({ clock }) => ({
          title: clockText(words, clock),
          decision: { ask: 'which-clock', clock },
        })),
      };
    case 'which-file':
      return {
        question: say.whichFile,
        about: frameAbout(words, log, ask.made),
        choices: ask.choices.map(({ file }) => {
          const found = file === null ? undefined : files[file];
          return {
            title: found?.name ?? say.noFile,
            ...(found ? { note: fileFacts(words, found) } : {}),
            decision: { ask: 'which-file', made: ask.made, file },
          };
        }),
      };
    default:
      return ask satisfies never;
  }
}

/** 'Frame 3 · A Alder 44 · f/6.3 · 64 s · ISO 100 · 17:45:06' */
function frameAbout(words: PictureWords, log: Props['log'], made: MadeId): string {
  const frames = log.frames.value;
  const place = frames.findIndex(({ id }) => id === made);
  const frame = frames[place];
  if (!frame) return '';
  return `${words.pictures.frame(place + 1)} · ${frameFacts(words, log.journal.state.value.gear, frame)}`;
}
