import { type ThermalRange, UNMEASURED } from '../science/thermalRange.ts';
import type { Body, MeasuredHeat } from './body.ts';

/** A body of which nobody has measured how it warms. */
export const NOTHING_MEASURED: MeasuredHeat = {
  tau: null,
  doubling: null,
  exposing: null,
  liveView: null,
  idle: null,
};

/** How a body warms: what was measured, and the stated ranges for the rest. */
export const thermalRangeOf = ({ heat }: Body): ThermalRange => ({
  tau: heat.tau ?? UNMEASURED.tau,
  doubling: heat.doubling ?? UNMEASURED.doubling,
  exposing: heat.exposing ?? UNMEASURED.exposing,
  liveView: heat.liveView ?? UNMEASURED.liveView,
  idle: heat.idle ?? UNMEASURED.idle,
});

/** Whether a rest for this body is more than a suggestion: what cools it was measured. */
export const restIsMeasured = ({ heat }: Body): boolean =>
  heat.tau !== null && heat.doubling !== null && heat.exposing !== null;
