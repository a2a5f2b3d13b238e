import { isRefusal } from '../science/refusal.ts';
import { coolingTime } from '../science/sensorRest.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import { duration, type Seconds } from '../science/units.ts';
import type { OrderRig, TurnFrame, TurnPart } from './orderTurn.ts';
import type { Allowances } from './plan.ts';
import { restOwed } from './rest.ts';
import type { RestChoice } from './restChoice.ts';

/*
 * How long a turn takes, at least and at most, wherever it comes in an order.
 */

/** What a turn takes at least: no swap, no dial change, no rest. */
export function leastSeconds(
  parts: readonly TurnPart[],
  { settleS, writeS }: Allowances,
  rigs: readonly OrderRig[],
): number {
  const longest = Math.max(...parts.map(({ frames }) => frames.length));
  let sum = 0;
  for (let place = 0; place < longest; place += 1) {
    sum +=
      settleS +
      Math.max(
        ...parts.map(({ rig, frames }) => {
          const frame = frames[place];
          return frame ? (rigs[rig] as OrderRig).timerS + frame.t + frame.darkS + writeS : 0;
        }),
      );
  }
  return sum;
}

/** No rest before a frame is longer. */
function longestRest(
  rest: RestChoice,
  { model, waits }: OrderRig,
  { highest, capped, askedS }: TurnFrame,
  longestTime: number,
): number {
  if (rest.kind === 'none' || capped) return askedS;
  if (rest.kind === 'thumb') {
    return Math.max(askedS, restOwed(rest.rule, longestTime as Seconds, duration(0)));
  }
  const hottest = Math.max(model.plateaus.exposing, model.plateaus.idle) as Doublings;
  const needed = coolingTime(model, hottest, waits, highest as Doublings);
  return Math.max(askedS, isRefusal(needed) ? 0 : Math.min(needed, rest.longestS));
}

/**
 * What a turn takes at most, apart from waiting for its set.
 *
 * @param longestTime each rig's longest exposure, in s.
 */
export const mostSeconds = (
  parts: readonly TurnPart[],
  allowances: Allowances,
  rigs: readonly OrderRig[],
  rest: RestChoice,
  longestTime: readonly number[],
): number =>
  allowances.swapS +
  allowances.reframeS +
  leastSeconds(parts, allowances, rigs) +
  parts.reduce(
    (sum, { rig, frames }) =>
      sum +
      frames.reduce(
        (own, frame) =>
          own +
          allowances.dialChangeS +
          longestRest(rest, rigs[rig] as OrderRig, frame, longestTime[rig] as number),
        0,
      ),
    0,
  );
