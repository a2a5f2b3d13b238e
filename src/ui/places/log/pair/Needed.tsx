import { useState } from 'preact/hooks';
import { gearDesk } from '../../../../app/gear.ts';
import type { OutingLog } from '../../../../app/log.ts';
import { agreementOver, offsetsFrom, sayNeeded, takeOffsets } from '../../../../app/pairJudging.ts';
import { nineInTen } from '../../../../light/forecast.ts';
import { neededFor, type PairJudgement } from '../../../../log/pair/judgement.ts';
import type { Agreement } from '../../../../log/pair/proposedOffset.ts';
import { type Stops, stops } from '../../../../science/units.ts';
import { Button } from '../../../parts/Button.tsx';
import { Figure } from '../../../parts/Figure.tsx';
import { Figures } from '../../../parts/Figures.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { Section } from '../../../parts/Section.tsx';
import { useApp } from '../../../shell/useApp.ts';
import { useJudgingWords } from '../../../words/judging.ts';
import { rigText } from '../../outing/RigName.tsx';

interface Props {
  readonly log: OutingLog;
  readonly pairs: readonly PairJudgement[];
  readonly pair: PairJudgement;
}

/** Nobody evens up by more. */
const MOST_STOPS = 20;

/** What the pair really needed beside what was predicted, and what is left over. */
export function Needed({ log, pairs, pair }: Props) {
  const { log: desk } = useApp();
  const words = useJudgingWords();
  const { format, judging } = words;
  const [fault, setFault] = useState<string | null>(null);
  const last = desk.undoable.value;
  const { whole, ledger } = pair;
  if (!whole) return null;
  const { figures, leftOver } = whole;
  const found = neededFor(log.journal.state.value, ledger.set, ledger.other, null);
  const say = (value: number | null): string | null => {
    if (value !== null && Math.abs(value) >= MOST_STOPS) return judging.neededTooFar;
    const needed =
      value === null ? null : { stops: stops(value), sigma: null, by: 'typed' as const };
    void sayNeeded(desk, { set: ledger.set, rig: ledger.other, pass: null, needed }).then(
      (served) => setFault(served.how === 'refused' ? judging.notLogged : null),
    );
    return null;
  };
  const wide = (value: Stops, sigma: Stops) =>
    sigma > 0
      ? judging.figureWidth(format.stopsFine(value), format.number(nineInTen(sigma), 2))
      : format.stopsFine(value);
  return (
    <Section title={judging.needed}>
      <NumberField
        label={judging.neededField}
        unit={judging.neededUnit}
        hint={judging.neededHint}
        optional
        value={found?.needed?.stops ?? null}
        onCommit={say}
      />
      {fault && <Notice urgent>{fault}</Notice>}
      <Figures>
        <Figure
          label={judging.predictedUp}
          value={wide(figures.evenUp.stops, figures.evenUp.sigma)}
        />
        {leftOver && (
          <>
            <Figure label={judging.neededUp} value={wide(leftOver.needed, leftOver.neededSigma)} />
            <Figure label={judging.leftOver} value={wide(leftOver.stops, leftOver.sigma)} />
          </>
        )}
      </Figures>
      {(last?.kind === 'evened-up' || last?.kind === 'gear-corrected') && (
        <div>
          <Button onPress={() => void desk.undo()}>{words.log.undo[last.kind]}</Button>
        </div>
      )}
      {leftOver && (
        <>
          <p>
            {judging.leftOverIs(
              leftOver.stops > 0,
              Math.abs(leftOver.stops) <= nineInTen(leftOver.sigma),
            )}
          </p>
          {!leftOver.stated && <p class="hint">{judging.byEye}</p>}
          <Offset log={log} pair={pair} agreement={agreementOver(pairs, pair, log)} />
        </>
      )}
    </Section>
  );
}

/** What the leftovers of all sets propose; taken only when the user says so. */
function Offset({
  log,
  pair,
  agreement,
}: Omit<Props, 'pairs'> & { readonly agreement: Agreement }) {
  const { log: desk, desks, gear: kept } = useApp();
  const words = useJudgingWords();
  const { format, judging } = words;
  const [said, setSaid] = useState<string | null>(null);
  if (agreement.says !== 'offset') {
    return (
      <p class="hint" role="status">
        {said ? `${said} ` : ''}
        {judging.agree[agreement.says]}
      </p>
    );
  }
  const proposed = offsetsFrom(pair, agreement, log, judging.offsetHow);
  if (!proposed) return null;
  const { gear } = log.journal.state.value;
  const { other, reference } = pair.ledger;
  const rigs = [proposed.reference, proposed.other].flatMap((rig) => (rig ? [rig] : []));
  const isKept = rigs.every(({ id }) => kept.gear.value.rigs.some((rig) => rig.id === id));
  const take = async (): Promise<boolean> => {
    const served = await takeOffsets(desk, proposed);
    setSaid(served.how === 'refused' ? judging.notLogged : judging.offsetTaken);
    return served.how !== 'refused';
  };
  const keep = async () => {
    if (!(await take())) return;
    const before = new Map(gear.rigs.map((rig) => [rig.id, rig]));
    for (const rig of rigs) {
      const known = before.get(rig.id)?.offsets ?? [];
      for (const offset of rig.offsets) {
        if (!known.includes(offset)) gearDesk(desks).addOffset(rig.id, offset);
      }
    }
    setSaid(judging.offsetKept);
  };
  return (
    <Notice
      acts={
        <>
          <Button onPress={() => void take()}>{judging.takeOffset}</Button>
          {isKept && <Button onPress={() => void keep()}>{judging.keepOffset}</Button>}
        </>
      }
    >
      {judging.offer(
        rigText(gear, other),
        format.stopsFine(stops(-agreement.mean)),
        format.number(nineInTen(agreement.sigma), 2),
        agreement.sets.length,
      )}{' '}
      {proposed.reference && judging.offerReference(rigText(gear, reference))} {judging.rule}
    </Notice>
  );
}
