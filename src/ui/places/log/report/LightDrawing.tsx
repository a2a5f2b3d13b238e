import type { OutingLog } from '../../../../app/log.ts';
import { assemble } from '../../../../gear/rig.ts';
import { forecastAt } from '../../../../light/forecast.ts';
import { evOfReading } from '../../../../light/reading.ts';
import { sceneOf } from '../../../../outing/light.ts';
import type { UtcMs } from '../../../../science/units.ts';
import { useReportWords } from '../../../words/report.ts';

const WIDE = 640;
const HIGH = 240;
const LEFT = 40;
const FOOT = 60;
const STEPS = 120;

/** The light over the outing: its course, its readings, its frames. Our own drawing, for paper. */
export function LightDrawing({ log }: { readonly log: OutingLog }) {
  const { format, report: say } = useReportWords();
  const state = log.journal.state.value;
  const frames = log.frames.value;
  const times = [
    ...frames.flatMap(({ opened, closed }) => [opened.wallMs, closed?.wallMs ?? opened.wallMs]),
    ...state.readings.map(({ at }) => at.wallMs),
  ];
  const scene = sceneOf(state);
  if (times.length === 0 || !scene) return <p>{say.noSky}</p>;
  const [first, last] = [Math.min(...times) - 120_000, Math.max(...times) + 120_000];
  const curve = Array.from({ length: STEPS + 1 }, (_, i) => {
    const at = first + ((last - first) * i) / STEPS;
    const found = forecastAt(scene, at as UtcMs);
    return found ? [{ at, ev: found.ev100 as number }] : [];
  }).flat();
  const readings = state.readings.map(({ at, reading }) => ({
    at: at.wallMs,
    ev: evOfReading(reading) as number,
  }));
  const levels = [...curve, ...readings].map(({ ev }) => ev);
  if (levels.length === 0) return <p>{say.noSky}</p>;
  const [low, high] = [Math.floor(Math.min(...levels)), Math.ceil(Math.max(...levels) + 0.01)];
  const x = (at: number) => LEFT + ((at - first) / (last - first)) * (WIDE - LEFT - 8);
  const y = (ev: number) => 8 + ((high - ev) / (high - low)) * (HIGH - FOOT - 8);
  const { offsetMin } = state.startedAt;
  const marks = Array.from({ length: high - low + 1 }, (_, i) => low + i).filter(
    (ev) => high - low <= 8 || ev % 2 === 0,
  );
  const rigs = state.plan.rigs;
  return (
    <figure>
      <svg class="rep-curve" viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={say.curveIs}>
        {marks.map((ev) => (
          <g key={ev}>
            <line class="rep-grid" x1={LEFT} x2={WIDE - 8} y1={y(ev)} y2={y(ev)} />
            <text x={LEFT - 6} y={y(ev) + 4} text-anchor="end">
              {format.number(ev, 0)}
            </text>
          </g>
        ))}
        <polyline
          class="rep-line"
          points={curve.map(({ at, ev }) => `${x(at).toFixed(1)},${y(ev).toFixed(1)}`).join(' ')}
        />
        {readings.map(({ at, ev }) => (
          <circle key={`${at} ${ev}`} class="rep-ring" cx={x(at)} cy={y(ev)} r="4" />
        ))}
        {frames.map(({ id, rig, opened, closed }) => {
          const row = Math.max(0, rigs.indexOf(rig));
          const from = x(opened.wallMs);
          const wide = Math.max(2, x(closed?.wallMs ?? opened.wallMs) - from);
          return (
            <g key={id}>
              <rect
                class="rep-bar"
                x={from}
                width={wide}
                y={HIGH - FOOT + 6 + 9 * row}
                height="5"
              />
            </g>
          );
        })}
        {rigs.map((rig, row) => (
          <text
            key={rig}
            class="rep-small"
            x={LEFT - 6}
            y={HIGH - FOOT + 12 + 9 * row}
            text-anchor="end"
          >
            {assemble(state.gear, rig)?.rig.letter ?? ''}
          </text>
        ))}
        {[0, 1, 2, 3, 4].map((quarter) => {
          const at = first + ((last - first) * quarter) / 4;
          return (
            <text
              key={quarter}
              x={x(at)}
              y={HIGH - 4}
              text-anchor={quarter === 0 ? 'start' : quarter === 4 ? 'end' : 'middle'}
            >
              {format.time(at, offsetMin)}
            </text>
          );
        })}
      </svg>
      <figcaption>{say.curveIs}</figcaption>
    </figure>
  );
}
