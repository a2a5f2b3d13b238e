import { useState } from 'preact/hooks';
import { Button } from '../../parts/Button.tsx';
import { useWords, type Words } from '../../words/words.ts';
import { ReadingSheet } from './ReadingSheet.tsx';
import { RematchSheet } from './RematchSheet.tsx';
import { useRun } from './useRun.ts';

/** What the light does to the set in hand, in one line, and what it would help to know. */
export function LightLine() {
  const { desk, state } = useRun();
  const words = useWords();
  const [open, setOpen] = useState<'reading' | 'rematch' | null>(null);
  const { light } = words.outing;
  const inLight = desk.light.inLight.value;
  const wanted = desk.light.wanted.value;
  const isOff = inLight?.how === 'off';
  // An exposure under way has its screen to itself.
  if (state.phase !== 'running' || state.open.length > 0 || (!inLight && !wanted)) return null;
  return (
    <section class="light-line" aria-label={light.title}>
      {inLight && (
        <p>
          {inLight.how === 'fits'
            ? light.fits(inLight.minutes, inLight.least, inLight.most)
            : offWords(words, inLight)}
        </p>
      )}
      {(isOff || wanted) && (
        <div class="side-acts">
          {isOff && (
            <Button field onPress={() => setOpen('rematch')}>
              {light.rematch}
            </Button>
          )}
          {wanted && (
            <Button field onPress={() => setOpen('reading')}>
              {light.wanted[wanted]}
            </Button>
          )}
        </div>
      )}
      {open === 'reading' && (
        <ReadingSheet
          {...(wanted === 'test-frame' && { kind: wanted })}
          onClose={() => setOpen(null)}
        />
      )}
      {open === 'rematch' && <RematchSheet onClose={() => setOpen(null)} />}
    </section>
  );
}

/** 'This set comes out 1.4 stop too dark, ±0.3.' */
function offWords(
  { format, outing }: Words,
  { miss, within }: { readonly miss: number; readonly within: number },
): string {
  const size = format.number(Math.abs(miss), 1);
  return outing.light.off(size, miss > 0, format.number(within, 1));
}
