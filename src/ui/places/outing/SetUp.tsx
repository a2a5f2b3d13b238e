import { useState } from 'preact/hooks';
import { fileName } from '../../../gear/files.ts';
import type { RigId } from '../../../gear/ids.ts';
import { type Assembled, assemble } from '../../../gear/rig.ts';
import { SETUP_ITEMS, type SetupItem } from '../../../outing/events.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { CueFields } from '../../shell/laterCues.tsx';
import { useWords, type Words } from '../../words/words.ts';
import { clockOffer } from './laterClock.ts';
import { UndoButton } from './SideActs.tsx';
import { safetySheet } from './safetyParts.ts';
import { useRun } from './useRun.ts';

/** Room asked for on the card, against frames planned: retakes and extra shots (our choice). */
const CARD_ROOM = 1.5;

/** The set-up sheet: once for each rig before the first frame. Every tick is logged. */
export function SetUp() {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  const rigs = state.plan.rigs.flatMap((id) => assemble(state.gear, id) ?? []);
  const missing = rigs.reduce(
    (sum, { rig }) => sum + SETUP_ITEMS.length - (state.rigs.get(rig.id)?.ticked.size ?? 0),
    0,
  );
  const darkKinds = new Set(rigs.map(({ body }) => JSON.stringify(body.darkFrame)));
  return (
    <Screen
      title={words.setUp.title}
      foot={
        <div class="step-foot">
          {missing > 0 && <p>{words.setUp.missing(missing)}</p>}
          <div class="side-acts">
            <UndoButton />
          </div>
          <Button rank="act" onPress={() => void tap({ tap: 'begin-frames' })}>
            {words.setUp.begin}
          </Button>
        </div>
      }
    >
      <p>{words.setUp.lead}</p>
      {state.plan.evening && !state.sky && (
        <Notice>{state.site ? words.light.noSky : words.light.siteGone}</Notice>
      )}
      {darkKinds.size > 1 && <p>{words.setUp.darkSame}</p>}
      {rigs.map((parts) => (
        <RigSheet key={parts.rig.id} parts={parts} />
      ))}
      <clockOffer.Content />
      <PhoneSheet />
      <safetySheet.Content />
      <p>{words.caution}</p>
    </Screen>
  );
}

function RigSheet({ parts }: { readonly parts: Assembled }) {
  const { state, tap } = useRun();
  const words = useWords();
  const { setUp } = words.outing;
  const { rig, body } = parts;
  const run = state.rigs.get(rig.id);
  const ticked = run?.ticked ?? new Set<SetupItem>();
  const tick = (item: SetupItem, done: boolean) => tap({ tap: 'tick', rig: rig.id, item, done });
  return (
    <Section
      title={`${rig.letter} ${body.name}`}
      act={
        <span class="sheet-state">
          <RigSign letter={rig.letter} /> {setUp.done(ticked.size, SETUP_ITEMS.length)}
        </span>
      }
    >
      <div class="ticks">
        {SETUP_ITEMS.map((item) => {
          const note = noteOf(
            item,
            parts,
            state.queue.filter((f) => f.rig === rig.id).length,
            words,
          );
          return (
            <Tick
              key={item}
              field
              checked={ticked.has(item)}
              onChange={(done) => void tick(item, done)}
            >
              {setUp.items[item]}
              {note && <span class="hint"> {note}</span>}
            </Tick>
          );
        })}
      </div>
      {ticked.size < SETUP_ITEMS.length && <TickRest rig={rig.id} ticked={ticked} />}
      <NumberField
        label={`${setUp.counter}, ${rig.letter} ${body.name}`}
        value={run?.nextFile ?? null}
        hint={
          run?.nextFile == null
            ? setUp.counterUnknown
            : setUp.counterNote(fileName(body.files, run.nextFile))
        }
        onCommit={(value) => {
          if (value === null || !Number.isInteger(value) || value < 0)
            return words.outing.counterBad;
          void tap({ tap: 'set-counter', rig: rig.id, next: value });
          return null;
        }}
      />
    </Section>
  );
}

/** One tap for a sheet that was gone through on the body: each line is logged all the same. */
function TickRest({
  rig,
  ticked,
}: {
  readonly rig: RigId;
  readonly ticked: ReadonlySet<SetupItem>;
}) {
  const { tap } = useRun();
  const { outing: words } = useWords();
  const all = async () => {
    for (const item of SETUP_ITEMS) {
      if (!ticked.has(item)) await tap({ tap: 'tick', rig, item, done: true });
    }
  };
  return (
    <Button field onPress={() => void all()}>
      {words.setUp.tickRest}
    </Button>
  );
}

function noteOf(
  item: SetupItem,
  { body }: Assembled,
  planned: number,
  { outing: { setUp }, format }: Words,
): string | null {
  switch (item) {
    case 'raw-and-depth':
      return setUp.rawNote(body.bits.depth, body.bits.loweredBy);
    case 'dark-frame':
      return body.darkFrame.kind === 'from'
        ? setUp.darkNote.from(format.duration(body.darkFrame.fromS))
        : setUp.darkNote[body.darkFrame.kind];
    case 'card-space':
      return setUp.cardNote(Math.ceil(planned * CARD_ROOM));
    default:
      return null;
  }
}

function PhoneSheet() {
  const { desk } = useRun();
  const { outing: words, cues: say } = useWords();
  const [choosing, setChoosing] = useState(false);
  return (
    <Section title={words.setUp.phone}>
      <ul class="hints">
        {words.setUp.phoneHints.map((hint) => (
          <li key={hint}>{hint}</li>
        ))}
      </ul>
      <p role="status">{say.screenAtSetUp[desk.screenLock.value]}</p>
      <Button field onPress={() => setChoosing(true)}>
        {say.choose}
      </Button>
      {choosing && (
        <Sheet title={say.title} onClose={() => setChoosing(false)}>
          <CueFields.Content />
        </Sheet>
      )}
    </Section>
  );
}
