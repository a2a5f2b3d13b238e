import { later } from '../../shell/later.tsx';

/**
 * What a change of the list costs: a run goes on without it, so it comes with a part of its own, and
 * where that is missing nothing is said.
 */
export const Cost = later(
  () => null,
  async () => (await import('./CostLine.tsx')).CostLine,
);
