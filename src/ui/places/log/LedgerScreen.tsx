import { figuresOf } from '../../../app/logFigures.ts';
import { assemble, type Gear } from '../../../gear/rig.ts';
import type { SetLedger } from '../../../log/ledger.ts';
import type { HeatLine } from '../../../log/ledgerHeat.ts';
import { evenUp } from '../../../plan/differences.ts';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { fadeOf, widthWords } from '../../parts/fadeWords.ts';
import { RigSign } from '../../parts/RigSign.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useLogDeskWords } from '../../words/logDesk.ts';
import { rigText } from '../outing/RigName.tsx';
import { heatFigure, heatRange, sizeText } from './deskSentences.ts';
import type { OpenedLog } from './LogPlace.tsx';
import { setWords } from './sentences.ts';

/** Each set with its pairs: by how much they differ, and what evens them up. */
export function LedgerScreen({ log }: Pick<OpenedLog, 'log'>) {
  const words = useLogDeskWords();
  const { log: say } = words;
  const { plan, gear, outing } = log.journal.state.value;
  const ledgers = figuresOf(log).ledgers.value;
  const sets = [...new Set(ledgers.map(({ set }) => set))];
  return (
    <Screen inner title={say.ledger}>
      {ledgers.length === 0 ? <EmptyHint>{say.noLedger}</EmptyHint> : <p>{say.ledgerHint}</p>}
      <div>
        {sets.map((set) => (
          <section key={set}>
            <h2 class="log-set">{setWords(words, plan, set)}</h2>
            <ul>
              {ledgers
                .filter((ledger) => ledger.set === set)
                .map((ledger) => (
                  <li key={ledger.other}>
                    <PairRow
                      ledger={ledger}
                      heat={figuresOf(log).heat(ledger)}
                      gear={gear}
                      outing={outing}
                    />
                  </li>
                ))}
            </ul>
          </section>
        ))}
      </div>
      {plan.sets.some(({ kind }) => kind === 'capped-dark') && <p class="hint">{say.darksApart}</p>}
    </Screen>
  );
}

interface PairProps {
  readonly ledger: SetLedger;
  readonly heat: HeatLine | null;
  readonly gear: Gear;
  readonly outing: string;
}

function PairRow({ ledger, heat, gear, outing }: PairProps) {
  const { navigation } = useApp();
  const words = useLogDeskWords();
  const { format, log: say } = words;
  const { set, reference, other, mean, passes, averaging } = ledger;
  const letter = assemble(gear, other)?.rig.letter;
  const fade = mean && fadeOf(mean);
  return (
    <Row
      sign={letter && <RigSign letter={letter} />}
      title={mean ? say.differs(sizeText(words, mean.sum.stops)) : say.noMean}
      note={
        <>
          {say.against(rigText(gear, other), rigText(gear, reference))}
          <br />
          {mean
            ? [
                say.evenUp(format.stopsFine(evenUp(mean).stops)),
                mean.residual && say.residual(format.stopsFine(mean.residual.stops)),
                fade && say.fade(format.stopsFine(fade.stops), widthWords(words, fade) ?? ''),
              ]
                .filter(Boolean)
                .join(' · ')
            : say.noPair}
          {heat?.known && (
            <>
              <br />
              {say.heatShort(
                heatFigure(words, heat.byHistory.usual),
                heatRange(words, heat.byHistory),
              )}
            </>
          )}
          {passes.length > 1 && (
            <>
              <br />
              {say.meanOf(passes.length)}
              {averaging.kind === 'weighted' &&
                `, ${say.weightedShort(format.number(averaging.price, 2))}`}
            </>
          )}
        </>
      }
      onPress={() => navigation.go('log', outing, 'ledger', set, other)}
    />
  );
}
