import { forecastAt, nineInTen } from '../../../light/forecast.ts';
import type { Scene } from '../../../light/scene.ts';
import { type Stretch, skyEv } from '../../../light/skyTable.ts';
import { type Ev, later, type UtcMs } from '../../../science/units.ts';

/** One instant of the curve: the scene, its interval of nine in ten, and the sky without readings. */
export interface CurvePoint {
  readonly at: UtcMs;
  readonly ev: Ev;
  readonly low: Ev;
  readonly high: Ev;
  readonly sky: Ev;
}

/** Finer than a pixel on any phone. */
const MOST_POINTS = 300;

/** The curve of a scene over a stretch, in whole minutes; only where the sky is known. */
export function curveOf(scene: Scene, { fromMs, toMs }: Stretch): readonly CurvePoint[] {
  const minutes = Math.floor((toMs - fromMs) / 60_000);
  const step = Math.max(1, Math.ceil(minutes / MOST_POINTS));
  const points: CurvePoint[] = [];
  for (let minute = 0; minute <= minutes; minute += step) {
    const at = later(fromMs, minute * 60);
    const forecast = forecastAt(scene, at);
    const sky = skyEv(scene.sky, at);
    if (!forecast || sky === null) continue;
    const half = nineInTen(forecast.sigma);
    const ev = forecast.ev100;
    points.push({ at, ev, low: (ev - half) as Ev, high: (ev + half) as Ev, sky });
  }
  return points;
}

/** The lowest and the highest EV that a curve and what is marked on it need, in whole stops. */
export function evRange(
  points: readonly CurvePoint[],
  marked: readonly Ev[],
): { readonly lowest: number; readonly highest: number } {
  const values = [...points.flatMap(({ low, high, sky }) => [low, high, sky]), ...marked];
  return { lowest: Math.floor(Math.min(...values)), highest: Math.ceil(Math.max(...values)) };
}

/** Where something is on the drawing, in CSS pixels. */
export interface Scales {
  readonly x: (at: number) => number;
  readonly y: (ev: number) => number;
}

const figure = (value: number): string => value.toFixed(1);

/** The outline of a line through points, for an SVG path. */
export const linePath = (
  points: readonly CurvePoint[],
  { x, y }: Scales,
  value: (point: CurvePoint) => number,
): string =>
  points.length === 0
    ? ''
    : `M${points.map((point) => `${figure(x(point.at))} ${figure(y(value(point)))}`).join('L')}`;

/** The outline of the interval, for an SVG path. */
export const areaPath = (points: readonly CurvePoint[], scales: Scales): string =>
  points.length === 0
    ? ''
    : `${linePath(points, scales, ({ high }) => high)}${linePath(
        points.toReversed(),
        scales,
        ({ low }) => low,
      ).replace('M', 'L')}Z`;

const EV_STEPS = [1, 2, 4, 5, 10];
const HOUR_STEPS = [1, 2, 3, 6, 12];

/** Whole stops to be marked, none nearer to the next than `leastPx`. */
export function evTicks(lowest: number, highest: number, heightPx: number, leastPx: number) {
  const room = heightPx / Math.max(1, highest - lowest);
  const step = EV_STEPS.find((each) => each * room >= leastPx) ?? 20;
  const ticks: number[] = [];
  for (let ev = Math.ceil(lowest / step) * step; ev <= highest; ev += step) ticks.push(ev);
  return ticks;
}

/**
 * Instants at which the site's clock shows a whole hour, none nearer to the next than `leastPx`.
 *
 * @param clockAt the hour and minute that the clock shows.
 */
export function hourTicks(
  { fromMs, toMs }: Stretch,
  clockAt: (at: UtcMs) => { readonly hour: number; readonly minute: number },
  widthPx: number,
  leastPx: number,
): readonly UtcMs[] {
  const hourPx = widthPx / Math.max(1, (toMs - fromMs) / 3_600_000);
  const step = HOUR_STEPS.find((each) => each * hourPx >= leastPx) ?? 24;
  const ticks: UtcMs[] = [];
  // Quarters: some clocks are a quarter of an hour off the hours of UTC.
  const quarter = 900_000;
  for (let at = Math.ceil(fromMs / quarter) * quarter; at <= toMs; at += quarter) {
    const { hour, minute } = clockAt(at as UtcMs);
    if (minute === 0 && hour % step === 0) ticks.push(at as UtcMs);
  }
  return ticks;
}
