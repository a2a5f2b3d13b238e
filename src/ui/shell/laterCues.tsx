import { later } from './later.tsx';

/** How an exposure is told, for the sheet at the set-up of an outing. */
export const CueFields = later(
  ({ children }) => <>{children}</>,
  async () => (await import('./CueSection.tsx')).CueFields,
);
