import { useState } from 'preact/hooks';
import { fileName } from '../../../gear/files.ts';
import type { RigId } from '../../../gear/ids.ts';
import { assemble } from '../../../gear/rig.ts';
import type { ListTap } from '../../../outing/changeCost.ts';
import type { Tap } from '../../../outing/next.ts';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { FileStepper } from './FileStepper.tsx';
import { Cost } from './laterCost.tsx';
import { NoteSheet } from './NoteSheet.tsx';
import { ReadingSheet } from './ReadingSheet.tsx';
import { RigName, rigText } from './RigName.tsx';
import { useRun } from './useRun.ts';

type Open =
  | 'list'
  | 'note'
  | 'reading'
  | 'counter'
  | 'end'
  | 'battery-changed'
  | 'lens-touched'
  | 'powered-off';

/** Everything that is not the next step, each one tap away. */
export function MoreSheet({ onClose }: { readonly onClose: () => void }) {
  const { state, tap } = useRun();
  const { navigation, cues } = useApp();
  const { outing: words, shell, cues: say } = useWords();
  const { silent } = cues.choices.value;
  const [open, setOpen] = useState<Open>('list');
  const act = async (what: Tap) => {
    onClose();
    await tap(what);
  };
  switch (open) {
    case 'note':
      return <NoteSheet onClose={onClose} />;
    case 'reading':
      return <ReadingSheet onClose={onClose} />;
    case 'counter':
      return <CounterSheet onClose={onClose} />;
    case 'end':
      return (
        <Sheet
          title={words.acts.end}
          onClose={onClose}
          acts={
            <Button rank="act" onPress={() => void act({ tap: 'end' })}>
              {words.acts.end}
            </Button>
          }
        >
          <p>{words.acts.endSure}</p>
        </Sheet>
      );
    case 'battery-changed':
    case 'lens-touched':
    case 'powered-off':
      return (
        <WhichRig
          title={words.acts[TITLES[open]]}
          onPick={(rig) => void act({ tap: open, rig })}
          onClose={onClose}
        />
      );
    case 'list':
      break;
    default:
      open satisfies never;
  }
  const last = state.made.at(-1);
  const [next] = state.queue;
  const line = (label: string, press: () => void, able = true, costs: ListTap | null = null) => {
    const button = (
      <Button field disabled={!able} onPress={press}>
        {label}
      </Button>
    );
    return able && costs ? (
      <div class="costed">
        {button}
        <Cost.Content tap={costs} />
      </div>
    ) : (
      button
    );
  };
  const swap: ListTap | null = next ? { tap: 'swap-next-two', frame: next.key } : null;
  const drop: ListTap | null = next ? { tap: 'drop-set', set: next.set } : null;
  const idle = state.open.length === 0 && state.phase === 'running';
  return (
    <Sheet title={words.acts.title} onClose={onClose}>
      <div class="more">
        {line(words.acts.note, () => setOpen('note'))}
        {line(words.acts.reading, () => setOpen('reading'))}
        {line(
          words.acts.retake,
          () => last && void act({ tap: 'retake', frame: last.planned.key }),
          last !== undefined,
        )}
        {line(
          words.acts.skip,
          () => next && void act({ tap: 'skip-frame', frame: next.key }),
          idle && next !== undefined,
        )}
        {line(
          words.acts.swap,
          () => next && void act({ tap: 'swap-next-two', frame: next.key }),
          idle && state.queue.length > 1,
          swap,
        )}
        {line(
          words.acts.dropSet,
          () => next && void act({ tap: 'drop-set', set: next.set }),
          idle && next !== undefined,
          drop,
        )}
        {line(words.acts.battery, () => setOpen('battery-changed'))}
        {line(words.acts.power, () => setOpen('powered-off'))}
        {line(words.acts.lens, () => setOpen('lens-touched'))}
        {line(words.acts.counter, () => setOpen('counter'))}
        {line(silent ? say.endSilence : say.beSilent, () => {
          onClose();
          cues.choose({ silent: !silent });
        })}
        {line(words.acts.pause, () => void act({ tap: 'pause' }), state.phase !== 'paused')}
        {line(words.acts.end, () => setOpen('end'), state.open.length === 0)}
      </div>
      {state.open.length > 0 && <p>{words.refused('frame-open')}</p>}
      <h3>{words.otherPlaces}</h3>
      <div class="more">
        {(['gear', 'light', 'plan', 'log'] as const).map((place) =>
          line(shell.place[place], () => navigation.visit(place)),
        )}
      </div>
    </Sheet>
  );
}

const TITLES = {
  'battery-changed': 'battery',
  'lens-touched': 'lens',
  'powered-off': 'power',
} as const;

interface WhichRigProps {
  readonly title: string;
  readonly onPick: (rig: RigId) => void;
  readonly onClose: () => void;
}

function WhichRig({ title, onPick, onClose }: WhichRigProps) {
  const { state } = useRun();
  const { outing: words } = useWords();
  return (
    <Sheet title={title} onClose={onClose}>
      <p>{words.which}</p>
      <div class="more">
        {state.plan.rigs.map((rig) => (
          <Button key={rig} field onPress={() => onPick(rig)}>
            <RigName gear={state.gear} rig={rig} />
          </Button>
        ))}
      </div>
    </Sheet>
  );
}

/** The next file number of each rig, by clicks. */
function CounterSheet({ onClose }: { readonly onClose: () => void }) {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  const [numbers, setNumbers] = useState<ReadonlyMap<RigId, number>>(new Map());
  const save = async () => {
    onClose();
    for (const [rig, next] of numbers) await tap({ tap: 'set-counter', rig, next });
  };
  return (
    <Sheet
      title={words.setUp.counter}
      onClose={onClose}
      acts={
        <Button rank="act" disabled={numbers.size === 0} onPress={() => void save()}>
          {words.counterSave}
        </Button>
      }
    >
      {state.plan.rigs.map((rig) => {
        const body = assemble(state.gear, rig)?.body;
        return (
          <section key={rig} aria-label={rigText(state.gear, rig)}>
            <p class="lead">
              <RigName gear={state.gear} rig={rig} />
            </p>
            <FileStepper
              value={numbers.get(rig) ?? state.rigs.get(rig)?.nextFile ?? null}
              write={(number) => (body ? fileName(body.files, number) : String(number))}
              onChange={(value) => setNumbers(new Map(numbers).set(rig, value))}
            />
          </section>
        );
      })}
    </Sheet>
  );
}
