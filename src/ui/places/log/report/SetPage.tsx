import type { OutingLog } from '../../../../app/log.ts';
import type { RigId } from '../../../../gear/ids.ts';
import { assemble } from '../../../../gear/rig.ts';
import { nineInTen } from '../../../../light/forecast.ts';
import type { PairJudgement } from '../../../../log/pair/judgement.ts';
import { viewOf } from '../../../../plan/framing.ts';
import type { PlanSet } from '../../../../plan/plan.ts';
import type { Stops } from '../../../../science/units.ts';
import { edgesWithin } from '../../../../science/view.ts';
import { causeWords } from '../../../parts/causeWords.ts';
import { useReportWords } from '../../../words/report.ts';
import { rigText } from '../../outing/RigName.tsx';
import { heatFigure, openWords } from '../deskSentences.ts';
import { verdictWords } from '../pair/sentences.ts';
import { marksOf, openText, setWords } from '../sentences.ts';
import { type Crop, type Small, SmallPicture } from './SmallPicture.tsx';

interface Props {
  readonly log: OutingLog;
  readonly set: PlanSet;
  readonly pairs: readonly PairJudgement[];
  readonly pictures: ReadonlyMap<string, Small>;
}

/** One set on a page of its own: what was made, each pair's ledger, what lies below the line. */
export function SetPage({ log, set, pairs, pictures }: Props) {
  const words = useReportWords();
  const { report: say } = words;
  const { plan, gear, files } = log.journal.state.value;
  const frames = log.frames.value.filter(({ planned }) => planned.set === set.id);
  const cropOf = (id: RigId): Crop | null => {
    const pair = pairs.find(({ ledger }) => ledger.other === id || ledger.reference === id);
    const own = assemble(gear, id);
    const beside =
      pair && assemble(gear, pair.ledger.other === id ? pair.ledger.reference : pair.ledger.other);
    if (!own || !beside) return null;
    const seen = edgesWithin(viewOf(beside), viewOf(own));
    return { across: Math.min(1, seen.horizontal), up: Math.min(1, seen.vertical) };
  };
  const shown = frames.flatMap((frame) => {
    const small = pictures.get(files.get(frame.id)?.name.toLowerCase() ?? '');
    return small ? [{ frame, small }] : [];
  });
  return (
    <section class="rep-page">
      <h2>{setWords(words, plan, set.id)}</h2>
      <h3>{say.settings}</h3>
      <table>
        <thead>
          <tr>
            <th>{say.rig}</th>
            <th>{say.pass}</th>
            <th>{say.fNumber}</th>
            <th>{say.exposure}</th>
            <th>{say.iso}</th>
            <th>{say.file}</th>
            <th>{say.counts}</th>
          </tr>
        </thead>
        <tbody>
          {frames.map((frame) => {
            const marks = frame.settings && marksOf(words, frame.settings);
            const open = openText(words, frame.openTime);
            return (
              <tr key={frame.id}>
                <th>{rigText(gear, frame.rig)}</th>
                <td>{frame.planned.pass}</td>
                <td>{marks?.fMark ?? ''}</td>
                <td>
                  {marks?.time ?? ''}{' '}
                  {open && open !== marks?.time ? `(${openWords(words, frame.openTime)})` : ''}
                </td>
                <td>{marks?.isoMark ?? ''}</td>
                <td>{files.get(frame.id)?.name ?? frame.fileName ?? ''}</td>
                <td>{frame.counts ? say.yes : say.no}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {shown.length > 0 && (
        <div class="rep-pictures">
          {shown.map(({ frame, small }) => (
            <SmallPicture
              key={frame.id}
              small={small}
              crop={cropOf(frame.rig)}
              text={say.pictureOf(rigText(gear, frame.rig), frame.planned.pass)}
            />
          ))}
        </div>
      )}
      {pairs.map((pair) => (
        <Ledger key={pair.ledger.other} log={log} pair={pair} />
      ))}
    </section>
  );
}

/** A pair's ledger as a table, with its sums in the last rows. */
function Ledger({
  log,
  pair: { ledger, whole },
}: Pick<Props, 'log'> & { readonly pair: PairJudgement }) {
  const words = useReportWords();
  const { format, report: say, judging, pair } = words;
  const { gear } = log.journal.state.value;
  const title = say.ledger(rigText(gear, ledger.other), rigText(gear, ledger.reference));
  if (!whole) {
    return (
      <>
        <h3>{title}</h3>
        <p>{say.noPair}</p>
      </>
    );
  }
  const { figures, besides, heat, leftOver } = whole;
  const half = (sigma: Stops | null) =>
    sigma === null || sigma === 0 ? '' : format.number(nineInTen(sigma), 2);
  const sums: readonly (readonly [string, Stops, Stops])[] = [
    [say.sum, figures.sum.stops, figures.sum.sigma],
    [say.evenUp, figures.evenUp.stops, figures.evenUp.sigma],
    ...(leftOver
      ? ([
          [say.needed, leftOver.needed, leftOver.neededSigma],
          [say.leftOver, leftOver.stops, leftOver.sigma],
        ] as const)
      : []),
    [say.perArea, figures.perArea.stops, figures.perArea.sigma],
    [say.whole, figures.wholeSensor.stops, figures.wholeSensor.sigma],
    [say.crop, figures.commonCrop.stops, figures.commonCrop.sigma],
  ];
  const percent = (share: number) => format.number(100 * share, 0);
  return (
    <>
      <h3>{title}</h3>
      <table class="rep-ledger">
        <thead>
          <tr>
            <th>{say.cause}</th>
            <th>{say.stops}</th>
            <th>{say.width}</th>
            <th>{say.known}</th>
          </tr>
        </thead>
        <tbody>
          {figures.causes.map(({ cause, difference, sigma, by, counted }) => (
            <tr key={cause}>
              <th>
                {pair.causes[cause].replaceAll('\u00ad', '')}
                {!counted && `, ${pair.inOffset}`}
              </th>
              <td>{difference.known ? format.stopsFine(difference.stops) : ''}</td>
              <td>{half(sigma)}</td>
              <td>{judging.knownBy[by]}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          {sums.map(([label, value, sigma]) => (
            <tr key={label}>
              <th>{label}</th>
              <td>{format.stopsFine(value)}</td>
              <td>{half(sigma)}</td>
              <td />
            </tr>
          ))}
        </tfoot>
      </table>
      {figures.sum.missing.length > 0 && (
        <p>{say.missing(causeWords(words, figures.sum.missing).toLowerCase())}</p>
      )}
      <h4>{say.below}</h4>
      <dl>
        <Fact label={say.heat}>
          {heat?.known
            ? say.heatOf(
                heatFigure(words, heat.byHistory.usual),
                format.number(heat.byHistory.least, 2),
                format.number(heat.byHistory.most, 2),
              )
            : say.none}
        </Fact>
        {besides && (
          <>
            <Fact label={say.angle}>
              {say.angleOf(
                format.number(besides.angleOfView.horizontal, 1),
                format.number(besides.angleOfView.vertical, 1),
              )}
            </Fact>
            <Fact label={say.common}>
              {say.commonOf(
                percent(besides.commonCrop.reference),
                percent(besides.commonCrop.other),
              )}
            </Fact>
            <Fact label={say.depth}>{say.factor(format.number(besides.depthOfFieldRatio, 2))}</Fact>
            <Fact label={say.airy}>
              {say.both(
                format.number(besides.airyPx.reference, 1),
                format.number(besides.airyPx.other, 1),
              )}
            </Fact>
            <Fact label={say.motion}>{say.factor(format.number(besides.timeRatio, 2))}</Fact>
            <Fact label={say.parallax}>
              {besides.parallax ? say.px(format.number(besides.parallax.px, 1)) : say.none}
            </Fact>
          </>
        )}
      </dl>
      <h4>{say.uses}</h4>
      <ul>
        {whole.verdicts.map((verdict) => (
          <li key={verdict.use}>{verdictWords(words, verdict)}</li>
        ))}
      </ul>
    </>
  );
}

const Fact = ({ label, children }: { readonly label: string; readonly children: string }) => (
  <div>
    <dt>{label}</dt>
    <dd>{children}</dd>
  </div>
);
