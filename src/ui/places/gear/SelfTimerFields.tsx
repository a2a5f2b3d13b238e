import { useState } from 'preact/hooks';
import type { SelfTimer } from '../../../gear/body.ts';
import { BODY_DEFAULTS } from '../../../gear/defaults.ts';
import type { Seconds } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { useGearWords } from '../../words/gear.ts';
import { same } from './same.ts';

const CABLE = 'cable';

/** The self-timer of a body and the one used for this work. `onChange` returns one sentence to refuse it. */
export function SelfTimerFields({
  timer,
  onChange,
}: {
  readonly timer: SelfTimer;
  readonly onChange: (timer: SelfTimer) => string | null;
}) {
  const { format, gear } = useGearWords();
  const [added, setAdded] = useState(0);
  const write = (choice: Seconds) => format.timeMark(format.plain(choice));
  const add = (typed: number) => {
    const choicesS = [...new Set([...timer.choicesS, typed as Seconds])].sort((a, b) => a - b);
    const refusal = onChange({ ...timer, choicesS });
    if (refusal === null) setAdded(added + 1);
    return refusal;
  };
  const remove = (choice: Seconds) =>
    onChange({
      ...timer,
      choicesS: timer.choicesS.filter((other) => other !== choice),
      usedS: timer.usedS === choice ? null : timer.usedS,
    });
  return (
    <Disclosure
      label={gear.selfTimer}
      stated={gear.selfTimerStated(
        timer.usedS === null ? null : write(timer.usedS),
        timer.survivesPowerOff,
      )}
      isDefault={same(timer, BODY_DEFAULTS.selfTimer)}
    >
      <Choice
        label={gear.selfTimerUsed}
        value={timer.usedS === null ? CABLE : String(timer.usedS)}
        options={[
          ...timer.choicesS.map((choice) => ({ value: String(choice), label: write(choice) })),
          { value: CABLE, label: gear.byCable },
        ]}
        onChange={(choice) =>
          onChange({
            ...timer,
            usedS: timer.choicesS.find((known) => String(known) === choice) ?? null,
          })
        }
      />
      <div>
        <p>{gear.selfTimerChoices}</p>
        <div class="acts">
          {timer.choicesS.map((choice) => (
            <Button
              key={choice}
              name={gear.removeTime(write(choice))}
              onPress={() => remove(choice)}
            >
              {write(choice)}
              <Icon name="close" />
            </Button>
          ))}
        </div>
      </div>
      <NumberField
        key={added}
        optional
        label={gear.addTime}
        unit={gear.seconds}
        value={null}
        onCommit={(typed) => (typed === null ? null : add(typed))}
      />
      <Switch
        label={gear.survives}
        on={timer.survivesPowerOff}
        onChange={(survivesPowerOff) => onChange({ ...timer, survivesPowerOff })}
      />
    </Disclosure>
  );
}
