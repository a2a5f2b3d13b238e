import type { Night } from '../../../light/night.ts';
import type { FittedReading, Scene } from '../../../light/scene.ts';
import type { Stretch } from '../../../light/skyTable.ts';
import type { SunEventName } from '../../../science/skyEvents.ts';
import type { UtcMs } from '../../../science/units.ts';
import { useLightWords } from '../../words/light.ts';
import type { Plot } from './CurveDrawing.tsx';
import type { SiteClock } from './clock.ts';
import { areaPath, type CurvePoint, evTicks, linePath } from './curve.ts';

interface Props {
  readonly night: Night;
  readonly scene: Scene;
  readonly points: readonly CurvePoint[];
  readonly view: Stretch;
  readonly now: UtcMs;
  readonly clock: SiteClock;
  readonly plot: Plot;
  /** Height of the small text in CSS pixels. */
  readonly text: number;
}

/** All of the plot that no finger moves. Read out by the cursor and the table, so hidden from ears. */
export function Still({ night, scene, points, view, now, clock, plot, text }: Props) {
  const { light } = useLightWords();
  const { left, width, height, x, y } = plot;
  const right = left + width;
  const ticks = evTicks(plot.lowest, plot.highest, height, 2.2 * text);
  const nowInView = now >= view.fromMs && now <= view.toMs;
  return (
    <svg class="still" aria-hidden="true" width={right + 0.4 * text} height={height}>
      {ticks.map((ev) => (
        <g key={ev}>
          <path class="rule" d={`M${left} ${y(ev)}H${right}`} />
          <text class="scale" x={left - 0.35 * text} y={y(ev)} dy="0.35em">
            {ev < 0 ? `−${-ev}` : ev}
          </text>
        </g>
      ))}
      <path class="interval" d={areaPath(points, plot)} />
      {scene.from === 'readings' && (
        <path class="sky" d={linePath(points, plot, ({ sky }) => sky)} />
      )}
      <SunLines {...{ night, points, view, clock, plot, text }} />
      <path class="curve" d={linePath(points, plot, ({ ev }) => ev)} />
      {nowInView && (
        <g class="now">
          <path d={`M${x(now)} 0V${height}`} />
          <path
            class="index"
            d={`M${x(now) - 0.5 * text} 0h${text}l${-0.5 * text} ${0.7 * text}z`}
          />
          <text x={x(now)} y={-0.35 * text} text-anchor={x(now) > right - text ? 'end' : 'middle'}>
            {light.now}
          </text>
        </g>
      )}
      {scene.readings
        .filter(({ at }) => at >= view.fromMs && at <= view.toMs)
        .map((reading) => (
          <ReadingPoint key={reading.at} reading={reading} plot={plot} />
        ))}
    </svg>
  );
}

/** Below this a reading hardly pulls at the curve, and is crossed out. */
const LEFT_OUT = 0.2;

function ReadingPoint({ reading, plot }: { readonly reading: FittedReading; readonly plot: Plot }) {
  const [cx, cy] = [plot.x(reading.at), plot.y(reading.ev100)];
  return (
    <g class="reading">
      <circle cx={cx} cy={cy} r="5" />
      {reading.weight < LEFT_OUT && <path d={`M${cx - 7} ${cy - 7}l14 14m0 -14l-14 14`} />}
    </g>
  );
}

/** Where the sun passes its limits: a line with its name and time along it, where there is room. */
function SunLines({ night, points, view, clock, plot, text }: Omit<Props, 'scene' | 'now'>) {
  const { light } = useLightWords();
  const { height, x, y, left, width } = plot;
  const lines = night.events.filter(
    (event): event is { readonly event: SunEventName; readonly at: UtcMs } =>
      Object.hasOwn(light.lines, event.event) && event.at > view.fromMs && event.at < view.toMs,
  );
  // Two names would stand in one another's way.
  let last = Number.NEGATIVE_INFINITY;
  return (
    <g class="sun-lines">
      {lines.map(({ event, at }) => {
        const here = x(at);
        const named = here - last > 1.25 * text && here < left + width - 0.2 * text;
        if (named) last = here;
        const onCurve = points.find((point) => point.at >= at);
        const below = onCurve ? y(onCurve.low) > height / 2 : false;
        const edge = below ? 0.4 * text : height - 0.4 * text;
        return (
          <g key={event + at}>
            <path d={`M${here} 0V${height}`} />
            {named && (
              <text
                transform={`translate(${here - 0.35 * text} ${edge}) rotate(-90)`}
                text-anchor={below ? 'end' : 'start'}
              >
                {`${light.lines[event]} ${clock.time(at)}`}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}
