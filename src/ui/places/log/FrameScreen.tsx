import { useState } from 'preact/hooks';
import { figuresOf } from '../../../app/logFigures.ts';
import type { LogFrame } from '../../../log/frames.ts';
import type { FrameHeat } from '../../../log/ledgerHeat.ts';
import type { CorrectionValue } from '../../../outing/events.ts';
import { madeFrame } from '../../../outing/exposure.ts';
import type { MadeId } from '../../../outing/ids.ts';
import type { Instant } from '../../../outing/instant.ts';
import type { Tap } from '../../../outing/next.ts';
import type { RunState } from '../../../outing/state.ts';
import { elapsedBetween } from '../../../outing/timing.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useLogDeskWords } from '../../words/logDesk.ts';
import { RigName } from '../outing/RigName.tsx';
import { CorrectSheet } from './CorrectSheet.tsx';
import {
  correctionWords,
  fileWords,
  heatFigure,
  heatRange,
  openWords,
  verdictWords,
} from './deskSentences.ts';
import type { OpenedLog } from './LogPlace.tsx';
import { Said } from './Said.tsx';
import { changedDials, DIALS, marksOf, secondsText, setWords } from './sentences.ts';

interface Props extends OpenedLog {
  readonly id: string;
}

/** A field that is corrected in a sheet of its own. */
export type SheetField = Exclude<CorrectionValue['field'], 'counts' | 'note'>;

/** One frame: what was planned, set and first logged; corrections, a note, whether it counts. */
export function FrameScreen({ log, access, id }: Props) {
  const { log: desk, navigation } = useApp();
  const words = useLogDeskWords();
  const { log: say } = words;
  const [open, setOpen] = useState<SheetField | null>(null);
  const [refused, setRefused] = useState(false);
  const readOnly = access !== 'full';
  const frames = log.frames.value;
  const at = frames.findIndex((frame) => frame.id === id);
  const frame = frames[at];
  const state = log.journal.state.value;
  if (!frame) {
    return (
      <Screen inner title={say.title}>
        <EmptyHint>{say.frameGone}</EmptyHint>
      </Screen>
    );
  }
  const tap = async (what: Tap) => {
    const served = await desk.tap(what);
    setRefused(served.how === 'refused');
  };
  const correct = (change: CorrectionValue) => tap({ tap: 'correct', made: frame.id, change });
  const turnTo = (to: LogFrame | undefined) =>
    to && navigation.replace('log', state.outing, 'frame', to.id);
  const { planned } = frame;
  return (
    <Screen
      inner
      title={say.frame(at + 1)}
      foot={
        <div class="log-foot">
          <Undo made={frame.id} />
          <Button disabled={at === 0} onPress={() => turnTo(frames[at - 1])}>
            <Icon name="back" />
            {say.earlier}
          </Button>
          <Button disabled={at === frames.length - 1} onPress={() => turnTo(frames[at + 1])}>
            {say.later}
            <Icon name="onward" />
          </Button>
        </div>
      }
    >
      <div class="log-about">
        <p class="lead">
          <RigName gear={state.gear} rig={frame.rig} />
        </p>
        <p>
          {setWords(words, state.plan, planned.set)}
          <br />
          {[say.pass(planned.pass, planned.repeat), frame.attempt > 1 && say.retake(frame.attempt)]
            .filter(Boolean)
            .join(' · ')}
        </p>
        <Said log={log} access={access} />
        {refused && <Notice urgent>{say.refused}</Notice>}
      </div>
      <Section title={say.settings}>
        {!readOnly && frame.settings && <p class="hint">{say.settingsHint}</p>}
        <Facts frame={frame} state={state} onPick={readOnly || !frame.settings ? null : setOpen} />
      </Section>
      <Section title={say.counts}>
        <Counts
          frame={frame}
          otherCounts={frames.some((one) => one.counts && one.planned.key === planned.key)}
          act={
            readOnly || !frame.settings
              ? null
              : (counts) =>
                  counts ? void correct({ field: 'counts', value: true }) : void discard(frame, tap)
          }
        />
      </Section>
      <Section title={say.when}>
        <When
          frame={frame}
          heat={figuresOf(log).frameHeat(frame)}
          isFirst={frames.find(({ rig }) => rig === frame.rig) === frame}
        />
      </Section>
      <Section title={say.notes}>
        {frame.notes.length > 0 && (
          <ul class="log-notes">
            {frame.notes.map((note, index) => (
              <li key={index}>{note}</li>
            ))}
          </ul>
        )}
        {!readOnly && (
          <TextField
            // A note that is logged leaves an empty field behind.
            key={frame.notes.length}
            label={say.addNote}
            value=""
            long
            onCommit={(text) => {
              if (text.trim() !== '') void tap({ tap: 'note', text, made: frame.id });
              return null;
            }}
          />
        )}
      </Section>
      {frame.corrections.length > 0 && (
        <Section title={say.corrections}>
          <ul class="log-notes">
            {frame.corrections.map((made) => (
              <li key={made.id}>
                <span class="hint">
                  {words.format.date(made.at.wallMs, made.at.offsetMin)},{' '}
                  {words.format.time(made.at.wallMs, made.at.offsetMin)}
                </span>
                <br />
                {correctionWords(words, state.gear, frame, made)}
              </li>
            ))}
          </ul>
        </Section>
      )}
      {open && (
        <CorrectSheet
          gear={state.gear}
          frame={frame}
          field={open}
          onCorrect={(change) => {
            setOpen(null);
            void correct(change);
          }}
          onClose={() => setOpen(null)}
        />
      )}
    </Screen>
  );
}

