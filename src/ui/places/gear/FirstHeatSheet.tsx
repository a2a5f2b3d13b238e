import { useState } from 'preact/hooks';
import type { Body, MeasuredHeat } from '../../../gear/body.ts';
import { thermalRangeOf } from '../../../gear/bodyHeat.ts';
import { firstHeat } from '../../../gear/firstHeat.ts';
import { readDate } from '../../../gear/parse.ts';
import { isFault, number, type Reader } from '../../../gear/read.ts';
import {
  type FirstValues,
  firstValues,
  HEAT_ERROR,
  heatsOfLevels,
} from '../../../science/heatFit.ts';
import { isRefusal, type Refusal } from '../../../science/refusal.ts';
import { doublings } from '../../../science/sensorUnits.ts';
import { duration, parseDuration, parseSeconds, type Seconds } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Figure } from '../../parts/Figure.tsx';
import { Figures } from '../../parts/Figures.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';

interface Props {
  readonly body: Body;
  /** Returns one sentence to refuse it. */
  readonly onChange: (heat: MeasuredHeat) => string | null;
  readonly onClose: () => void;
}

type Kind = 'levels' | 'heats';
type Three = readonly [number | null, number | null, number | null];

/** The middle of the first two frames of the ready capped series. */
const USUAL_AFTER = duration(120);

/** As far as a body may take to warm: the bounds of its time constant. */
const LONGEST_S = 7200;
const readStep = number(parseSeconds, 1, LONGEST_S);
const readAfter = number(parseDuration, 0, LONGEST_S);

/** What three levels or heats give; null while something is missing. */
function fitOf(
  kind: Kind,
  [first, second, third]: Three,
  step: Seconds | null,
  after: Seconds | null,
): FirstValues | Refusal | null {
  if (first === null || second === null || third === null || step === null) return null;
  if (kind === 'heats') {
    const heats = {
      first: doublings(first),
      second: doublings(second),
      third: doublings(third),
    };
    return firstValues(heats, step);
  }
  if (after === null) return null;
  const heats = heatsOfLevels([first, second, third], step, after);
  return isRefusal(heats) ? heats : firstValues(heats, step);
}

/** First values for a body from three frames of a capped series, to be taken over at a tap. */
export function FirstHeatSheet({ body, onChange, onClose }: Props) {
  const { today } = useApp();
  const { fault, format, gear } = useGearWords();
  const { heat: say } = gear;
  const [kind, setKind] = useState<Kind>('levels');
  const [three, setThree] = useState<Three>([null, null, null]);
  const [step, setStep] = useState<Seconds | null>(null);
  const [after, setAfter] = useState<Seconds | null>(USUAL_AFTER);
  const [date, setDate] = useState(today());
  const [refusal, setRefusal] = useState<string | null>(null);

  const found = fitOf(kind, three, step, after);
  const fitted = found === null || isRefusal(found) ? null : found;
  const { usual: doubling } = thermalRangeOf(body).doubling;
  const heat = fitted && firstHeat(fitted, doubling, say.sourceOf(date));

  const commit =
    (set: (time: Seconds | null) => void, reader: Reader<Seconds>) => (value: number) => {
      const read = reader(value);
      set(isFault(read) ? null : read);
      return isFault(read) ? fault(read) : null;
    };
  const take = () => {
    if (heat === null) return;
    const broken = onChange({ ...body.heat, ...heat });
    if (broken === null) onClose();
    else setRefusal(say.notSaved(broken));
  };

  return (
    <Sheet
      title={say.fit}
      onClose={onClose}
      acts={
        <>
          {refusal && <Notice urgent>{refusal}</Notice>}
          <Button rank="main" disabled={heat === null} onPress={take}>
            {say.take}
          </Button>
        </>
      }
    >
      <p>{say.fitIs}</p>
      <Choice<Kind> label={say.given} options={say.kinds} value={kind} onChange={setKind} />
      <p class="hint">{kind === 'levels' ? say.levelsAre : say.heatsAre}</p>
      <div class="pair">
        {say.three.map((label, place) => (
          <NumberField
            key={label}
            label={label}
            value={three[place] ?? null}
            onCommit={(value) => {
              setThree((before) => before.with(place, value) as unknown as Three);
              return null;
            }}
          />
        ))}
      </div>
      <NumberField
        label={say.step}
        hint={say.stepHint}
        unit={gear.seconds}
        value={step}
        onCommit={commit(setStep, readStep)}
      />
      {kind === 'levels' && (
        <NumberField
          label={say.after}
          hint={say.afterHint}
          unit={gear.seconds}
          value={after}
          onCommit={commit(setAfter, readAfter)}
        />
      )}
      <TextField
        label={say.date}
        hint={gear.dateHint}
        value={date}
        onCommit={(typed) => {
          const read = readDate(typed);
          if (isFault(read)) return fault(read);
          setDate(read);
          return null;
        }}
      />
      {found === null && <p class="hint">{say.fitNeeds}</p>}
      {found !== null && isRefusal(found) && <Notice>{say.notFitted[found.rule]}</Notice>}
      {fitted && heat && (
        <>
          <Figures>
            {(['tau', 'exposing'] as const).map((figure) => {
              const value = heat[figure];
              const unit = say.units[figure];
              return (
                value && (
                  <Figure
                    key={figure}
                    label={say.figures[figure]}
                    value={say.found(format.plain(value.usual), unit)}
                    note={say.foundRange(format.plain(value.least), format.plain(value.most), unit)}
                  />
                )
              );
            })}
          </Figures>
          <p class="hint">
            {say.byDoubling(format.number(fitted.plateau.usual, 2), format.plain(doubling))}{' '}
            {say.withError(format.plain(HEAT_ERROR))}
          </p>
        </>
      )}
    </Sheet>
  );
}
