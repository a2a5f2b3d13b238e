import { useState } from 'preact/hooks';
import { limitDesk } from '../../../../app/pairJudging.ts';
import type { PairJudgement } from '../../../../log/pair/judgement.ts';
import { MEASURES } from '../../../../log/pair/measures.ts';
import { LIMITS, NEEDS, USES } from '../../../../log/pair/uses.ts';
import { Button } from '../../../parts/Button.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { Section } from '../../../parts/Section.tsx';
import { Sheet } from '../../../parts/Sheet.tsx';
import { useApp } from '../../../shell/useApp.ts';
import { useJudgingWords } from '../../../words/judging.ts';
import { verdictWords } from './sentences.ts';

/** What a pair may be used for, in words, and the limits by which that is told. */
export function Uses({ pair: { whole } }: { readonly pair: PairJudgement }) {
  const words = useJudgingWords();
  const { judging } = words;
  const [open, setOpen] = useState(false);
  if (!whole) return null;
  return (
    <Section title={judging.uses}>
      <ul class="log-notes">
        {whole.verdicts.map((verdict) => (
          <li key={verdict.use}>{verdictWords(words, verdict)}</li>
        ))}
      </ul>
      <p class="hint">{judging.noScore}</p>
      <div>
        <Button onPress={() => setOpen(true)}>{judging.limits}</Button>
      </div>
      {open && <LimitSheet onClose={() => setOpen(false)} />}
    </Section>
  );
}

function LimitSheet({ onClose }: { readonly onClose: () => void }) {
  const { desks } = useApp();
  const words = useJudgingWords();
  const { judging } = words;
  const desk = limitDesk(desks.safety);
  return (
    <Sheet
      title={judging.limits}
      onClose={onClose}
      acts={
        <Button rank="main" onPress={onClose}>
          {judging.done}
        </Button>
      }
    >
      <p>{judging.limitsHint}</p>
      {MEASURES.map((measure) => {
        const uses = USES.filter((use) => NEEDS[use].includes(measure));
        return (
          <NumberField
            key={measure}
            label={capital(judging.measure[measure])}
            {...(judging.unit[measure] && { unit: judging.unit[measure] })}
            hint={`${judging.limitFor(uses.map((use) => judging.use[use]).join(', '))} ${judging.limitFrom[LIMITS[measure].from]}`}
            optional
            value={desk.limits.value[measure]}
            onCommit={(value) => {
              if (value !== null && value < 0) return judging.limitBad;
              desk.change(measure, value);
              return null;
            }}
          />
        );
      })}
      <Button onPress={desk.restore}>{judging.restoreLimits}</Button>
    </Sheet>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
