import { useMemo, useState } from 'preact/hooks';
import type { Planned } from '../../../app/light.ts';
import { fadeAt } from '../../../light/fade.ts';
import { forecastAt, nineInTen } from '../../../light/forecast.ts';
import type { Night } from '../../../light/night.ts';
import type { Scene } from '../../../light/scene.ts';
import type { Site } from '../../../light/site.ts';
import type { Stretch } from '../../../light/skyTable.ts';
import type { UtcMs } from '../../../science/units.ts';
import { useLightWords } from '../../words/light.ts';
import { bandAt } from './bandAt.ts';
import { Cursor } from './Cursor.tsx';
import { CurveDrawing } from './CurveDrawing.tsx';
import { CurveTable } from './CurveTable.tsx';
import type { SiteClock } from './clock.ts';
import { curveOf } from './curve.ts';
import { inOneMinute } from './rate.ts';

interface Props {
  readonly night: Night;
  readonly scene: Scene;
  readonly view: Stretch;
  readonly now: UtcMs;
  readonly planned: Planned | null;
  readonly site: Site;
  readonly clock: SiteClock;
}

/** Where the cursor stands until it is moved: now, if it is drawn, else at the first passage of the sun. */
function firstInstant({ events }: Night, { fromMs, toMs }: Stretch, now: UtcMs): UtcMs {
  const inView = (at: UtcMs): boolean => at >= fromMs && at <= toMs;
  if (inView(now)) return now;
  return events.find(({ at, event }) => inView(at) && !event.startsWith('moon'))?.at ?? fromMs;
}

/** The curve of an evening with what is read off it at the cursor, and the same as a table. */
export function LightCurve(props: Props) {
  const { night, scene, view, now, planned, site, clock } = props;
  const words = useLightWords();
  const { format, light } = words;
  const [moved, setMoved] = useState<UtcMs | null>(null);
  const at = moved ?? firstInstant(night, view, now);
  const points = useMemo(() => curveOf(scene, view), [scene, view.fromMs, view.toMs]);
  // The cursor moves many times a second, and the table does not.
  const table = useMemo(
    () => <CurveTable {...{ night, scene, view, clock }} />,
    [night, scene, view.fromMs, view.toMs, clock.zone],
  );
  const forecast = forecastAt(scene, at);
  const rate = fadeAt(scene, at);
  const ev = forecast ? format.number(forecast.ev100, 1) : light.unknown;
  const within = forecast ? format.number(nineInTen(forecast.sigma), 1) : light.unknown;
  const fade = rate === null ? light.unknown : format.stopsFine(inOneMinute(rate));
  const band = light.bands[bandAt(night, at)];
  return (
    <figure class="light-curve" aria-label={light.curve}>
      <dl class="light-readout">
        <div>
          <dt>{light.atClock}</dt>
          <dd class="value">{clock.time(at)}</dd>
          <dd class="hint">{band}</dd>
        </div>
        <div>
          <dt>{light.sceneEv}</dt>
          <dd class="value">{ev}</dd>
          <dd class="hint">{light.evWithin(within)}</dd>
        </div>
        <div>
          <dt>{light.fade}</dt>
          <dd class="value">{fade}</dd>
          <dd class="hint">{light.perMinute}</dd>
        </div>
      </dl>
      <CurveDrawing
        night={night}
        scene={scene}
        points={points}
        view={view}
        now={now}
        planned={planned}
        site={site}
        clock={clock}
        words={words}
      >
        {(chart, room) => (
          <Cursor
            chart={chart}
            room={room}
            view={view}
            at={at}
            label={light.cursor}
            said={light.readout(clock.time(at), band, ev, within, fade)}
            onMove={setMoved}
          />
        )}
      </CurveDrawing>
      <figcaption class="hint">
        {light.cursorHint}
        {planned && ` ${light.planned(planned.name)}`}
      </figcaption>
      {table}
    </figure>
  );
}
