import { useMemo, useRef, useState } from 'preact/hooks';
import type { Offer } from '../../../../app/gearFiles.ts';
import { judgedPairs, limitDesk } from '../../../../app/pairJudging.ts';
import { assemble } from '../../../../gear/rig.ts';
import { civilDusk } from '../../../../light/skyTable.ts';
import { entriesOf } from '../../../../log/entries.ts';
import { sceneOf } from '../../../../outing/light.ts';
import { Button } from '../../../parts/Button.tsx';
import { GiveFile } from '../../../parts/GiveFile.tsx';
import { Screen } from '../../../parts/Screen.tsx';
import { useApp } from '../../../shell/useApp.ts';
import { useReportWords } from '../../../words/report.ts';
import { rigText } from '../../outing/RigName.tsx';
import type { OpenedLog } from '../LogPlace.tsx';
import { marksOf, readingWords, setWords } from '../sentences.ts';
import { LightDrawing } from './LightDrawing.tsx';
import './report.css';
import styles from './report.css?inline';
import { SetPage } from './SetPage.tsx';
import { madeSmall, type Small } from './SmallPicture.tsx';

/** An outing on paper: to print, to save as PDF, or as one HTML file without a script. */
export function ReportScreen({ log }: Pick<OpenedLog, 'log'>) {
  const { desks } = useApp();
  const words = useReportWords();
  const { report: say, language } = words;
  const paper = useRef<HTMLElement>(null);
  const files = useRef<HTMLInputElement>(null);
  const [offer, setOffer] = useState<Offer | null | 'none'>('none');
  const [pictures, setPictures] = useState<ReadonlyMap<string, Small>>(new Map());
  const [reading, setReading] = useState(false);
  const { plan } = log.journal.state.value;
  const title = say.title(plan.name);
  const show = async (chosen: readonly File[]) => {
    setReading(true);
    const found = new Map(pictures);
    for (const file of chosen) {
      const small = await madeSmall(file);
      if (small) found.set(file.name.toLowerCase(), small);
    }
    setPictures(found);
    setReading(false);
  };
  const asFile = () => {
    const body = paper.current?.outerHTML ?? '';
    const content = `<!doctype html>\n<html lang="${language}"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:"><meta name="viewport" content="width=device-width"><title>${escaped(title)}</title><style>${styles}</style></head><body>${body}</body></html>\n`;
    setOffer(desks.share.offer({ name: 'evenfall-report.html', type: 'text/html', content }));
  };
  return (
    <Screen inner title={say.report}>
      <div class="report-acts">
        <Button rank="main" onPress={() => window.print()}>
          {say.print}
        </Button>
        <Button onPress={asFile}>{say.asHtml}</Button>
        <input
          ref={files}
          type="file"
          multiple
          hidden
          accept="image/*"
          aria-label={say.pictures}
          onChange={({ currentTarget }) => void show([...(currentTarget.files ?? [])])}
        />
        <Button rank="quiet" busy={reading} onPress={() => files.current?.click()}>
          {say.pictures}
        </Button>
        <p class="hint" role="status">
          {reading ? say.reading : say.picturesHint}
        </p>
      </div>
      <article ref={paper} class="report" lang={language}>
        <Paper log={log} pictures={pictures} />
      </article>
      {offer !== 'none' && (
        <GiveFile title={say.report} offer={offer} onClose={() => setOffer('none')} />
      )}
    </Screen>
  );
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

function Paper({
  log,
  pictures,
}: Pick<OpenedLog, 'log'> & { readonly pictures: ReadonlyMap<string, Small> }) {
  const { desks, version } = useApp();
  const words = useReportWords();
  const { format, report: say } = words;
  const pairs = useMemo(() => judgedPairs(log, limitDesk(desks.safety)), [log, desks]).value;
  const state = log.journal.state.value;
  const frames = log.frames.value;
  const { plan, gear, site, sky, startedAt, endedAt } = state;
  const moment = ({ wallMs, offsetMin }: { wallMs: number; offsetMin: number }) =>
    `${format.date(wallMs, offsetMin)}, ${format.time(wallMs, offsetMin)}`;
  const dusk = sky && civilDusk(sky);
  const scene = sceneOf(state);
  return (
    <>
      <section class="rep-page">
        <h1>{plan.name}</h1>
        {plan.invented && <p class="rep-mark">{say.invented}</p>}
        <h2>{say.job}</h2>
        {plan.note && <p>{plan.note}</p>}
        <dl>
          <div>
            <dt>{say.when}</dt>
            <dd>{say.from(moment(startedAt), endedAt ? moment(endedAt) : say.notEnded)}</dd>
          </div>
          <div>
            <dt>{say.site}</dt>
            <dd>
              {site
                ? `${site.name}, ${say.position(format.number(site.latDeg, 4), format.number(site.lonDeg, 4))}`
                : say.noSite}
            </dd>
          </div>
          {dusk !== null && (
            <div>
              <dt>{say.dusk}</dt>
              <dd>{format.time(dusk, startedAt.offsetMin)}</dd>
            </div>
          )}
          <div>
            <dt>{say.sky}</dt>
            <dd>
              {scene ? (scene.from === 'readings' ? say.fromReadings : say.fromModel) : say.noSky}
            </dd>
          </div>
        </dl>
        <h2>{say.gear}</h2>
        <table>
          <thead>
            <tr>
              <th>{say.rig}</th>
              <th>{say.body}</th>
              <th>{say.sensor}</th>
              <th>{say.lens}</th>
              <th>{say.offsets}</th>
            </tr>
          </thead>
          <tbody>
            {plan.rigs.map((id) => {
              const parts = assemble(gear, id);
              return (
                parts && (
                  <tr key={id}>
                    <th>{parts.rig.letter}</th>
                    <td>{parts.body.name}</td>
                    <td>
                      {say.format(
                        format.plain(parts.body.widthMm, 1),
                        format.plain(parts.body.heightMm, 1),
                      )}
                    </td>
                    <td>{parts.lens.name}</td>
                    <td>
                      {parts.rig.offsets.length === 0
                        ? say.none
                        : parts.rig.offsets
                            .map(({ stops, date }) => `${format.stopsFine(stops)} (${date})`)
                            .join(', ')}
                    </td>
                  </tr>
                )
              );
            })}
          </tbody>
        </table>
        <h2>{say.list}</h2>
        <table>
          <thead>
            <tr>
              <th>{say.set}</th>
              <th>{say.reference}</th>
              <th>{say.frames}</th>
            </tr>
          </thead>
          <tbody>
            {plan.sets.map((set) => {
              const own = frames.filter(({ planned }) => planned.set === set.id);
              return (
                <tr key={set.id}>
                  <th>{setWords(words, plan, set.id)}</th>
                  <td>{rigText(gear, set.reference)}</td>
                  <td>{say.framesOf(own.length, own.filter(({ counts }) => counts).length)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
        <h2>{say.curve}</h2>
        <LightDrawing log={log} />
      </section>
      <section class="rep-page">
        <h2>{say.timeline}</h2>
        <table>
          <thead>
            <tr>
              <th>{say.time}</th>
              <th>{say.what}</th>
            </tr>
          </thead>
          <tbody>
            {entriesOf(state, frames).flatMap((entry, place) => {
              const text =
                entry.kind === 'frame'
                  ? [
                      rigText(gear, entry.frame.rig),
                      setWords(words, plan, entry.frame.planned.set),
                      ...(entry.frame.settings
                        ? Object.values(marksOf(words, entry.frame.settings))
                        : []),
                      ...entry.frame.notes,
                    ].join(', ')
                  : entry.kind === 'reading'
                    ? say.readingBy(entry.reading.meter, readingWords(words, entry.reading))
                    : entry.kind === 'note'
                      ? `${say.note}: ${entry.note.text}`
                      : null;
              const key = `${entry.at.wallMs} ${place}`;
              return text === null
                ? []
                : [
                    <tr key={key}>
                      <td>{format.timeFine(entry.at.wallMs, entry.at.offsetMin)}</td>
                      <td>{text}</td>
                    </tr>,
                  ];
            })}
          </tbody>
        </table>
      </section>
      {plan.sets.map((set) => (
        <SetPage
          key={set.id}
          log={log}
          set={set}
          pairs={pairs.filter(({ ledger }) => ledger.set === set.id)}
          pictures={pictures}
        />
      ))}
      <section class="rep-page">
        <h2>{say.cautionsTitle}</h2>
        <ul>
          {say.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
        <h2>{say.sourcesTitle}</h2>
        <ul>
          {say.sources.map((source) => (
            <li key={source}>{source}</li>
          ))}
        </ul>
        <p class="rep-made">{say.made(version, moment(endedAt ?? startedAt))}</p>
      </section>
    </>
  );
}
