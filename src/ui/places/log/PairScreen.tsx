import { assemble } from '../../../gear/rig.ts';
import type { SetLedger } from '../../../log/ledger.ts';
import { BesidesLines } from '../../parts/BesidesLines.tsx';
import { causeWords } from '../../parts/causeWords.ts';
import { DifferenceFigures } from '../../parts/DifferenceFigures.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { fadeOf, widthWords } from '../../parts/fadeWords.ts';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { Table } from '../../parts/Table.tsx';
import { useLogDeskWords } from '../../words/logDesk.ts';
import { RigName, rigText } from '../outing/RigName.tsx';
import { sizeText } from './deskSentences.ts';
import type { OpenedLog } from './LogPlace.tsx';
import { setWords } from './sentences.ts';

interface Props extends Pick<OpenedLog, 'log'> {
  readonly set: string;
  readonly other: string;
}

/** One pair in one set: the sum in words, cause by cause, in light, by pass, and what is in no sum. */
export function PairScreen({ log, set, other }: Props) {
  const words = useLogDeskWords();
  const { log: say, pair } = words;
  const { plan, gear } = log.journal.state.value;
  const ledger = log.ledgers.value.find((one) => one.set === set && one.other === other);
  if (!ledger) {
    return (
      <Screen inner title={say.ledger}>
        <EmptyHint>{say.noLedger}</EmptyHint>
      </Screen>
    );
  }
  const { mean, reference } = ledger;
  const made = log.besides(ledger);
  const letter = (rig: SetLedger['other']) => assemble(gear, rig)?.rig.letter ?? '';
  const framing = plan.sets.find(({ id }) => id === ledger.set)?.framing;
  return (
    <Screen inner title={say.ledger}>
      <div class="log-about">
        <p class="lead log-pair">
          <RigName gear={gear} rig={ledger.other} />
          <span>{say.againstOne}</span>
          <RigName gear={gear} rig={reference} />
        </p>
        <p>{setWords(words, plan, ledger.set)}</p>
        {mean ? (
          <>
            <p class="log-verdict">
              {sizeText(words, mean.sum.stops) === sizeText(words, 0)
                ? say.pairAlike
                : say.pairDiffers(sizeText(words, mean.sum.stops))}
            </p>
            <p>
              {sizeText(words, mean.sum.stops) !== sizeText(words, 0) &&
                say.renders(rigText(gear, ledger.other), mean.sum.stops > 0)}{' '}
              {mean.sum.missing.length > 0 &&
                say.withoutUnknown(causeWords(words, mean.sum.missing))}
            </p>
          </>
        ) : (
          <Notice>{say.noPair}</Notice>
        )}
      </div>
      {mean && (
        <div class="log-about">
          <DifferenceFigures differences={mean} heading="h2" />
        </div>
      )}
      <Passes ledger={ledger} />
      <Section title={say.below}>
        {made && <p class="hint">{say.belowHint(made.pass)}</p>}
        <dl class="log-facts">
          <div>
            <dt>{say.heat}</dt>
            <dd class="unknown">{words.parts.unknown}</dd>
          </div>
        </dl>
        <p class="hint">{say.heatWhy}</p>
        {made && framing && (
          <>
            {made.besides.parallax?.warns && (
              <Notice>
                {pair.parallaxWarns(words.format.number(made.besides.parallax.px, 1))}
              </Notice>
            )}
            <BesidesLines
              besides={made.besides}
              framing={framing}
              letters={{ reference: letter(reference), other: letter(ledger.other) }}
            />
          </>
        )}
      </Section>
    </Screen>
  );
}

/** Each pass by itself, where there is more than the mean says. */
function Passes({ ledger: { passes, unpaired } }: { readonly ledger: SetLedger }) {
  const words = useLogDeskWords();
  const { format, log: say, pair } = words;
  if (passes.length < 2 && unpaired.length === 0) return null;
  const free = passes.every(({ differences }) => differences.residual === null);
  return (
    <Section title={say.byPass}>
      {passes.length > 1 && (
        <Table
          caption={say.passesCaption}
          stack="never"
          columns={[
            { key: 'pass', head: say.passHead },
            { key: 'sum', head: pair.difference, figures: true },
            { key: 'fade', head: say.fadeHead, figures: true },
            ...(free ? [] : [{ key: 'residual', head: pair.residual, figures: true }]),
          ]}
          rows={passes.map(({ pass, differences }) => {
            const { sum, residual } = differences;
            const fade = fadeOf(differences);
            return {
              key: `${pass}`,
              cells: {
                pass,
                sum: format.stopsFine(sum.stops),
                fade: fade
                  ? `${format.stopsFine(fade.stops)}\u00a0${widthWords(words, fade)}`
                  : words.parts.unknown,
                residual: residual && format.stopsFine(residual.stops),
              },
            };
          })}
        />
      )}
      {unpaired.length > 0 && <p>{say.unpaired(unpaired)}</p>}
    </Section>
  );
}
