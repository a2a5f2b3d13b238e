import type { RestRule } from '../../../src/plan/plan.ts';
import { duration, type Ev, ev, type Seconds } from '../../../src/science/units.ts';
import type { OrderCase } from '../../arbitraries/orders.ts';

/** All lengths are multiples of this, and between such instants the light is a line. */
const STEP_S = 10;

const onStep = (seconds: number): Seconds => duration(STEP_S * Math.ceil(seconds / STEP_S));

/** The light as a line between steps: a table of it in such steps is the light itself. */
function inLines(light: (at: Seconds) => Ev): (at: Seconds) => Ev {
  return (at) => {
    const step = Math.floor(at / STEP_S);
    const [here, next] = [light(duration(step * STEP_S)), light(duration((step + 1) * STEP_S))];
    return ev(here + (next - here) * (at / STEP_S - step));
  };
}

/**
 * A case of which a linear model can state the whole cost but for the heat: its lengths rounded up
 * to steps, so that instants meet; rests by the rule of thumb where it had any, and none longer than
 * two swaps and the shortest exposure between them, so that a rig owes a rest only within a stay.
 */
export function inSteps(request: OrderCase): OrderCase {
  const { plan, gear } = request;
  const [swapS, reframeS] = [onStep(plan.allowances.swapS), onStep(plan.allowances.reframeS)];
  const frames = request.frames.map((frame) => ({
    ...frame,
    exact: { ...frame.exact, t: onStep(frame.exact.t) },
  }));
  const rule: RestRule = {
    factor: 1,
    offUpToS: duration(30),
    longestS: duration(2 * (swapS + reframeS) + Math.min(...frames.map(({ exact }) => exact.t))),
  };
  return {
    ...request,
    plan: {
      ...plan,
      allowances: {
        swapS,
        reframeS,
        dialChangeS: onStep(plan.allowances.dialChangeS),
        // One step together: they come in pairs.
        settleS: duration(7),
        writeS: duration(3),
      },
    },
    gear: {
      ...gear,
      bodies: gear.bodies.map((body) => ({
        ...body,
        selfTimer: { ...body.selfTimer, usedS: onStep(body.selfTimer.usedS ?? 0) },
      })),
    },
    frames,
    light: inLines(request.light),
    notBefore: new Map([...request.notBefore].map(([set, at]) => [set, onStep(at)])),
    rest: request.rest.kind === 'none' ? request.rest : { kind: 'thumb', rule },
  };
}
