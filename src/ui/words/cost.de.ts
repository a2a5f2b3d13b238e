import type { Alike } from './alike.ts';
import type { cost as en } from './cost.en.ts';

/** 'Schwund −0,42 statt +0,10 Stufen'; what nobody knows is unknown, never zero. */
function insteadOf(what: string, changed: string | null, going: string | null): string {
  if (changed === null) return `${what} unbekannt`;
  return going === null ? `${what} ${changed} Stufen` : `${what} ${changed} statt ${going} Stufen`;
}

/** What a change in mid-outing costs. Durations and figures come in as they are written. */
export const cost: Alike<typeof en> = {
  nothing: 'Kostet keine Zeit und keinen Wechsel.',
  costs: (parts: readonly string[]) => `${parts.join(', ')}.`,
  longer: (time: string) => `${time} länger`,
  shorter: (time: string) => `${time} kürzer`,
  moreSwaps: (swaps: number) => `${swaps} Wechsel mehr`,
  fewerSwaps: (swaps: number) => `${swaps} Wechsel weniger`,
  pair: (other: string, reference: string, set: number, figures: readonly string[]) =>
    `Satz ${set}, ${other} gegen ${reference}: ${figures.join(', ')}.`,
  passes: (left: number, going: number) =>
    `${left === 0 ? 'kein ganzer Durchgang' : left === 1 ? '1 ganzer Durchgang' : `${left} ganze Durchgänge`} statt ${going}`,
  fade: (changed: string | null, going: string | null) => insteadOf('Schwund', changed, going),
  heat: (changed: string | null, going: string | null) => insteadOf('Dunkelstrom', changed, going),
};
