import { describe, expect, it } from 'vitest';
import { PRACTICE_SITE } from '../../../light/practice.ts';
import type { Site } from '../../../light/site.ts';
import { readSiteTime } from './siteTime.ts';

const kathmandu: Site = { ...PRACTICE_SITE, zone: { kind: 'iana', name: 'Asia/Kathmandu' } };
const iso = (text: string, site: Site = PRACTICE_SITE, date = '2027-02-12') => {
  const at = readSiteTime(text, site, date);
  return at === null ? null : new Date(at).toISOString();
};

describe('a start by the site’s clock', () => {
  it('is that of the evening, and before noon of the morning after', () => {
    expect(iso('17:54')).toBe('2027-02-12T17:54:00.000Z');
    expect(iso(' 4.05 ')).toBe('2027-02-13T04:05:00.000Z');
    expect(iso('12:00')).toBe('2027-02-12T12:00:00.000Z');
    expect(iso('17:54', kathmandu)).toBe('2027-02-12T12:09:00.000Z');
  });

  it('is taken once where the clock is set: the first of two, or as if it had not been', () => {
    // London goes back at 2:00 on 31 October 2027 and forward at 1:00 on 28 March.
    expect(iso('1:30', PRACTICE_SITE, '2027-10-30')).toBe('2027-10-31T00:30:00.000Z');
    expect(iso('1:30', PRACTICE_SITE, '2027-03-27')).toBe('2027-03-28T01:30:00.000Z');
  });

  it('is refused where it is no time', () => {
    for (const text of ['', '25:00', '17:60', '17', 'dusk', '17:5']) expect(iso(text)).toBeNull();
  });
});
