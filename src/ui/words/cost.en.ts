/** 'fade −0.42 in place of +0.10 stop'; what nobody knows is unknown, never zero. */
function insteadOf(what: string, changed: string | null, going: string | null): string {
  if (changed === null) return `${what} unknown`;
  return going === null
    ? `${what} ${changed} stop`
    : `${what} ${changed} in place of ${going} stop`;
}

/** What a change in mid-outing costs. Durations and figures come in as they are written. */
export const cost = {
  nothing: 'Costs no time and no swap.',
  costs: (parts: readonly string[]) => `${parts.join(', ')}.`,
  longer: (time: string) => `${time} longer`,
  shorter: (time: string) => `${time} shorter`,
  moreSwaps: (swaps: number) => `${swaps} ${swaps === 1 ? 'swap' : 'swaps'} more`,
  fewerSwaps: (swaps: number) => `${swaps} ${swaps === 1 ? 'swap' : 'swaps'} fewer`,
  pair: (other: string, reference: string, set: number, figures: readonly string[]) =>
    `Set ${set}, ${other} against ${reference}: ${figures.join(', ')}.`,
  passes: (left: number, going: number) =>
    `${left === 0 ? 'no' : left} whole ${left === 1 ? 'pass' : 'passes'} in place of ${going}`,
  fade: (changed: string | null, going: string | null) => insteadOf('fade', changed, going),
  heat: (changed: string | null, going: string | null) => insteadOf('dark current', changed, going),
};
