import type { Night } from '../../../light/night.ts';
import type { Stretch } from '../../../light/skyTable.ts';
import { later, type UtcMs } from '../../../science/units.ts';

/** Which part of a night is drawn. */
export type ViewName = 'dusk' | 'night' | 'dawn';

const FALLING = ['sunset', 'civil-dusk', 'nautical-dusk', 'astronomical-dusk'];
const RISING = ['astronomical-dawn', 'nautical-dawn', 'civil-dawn', 'sunrise'];
const BEFORE_S = 75 * 60;
const AFTER_S = 35 * 60;
const LONGEST_S = 8 * 3600;

/**
 * The parts of a night worth looking at: the evening and the morning around the sun's passages
 * through its limits, where it has any, and always the whole from noon to noon.
 */
export function viewsOf({
  events,
  noonMs,
  nextNoonMs,
  lowestSun,
}: Night): ReadonlyMap<ViewName, Stretch> {
  const views = new Map<ViewName, Stretch>();
  const within = (at: number): UtcMs => Math.min(Math.max(at, noonMs), nextNoonMs) as UtcMs;
  const timesOf = (names: readonly string[]): readonly UtcMs[] =>
    events.filter(({ event }) => names.includes(event)).map(({ at }) => at);
  // A night that stays bright goes on to its darkest minute.
  const dusks = timesOf(FALLING).filter((at) => at <= lowestSun.at);
  const [dusk] = dusks;
  if (dusk !== undefined) {
    const fromMs = within(later(dusk, -BEFORE_S));
    const last = dusks.length < FALLING.length ? lowestSun.at : (dusks.at(-1) ?? dusk);
    const toMs = within(Math.min(later(last, AFTER_S), later(fromMs, LONGEST_S)));
    views.set('dusk', { fromMs, toMs });
  }
  views.set('night', { fromMs: noonMs, toMs: nextNoonMs });
  const dawns = timesOf(RISING).filter((at) => at >= lowestSun.at);
  const dawn = dawns.at(-1);
  if (dawn !== undefined) {
    const toMs = within(later(dawn, BEFORE_S));
    const first = dawns.length < RISING.length ? lowestSun.at : (dawns[0] ?? dawn);
    const fromMs = within(Math.max(later(first, -AFTER_S), later(toMs, -LONGEST_S)));
    views.set('dawn', { fromMs, toMs });
  }
  return views;
}