/** A frame that a correction has let count must be ruled out as well. */
async function discard(frame: LogFrame, tap: (what: Tap) => Promise<void>): Promise<void> {
  if (!frame.discarded) await tap({ tap: 'discard', made: frame.id });
  if (frame.corrections.some(({ change }) => change.field === 'counts' && change.value)) {
    await tap({ tap: 'correct', made: frame.id, change: { field: 'counts', value: false } });
  }
}

/** Takes back what was said last, where it was said of this frame. */
function Undo({ made }: { readonly made: MadeId }) {
  const { log } = useApp();
  const { log: say } = useLogDeskWords();
  const last = log.undoable.value;
  return (
    last?.made === made && (
      <Button onPress={() => void log.undo()}>
        <Icon name="undo" />
        {say.undo[last.kind]}
      </Button>
    )
  );
}

interface FactsProps {
  readonly frame: LogFrame;
  readonly state: RunState;
  /** Null = nothing can be corrected. */
  readonly onPick: ((field: SheetField) => void) | null;
}

/** What was set, each with what was planned and what was first logged where that differs. */
function Facts({ frame, state, onPick }: FactsProps) {
  const words = useLogDeskWords();
  const { log: say, parts } = words;
  const { settings, firstSettings, planned, openTime, opened, closed } = frame;
  const made = madeFrame(state, frame.id);
  const wanted = marksOf(words, planned.settings);
  const set = marksOf(words, settings ?? planned.settings);
  const first = firstSettings && marksOf(words, firstSettings);
  const changed = changedDials(frame);
  /** What stands under a value: what is said of it, and what was first logged if that was another. */
  const note = (about: string, now: string, before: string | null | undefined) =>
    before && before !== now ? `${about} · ${say.firstLogged(before)}` : about;
  const open = openTime.from === 'unknown' ? parts.unknown : secondsText(words, openTime.s);
  const measured = closed && elapsedBetween(opened, closed);
  const file = frame.fileName ?? say.noFile;
  const verdict = verdictWords(words, frame.verdict);
  const facts: readonly (readonly [SheetField, string, string])[] = [
    ...DIALS.map((dial) => {
      const about = changed.includes(dial) ? say.planned(wanted[dial]) : say.asPlanned;
      return [dial, set[dial], note(about, set[dial], first?.[dial])] as const;
    }),
    [
      'elapsedS',
      say.openFor(open),
      note(
        openWords(words, openTime),
        open,
        measured && measured.certainty !== 'unknown' ? secondsText(words, measured.s) : null,
      ),
    ],
    [
      'fileNumber',
      file,
      note(
        say.fields.fileNumber,
        file,
        made && fileWords(words, state.gear, frame.rig, made.fileNumber),
      ),
    ],
    [
      'verdict',
      verdict,
      note(say.fields.verdict, verdict, made && verdictWords(words, made.verdict)),
    ],
  ];
  return (
    <ul>
      {facts.map(([field, title, about]) => (
        <li key={field} class={changed.some((dial) => dial === field) ? 'log-changed' : undefined}>
          {onPick ? (
            <Row title={title} note={about} onPress={() => onPick(field)} />
          ) : (
            <div class="row">
              <span class="words">
                <span class="title">{title}</span>
                <span class="hint">{about}</span>
              </span>
            </div>
          )}
        </li>
      ))}
    </ul>
  );
}

interface CountsProps {
  readonly frame: LogFrame;
  readonly otherCounts: boolean;
  /** Null = it cannot be changed here. */
  readonly act: ((counts: boolean) => void) | null;
}

function Counts({ frame: { counts }, otherCounts, act }: CountsProps) {
  const { log: say } = useLogDeskWords();
  return (
    <>
      <p>{counts ? say.countsYes : otherCounts ? say.countsOther : say.countsNo}</p>
      {act && (
        <div class="acts">
          <Button onPress={() => act(!counts)}>{counts ? say.discard : say.letCount}</Button>
        </div>
      )}
    </>
  );
}

/** Both ends of the exposure, in the local time of the evening, and what lay around it. */
function When({
  frame,
  heat,
  isFirst,
}: {
  readonly frame: LogFrame;
  readonly heat: FrameHeat;
  readonly isFirst: boolean;
}) {
  const words = useLogDeskWords();
  const { format, log: say } = words;
  const { opened, closed } = frame;
  const clock = (at: Instant) => format.timeFine(at.wallMs, at.offsetMin);
  const rested = frame.restedS;
  const facts: readonly (readonly [string, string | null])[] = [
    [say.day, format.date(opened.wallMs, opened.offsetMin)],
    [say.opened, clock(opened)],
    [say.closed, closed && clock(closed)],
    [say.zone, say.zoneOf(offsetText(opened.offsetMin), opened.zone)],
    [say.leadIn, frame.leadInS > 0 ? secondsText(words, frame.leadInS) : say.noLeadIn],
    [say.rested, isFirst ? say.firstOfRig : rested === null ? null : format.duration(rested)],
    [
      say.heat,
      heat.known
        ? say.heatOf(heatFigure(words, heat.heat.usual), heatRange(words, heat.heat))
        : null,
    ],
    ...(frame.lateS === null ? [] : [[say.late, secondsText(words, frame.lateS)] as const]),
  ];
  return (
    <dl class="log-facts">
      {facts.map(([label, value]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd class={value === null ? 'unknown' : undefined}>{value ?? words.parts.unknown}</dd>
        </div>
      ))}
    </dl>
  );
}

/** '+1', '+5:30', '−3'; '±0' in UTC itself. */
function offsetText(offsetMin: number): string {
  const size = Math.abs(offsetMin);
  const minutes = size % 60 === 0 ? '' : `:${String(size % 60).padStart(2, '0')}`;
  const sign = offsetMin === 0 ? '±' : offsetMin > 0 ? '+' : '\u2212';
  return `${sign}${Math.floor(size / 60)}${minutes}`;
}
