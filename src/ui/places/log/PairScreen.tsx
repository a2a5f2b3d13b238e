import { useMemo } from 'preact/hooks';
import { besidesOf } from '../../../app/logBesides.ts';
import { figuresOf } from '../../../app/logFigures.ts';
import { judgedPairs, limitDesk } from '../../../app/pairJudging.ts';
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
import { useApp } from '../../shell/useApp.ts';
import { useLogDeskWords } from '../../words/logDesk.ts';
import { RigName, rigText } from '../outing/RigName.tsx';
import { heatFigure, heatRange, sizeText } from './deskSentences.ts';
import type { OpenedLog } from './LogPlace.tsx';
import { KnownBy } from './pair/KnownBy.tsx';
import { Needed } from './pair/Needed.tsx';
import { Uses } from './pair/Uses.tsx';
import { setWords } from './sentences.ts';

interface Props extends Pick<OpenedLog, 'log'> {
  readonly set: string;
  readonly other: string;
}

/** One pair in one set: the sum in words, cause by cause, in light, by pass, and what is in no sum. */
export function PairScreen({ log, set, other }: Props) {
  const words = useLogDeskWords();
  const { log: say, pair } = words;
  const { desks } = useApp();
  const judged = useMemo(() => judgedPairs(log, limitDesk(desks.safety)), [log, desks]);
  const { plan, gear } = log.journal.state.value;
  const ledger = figuresOf(log).ledgers.value.find((one) => one.set === set && one.other === other);
  if (!ledger) {
    return (
      <Screen inner title={say.ledger}>
        <EmptyHint>{say.noLedger}</EmptyHint>
      </Screen>
    );
  }
  const { mean, reference } = ledger;
  const pairs = judged.value;
  const own = pairs.find((one) => one.ledger.set === set && one.ledger.other === other);
  const made = besidesOf(log, ledger);
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
      {own && <Uses pair={own} />}
      {mean && (
        <div class="log-about">
          <DifferenceFigures differences={mean} heading="h2" />
        </div>
      )}
      {own && <Needed log={log} pairs={pairs} pair={own} />}
      {own?.whole && <KnownBy figures={own.whole.figures} />}
      <Passes ledger={ledger} />
      <HowAveraged log={log} ledger={ledger} />
      <Section title={say.below}>
        {made && <p class="hint">{say.belowHint(made.pass)}</p>}
        <Heat log={log} ledger={ledger} />
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

interface PairProps extends Pick<OpenedLog, 'log'> {
  readonly ledger: SetLedger;
}

/** The heat line, in its own unit and in no sum. */
function Heat({ log, ledger }: PairProps) {
  const words = useLogDeskWords();
  const { log: say } = words;
  const { gear } = log.journal.state.value;
  const heat = figuresOf(log).heat(ledger);
  if (!heat) return null;
  if (!heat.known) {
    return (
      <>
        <dl class="log-facts">
          <div>
            <dt>{say.heat}</dt>
            <dd class="unknown">{words.parts.unknown}</dd>
          </div>
        </dl>
        <p class="hint">{say.heatUnknown[heat.why](rigText(gear, heat.rig))}</p>
      </>
    );
  }
  const { usual } = heat.byHistory;
  const shown = heatFigure(words, usual);
  const warmer =
    shown === heatFigure(words, 0) ? null : usual > 0 ? ledger.other : ledger.reference;
  return (
    <>
      <dl class="log-facts">
        <div>
          <dt>{say.heat}</dt>
          <dd>{say.heatOf(shown, heatRange(words, heat.byHistory))}</dd>
        </div>
        <div>
          <dt>{say.heatBodies}</dt>
          <dd>{heatRange(words, heat.withBodies)}</dd>
        </div>
      </dl>
      <p class="hint">{say.heatIs(warmer && rigText(gear, warmer))}</p>
    </>
  );
}

/** Whether the mean is weighted against the drift, what that costs, and what each frame takes in it. */
function HowAveraged({ log, ledger: { averaging, weights } }: PairProps) {
  const words = useLogDeskWords();
  const { format, log: say } = words;
  const { gear, planned } = log.journal.state.value;
  if (averaging.kind === 'plain') return null;
  const leaves = format.stopsFine(averaging.leaves);
  const price = averaging.price === null ? null : format.number(averaging.price, 2);
  return (
    <Section title={say.averaging}>
      {averaging.kind === 'weighted' ? (
        <>
          <p>{say.weighted(price ?? '', leaves)}</p>
          <ul class="log-notes">
            {[...weights].map(([key, weight]) => {
              const frame = planned.get(key);
              return (
                frame && (
                  <li key={key}>
                    {say.weightOf(rigText(gear, frame.rig), frame.pass, format.number(weight, 3))}
                  </li>
                )
              );
            })}
          </ul>
        </>
      ) : (
        <p>{price === null ? say.notSeparable(leaves) : say.tooDear(leaves, price)}</p>
      )}
    </Section>
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
