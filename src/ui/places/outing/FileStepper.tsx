import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { useWords } from '../../words/words.ts';

interface Props {
  /** Null = no number is stated. */
  readonly value: number | null;
  readonly write: (number: number) => string;
  readonly onChange: (value: number) => void;
}

/** A file number, by clicks of one, ten, a hundred and a thousand: nothing is typed in the dark. */
export function FileStepper({ value, write, onChange }: Props) {
  const { outing: words, parts } = useWords();
  const by = (step: number) => onChange(Math.max(0, (value ?? 0) + step));
  return (
    <fieldset class="file-stepper">
      <legend>{words.record.file}</legend>
      <p class="shown" aria-live="polite">
        {value === null ? words.record.fileNone : write(value)}
      </p>
      <div class="steps">
        {[1, 10, 100, 1000].map((step) => (
          <div key={step}>
            <Button
              field
              rapid
              name={parts.clickUp(`${words.record.file} ${step}`)}
              onPress={() => by(step)}
            >
              <Icon name="plus" />
              {step}
            </Button>
            <Button
              field
              rapid
              disabled={(value ?? 0) < step}
              name={parts.clickDown(`${words.record.file} ${step}`)}
              onPress={() => by(-step)}
            >
              <Icon name="minus" />
              {step}
            </Button>
          </div>
        ))}
      </div>
    </fieldset>
  );
}
