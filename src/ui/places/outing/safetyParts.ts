import { Fragment } from 'preact';
import { later } from '../../shell/later.tsx';

/** Where copies go: says so if its part is missing. */
export const safetySheet = later(
  Fragment,
  async () => (await import('./SafetyCopy.tsx')).SafetySheet,
);

/** What became of a copy: the sheet has said before the first frame if its part is missing. */
export const safetyNotice = later(
  () => null,
  async () => (await import('./SafetyCopy.tsx')).SafetyNotice,
);

/** Reminds of what has not left: where this part is missing, the Log says so of each outing. */
export const notLeftNotice = later(
  () => null,
  async () => (await import('./NotLeftNotice.tsx')).NotLeftNotice,
);
