import { useState } from 'preact/hooks';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useGearWords } from '../../words/gear.ts';

/** The positions of a dial, each with a tick to take away where the dial lacks it. */
export function MissingPositions({
  all,
  missing,
  write,
  onChange,
}: {
  /** As if none were missing. */
  readonly all: readonly string[];
  readonly missing: readonly string[];
  readonly write: (mark: string) => string;
  /** Returns one sentence to refuse it. */
  readonly onChange: (missing: readonly string[]) => string | null;
}) {
  const { gear } = useGearWords();
  const [open, setOpen] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  const lacks = missing.filter((mark) => all.includes(mark));
  return (
    <div class="form">
      <p>{gear.positions(all.length - lacks.length, lacks.length)}</p>
      <div class="acts">
        <Button onPress={() => setOpen(true)}>{gear.missing}</Button>
      </div>
      {open && (
        <Sheet title={gear.missing} onClose={() => setOpen(false)}>
          <p>{gear.missingHint}</p>
          <p class="fault" role="alert">
            {refusal}
          </p>
          <div>
            {all.map((mark) => (
              <Tick
                key={mark}
                checked={!missing.includes(mark)}
                onChange={(there) =>
                  setRefusal(
                    onChange(
                      there ? missing.filter((other) => other !== mark) : [...missing, mark],
                    ),
                  )
                }
              >
                {write(mark)}
              </Tick>
            ))}
          </div>
        </Sheet>
      )}
    </div>
  );
}
