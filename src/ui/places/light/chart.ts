import type uPlot from 'uplot';
import { localTime } from '../../../light/zones.ts';
import type { UtcMs } from '../../../science/units.ts';
import { hourTicks } from './curve.ts';
import { type Drawn, type Look, type Room, through } from './drawn.ts';
import { drawLeftOut, drawNow, drawSunLines } from './marks.ts';
import { drawTracks } from './tracks.ts';

/** The columns of the chart, in the order in which they are drawn. */
const COLUMNS = ['clock', 'high', 'low', 'sky', 'curve', 'reading'] as const;
const at = (column: (typeof COLUMNS)[number]): number => COLUMNS.indexOf(column);

export const dataOf = ({ points }: Drawn): uPlot.AlignedData => [
  points.map((point) => point.at),
  points.map(({ high }) => high),
  points.map(({ low }) => low),
  points.map(({ sky }) => sky),
  points.map(({ ev }) => ev),
  points.map(({ reading }) => reading?.ev100 ?? null),
];

/** Farther from a point of the curve than two ever stand apart. */
const FAR_MS = 300_000;

/** Stops between two figures of the scale. */
const EV_STEPS = [1, 2, 4, 5, 10, 20];

/** The curve against the clock, with its marks drawn into it and its tracks under it. */
export function chartOf(
  drawn: Drawn,
  look: Look,
  room: Room,
  size: { readonly width: number; readonly height: number },
  onReady: (chart: uPlot) => void,
): uPlot.Options {
  const { scene, view, site, clock, words } = drawn;
  const { text, family, ink, line, index, ground } = look;
  const font = `${text}px ${family}`;
  const noPoints = { points: { show: false } };
  const edge = { ...noPoints, stroke: line, width: 1, dash: [2, 3] };
  /** What lies over a column and under the next. */
  const over: Readonly<Record<number, (chart: uPlot) => void>> = {
    [at('low')]: (chart) => drawSunLines(chart, drawn, look),
    [at('curve')]: (chart) => drawNow(chart, drawn, look),
    [at('reading')]: (chart) => drawLeftOut(chart, drawn, look),
  };
  return {
    ...size,
    ms: 1,
    // Rounded to whole pixels the curve would go in steps.
    pxAlign: 0,
    padding: [room.top, room.right, room.tracks, 0],
    legend: { show: false },
    scales: {
      x: { range: [view.fromMs, view.toMs] },
      // Whole stops that hold all that is drawn.
      y: { range: (_, lowest, highest) => [Math.floor(lowest), Math.ceil(highest)] },
    },
    axes: [
      {
        font,
        stroke: ink,
        size: room.hours,
        gap: 2,
        grid: { show: false },
        ticks: { stroke: line, width: 1, size: Math.round(0.35 * text) },
        // By the clock of the site; the library knows zones by name alone.
        splits: ({ width }) =>
          hourTicks(
            view,
            (instant) => localTime(site.zone, instant),
            width - room.left - room.right,
            3.8 * text,
          ) as UtcMs[],
        values: (_, instants) => instants.map((instant) => clock.time(instant as UtcMs)),
      },
      {
        font,
        stroke: ink,
        size: room.left,
        gap: Math.round(0.35 * text),
        space: 1.8 * text,
        incrs: EV_STEPS,
        grid: { stroke: through(line, 0.35), width: 1 },
        ticks: { show: false },
        values: (_, levels) => levels.map((level) => words.format.number(level, 0)),
      },
    ],
    series: [
      {},
      edge,
      edge,
      {
        ...noPoints,
        show: scene.from === 'readings',
        stroke: line,
        width: 2,
        dash: [8, 5],
      },
      { ...noPoints, stroke: index, width: 3 },
      {
        paths: () => null,
        points: { show: true, size: 12, width: 2.5, stroke: index, fill: ground },
      },
    ],
    bands: [{ series: [at('high'), at('low')], fill: through(line, 0.14) }],
    cursor: {
      y: false,
      // No spot where the scene is not known.
      dataIdx: (_, __, nearest, instant) => {
        const point = drawn.points[nearest];
        return point && Math.abs(point.at - instant) <= FAR_MS ? nearest : null;
      },
      drag: { x: false },
      points: {
        size: (_, column) => (column === at('curve') ? 14 : 0),
        width: (_, column) => (column === at('curve') ? 2 : 0),
        fill: () => index,
        stroke: () => ground,
      },
    },
    hooks: {
      drawSeries: [(chart, column) => over[column]?.(chart)],
      draw: [(chart) => drawTracks(chart, drawn, look, room)],
      ready: [onReady],
    },
  };
}
