import type { OrderName } from './plan.ts';

/**
 * How many passes a set has unless its owner says otherwise: the fewest that make the order what
 * its name says.
 */
export const DEFAULT_PASSES: Readonly<Record<OrderName, number>> = {
  'rig-by-rig': 1,
  forward: 1,
  mirror: 2,
  alternate: 2,
  'double-mirror': 4,
  'side-by-side': 1,
};

/** Odd number of ones in the binary digits: the Thue-Morse sequence 0 1 1 0 1 0 0 1 ... */
function thueMorse(index: number): boolean {
  let odd = false;
  for (let rest = index; rest > 0; rest = Math.floor(rest / 2)) {
    if (rest % 2 === 1) odd = !odd;
  }
  return odd;
}

/**
 * Whether a pass runs through the rigs backwards, against the set's first pass.
 *
 * A mirror (+ - + -) cancels a steady fade and every odd power of the time about its middle;
 * + - - + also the quadratic part. Source: OIML R 111-1:2004, A B B A cycles in the comparison of
 * weights (clause not seen); the quadratic case was found by search over all orders of eight.
 *
 * @param pass from 1.
 */
export function runsBackwards(order: OrderName, pass: number): boolean {
  switch (order) {
    case 'forward':
    case 'alternate':
    case 'rig-by-rig':
    case 'side-by-side':
      return false;
    case 'mirror':
      return pass % 2 === 0;
    case 'double-mirror':
      return thueMorse(pass - 1);
  }
}
