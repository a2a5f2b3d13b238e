import { degrees } from '../science/units.ts';
import { SITE_DEFAULTS, type Site, type SiteId } from './site.ts';

/** The site of the practice outing. Invented: there is no such slip. */
export const PRACTICE_SITE: Site = {
  ...SITE_DEFAULTS,
  id: 'practice-site' as SiteId,
  name: 'The old ferry slip',
  latDeg: degrees(54.9),
  lonDeg: degrees(-3.6),
  zone: { kind: 'iana', name: 'Europe/London' },
  note: 'Invented: an estuary to practise at, snow on the far bank. Mind the tide, the edge and the cold all the same.',
  invented: true,
};

/** The date of the practice evening by the site's calendar. */
export const PRACTICE_DATE = '2027-02-12';
