import type { Site } from '../../../light/site.ts';
import { daysLater, instantOf, offsetAt } from '../../../light/zones.ts';
import type { UtcMs } from '../../../science/units.ts';
import type { PlanWords } from '../../words/plan.ts';

/** The clock of a site at an instant: '17:54'. */
export const siteTime = ({ format }: PlanWords, { zone }: Site, at: UtcMs): string =>
  format.time(at, offsetAt(zone, at));

/** The same with seconds, for frames. */
export const siteTimeFine = ({ format }: PlanWords, { zone }: Site, at: UtcMs): string =>
  format.timeFine(at, offsetAt(zone, at));

/**
 * When a site's clock shows a time in the evening of a date: before noon it is the morning after.
 * Null if the text is no time. A time that comes twice is taken the first time; one that is
 * skipped, as if the clock had not been set.
 */
export function readSiteTime(text: string, { zone }: Site, date: string): UtcMs | null {
  const [, hours, minutes] = /^\s*(\d{1,2})[:.](\d{2})\s*$/.exec(text) ?? [];
  const hour = Number(hours ?? Number.NaN);
  const minute = Number(minutes);
  if (!(hour < 24 && minute < 60)) return null;
  const found = instantOf(zone, { date: hour < 12 ? daysLater(date, 1) : date, hour, minute });
  return found.kind === 'twice' ? found.first : found.at;
}
