import { Fragment } from 'preact';
import { later } from '../../shell/later.tsx';

/** The clock to be photographed, where it is offered: says so if its part is missing. */
export const clockOffer = later(
  Fragment,
  async () => (await import('./ClockFrame.tsx')).ClockOffer,
);
