import { forecastAt, nineInTen } from '../../../light/forecast.ts';
import type { FittedReading, Scene } from '../../../light/scene.ts';
import { type Stretch, skyEv } from '../../../light/skyTable.ts';
import { type Ev, later, type UtcMs } from '../../../science/units.ts';

/** One instant of the curve: the scene, its interval of nine in ten, and the sky without readings. */
export interface CurvePoint {
  readonly at: UtcMs;
  readonly ev: Ev;
  readonly low: Ev;
  readonly high: Ev;
  readonly sky: Ev;
  /** Taken at this instant; null at every other. */
  readonly reading: FittedReading | null;
}

/** Finer than a pixel on any phone. */
const MOST_POINTS = 300;

/**
 * The curve of a scene over a stretch, in whole minutes and at each reading; only where the sky is
 * known.
 */
export function curveOf(scene: Scene, { fromMs, toMs }: Stretch): readonly CurvePoint[] {
  const minutes = Math.floor((toMs - fromMs) / 60_000);
  const step = Math.max(1, Math.ceil(minutes / MOST_POINTS));
  const pointAt = (at: UtcMs, reading: FittedReading | null): readonly CurvePoint[] => {
    const forecast = forecastAt(scene, at);
    const sky = skyEv(scene.sky, at);
    if (!forecast || sky === null) return [];
    const half = nineInTen(forecast.sigma);
    const ev = forecast.ev100;
    return [{ at, ev, low: (ev - half) as Ev, high: (ev + half) as Ev, sky, reading }];
  };
  const steps = Array.from({ length: Math.floor(minutes / step) + 1 }, (_, i) =>
    later(fromMs, i * step * 60),
  );
  return [
    ...steps.flatMap((at) => pointAt(at, null)),
    ...scene.readings
      .filter(({ at }) => at >= fromMs && at <= toMs)
      .flatMap((reading) => pointAt(reading.at, reading)),
  ].sort((a, b) => a.at - b.at);
}

const HOUR_STEPS = [1, 2, 3, 6, 12];

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
  // Quarters, until it is a whole hour: some clocks are a quarter of an hour off the hours of UTC.
  const quarter = 900_000;
  for (let at = Math.ceil(fromMs / quarter) * quarter; at <= toMs; ) {
    const { hour, minute } = clockAt(at as UtcMs);
    if (minute === 0 && hour % step === 0) ticks.push(at as UtcMs);
    at += minute === 0 ? 4 * quarter : quarter;
  }
  return ticks;
}
