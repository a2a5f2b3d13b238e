import { useState } from 'preact/hooks';
import { positionsOf } from '../../../gear/positions.ts';
import { type Assembled, assemble } from '../../../gear/rig.ts';
import type { Reading } from '../../../outing/events.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { ev, type FNumber, type Iso, type Seconds } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { MarkStepper } from '../../parts/MarkStepper.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { useWords } from '../../words/words.ts';
import { LightNow } from './LightNow.tsx';
import { useRun } from './useRun.ts';

/** EV positions by thirds from -6 to 16: what a meter can show from moonlight to sun. */
const EV_THIRDS = Array.from({ length: 67 }, (_, index) => (index - 18) / 3);
const THIRDS = Array.from({ length: 19 }, (_, index) => index - 9);

/** A meter reading, or a test frame that serves as one: all by clicks. */
export function ReadingSheet({
  kind: wanted,
  onClose,
}: {
  /** What is asked for; else as last time. */
  readonly kind?: Reading['kind'];
  readonly onClose: () => void;
}) {
  const { state, tap } = useRun();
  const { outing: words, format } = useWords();
  const before = state.readings.at(-1);
  const [kind, setKind] = useState<Reading['kind']>(wanted ?? before?.reading.kind ?? 'ev');
  const [meter, setMeter] = useState(
    (wanted === 'test-frame' ? words.reading.meters[2] : before?.meter) ??
      words.reading.meters[0] ??
      '',
  );
  const [evAt, setEvAt] = useState(EV_THIRDS.indexOf(lastEv(before?.reading) ?? 3));
  const [thirds, setThirds] = useState(0);
  const [marks, setMarks] = useState({ f: 0, t: 0, s: 0, touched: false });
  const rig = state.plan.rigs.flatMap((id) => assemble(state.gear, id) ?? [])[0];
  const dials = rig && dialsOf(rig);
  const at =
    marks.touched || !dials ? marks : { ...marks, ...startOf(dials, state.made.at(-1)?.settings) };
  const save = async () => {
    const reading = readingOf(kind, EV_THIRDS[evAt] ?? 0, dials, at, thirds);
    onClose();
    if (reading) await tap({ tap: 'reading', meter, reading });
  };
  return (
    <Sheet
      title={words.reading.title}
      onClose={onClose}
      acts={
        <Button rank="act" onPress={() => void save()}>
          {words.reading.save}
        </Button>
      }
    >
      <Choice
        field
        label={words.reading.meter}
        options={words.reading.meters.map((value) => ({ value, label: value }))}
        value={meter}
        onChange={setMeter}
      />
      <Choice
        field
        label={words.reading.kind}
        options={(['ev', 'settings', 'test-frame'] as const).map((value) => ({
          value,
          label: words.reading.kinds[value],
        }))}
        value={kind}
        onChange={setKind}
      />
      {kind === 'ev' ? (
        <MarkStepper
          label={words.reading.ev}
          marks={EV_THIRDS.map((value) => format.number(value, 1))}
          at={evAt}
          write={(mark) => mark}
          onTurn={setEvAt}
        />
      ) : (
        dials && (
          <>
            <MarkStepper
              label={words.dial.aperture}
              marks={dials.f.map(({ mark }) => mark)}
              at={at.f}
              write={format.fMark}
              onTurn={(f) => setMarks({ ...at, f, touched: true })}
            />
            <MarkStepper
              label={words.dial.time}
              marks={dials.t.map(({ mark }) => mark)}
              at={at.t}
              write={format.timeMark}
              onTurn={(t) => setMarks({ ...at, t, touched: true })}
            />
            <MarkStepper
              label={words.dial.iso}
              marks={dials.s.map(({ mark }) => mark)}
              at={at.s}
              write={format.isoMark}
              onTurn={(s) => setMarks({ ...at, s, touched: true })}
            />
          </>
        )
      )}
      {kind === 'test-frame' && (
        <MarkStepper
          label={words.reading.over}
          marks={THIRDS.map(String)}
          at={THIRDS.indexOf(thirds)}
          write={(value) =>
            words.reading.thirds(Number(value), format.number(Math.abs(Number(value)) / 3, 1))
          }
          onTurn={(to) => setThirds(THIRDS[to] ?? 0)}
        />
      )}
      <p>{words.reading.hint}</p>
      <LightNow />
    </Sheet>
  );
}

interface Click<T> {
  readonly mark: string;
  readonly exact: T;
}
interface MeterDials {
  readonly f: readonly Click<FNumber>[];
  readonly t: readonly Click<Seconds>[];
  readonly s: readonly Click<Iso>[];
}

/** A meter has no profile; the first rig's marks serve, in the order in which they click. */
function dialsOf({ body, lens }: Assembled): MeterDials | null {
  const positions = positionsOf(body, lens);
  if (isRefusal(positions)) return null;
  return { f: positions.fNumbers, t: positions.times, s: positions.isos };
}

/** Near what was shot last, so that few clicks are needed. */
function startOf(
  dials: MeterDials,
  last:
    | {
        readonly fMark: string;
        readonly time: { readonly kind: string; readonly mark?: string };
        readonly isoMark: string;
      }
    | null
    | undefined,
) {
  const place = (list: readonly Click<unknown>[], mark: string | undefined) =>
    Math.max(
      0,
      list.findIndex((click) => click.mark === mark),
    );
  return {
    f: place(dials.f, last?.fMark),
    t: place(dials.t, last?.time.mark),
    s: place(dials.s, last?.isoMark),
  };
}

function readingOf(
  kind: Reading['kind'],
  ev100: number,
  dials: MeterDials | null | undefined,
  at: { readonly f: number; readonly t: number; readonly s: number },
  thirdsOver: number,
): Reading | null {
  if (kind === 'ev') return { kind, ev100: ev(ev100) };
  const n = dials?.f[at.f]?.exact;
  const t = dials?.t[at.t]?.exact;
  const s = dials?.s[at.s]?.exact;
  if (n === undefined || t === undefined || s === undefined) return null;
  return kind === 'settings' ? { kind, n, t, s } : { kind, n, t, s, thirdsOver };
}

const lastEv = (reading: Reading | undefined): number | undefined =>
  reading?.kind === 'ev' ? reading.ev100 : undefined;
