import type { ThermalModel } from './heat.ts';
import {
  type Doublings,
  type ElectronsPerSecond,
  electronsPerSecond,
  type KelvinDifference,
  kelvins,
} from './sensorUnits.ts';
import { type Seconds, seconds } from './units.ts';

/*
 * What is known of how a body warms: a value to work with, a range to carry, and where both come
 * from. Every prediction is worked out at the value and at all corners of the ranges, and shown
 * with both: an unmeasured body's figure without its range would say more than anybody knows.
 */

/** A value with the range it may lie in; for a prediction, its smallest and largest over corners. */
export interface Ranged<T extends number> {
  readonly usual: T;
  readonly least: T;
  readonly most: T;
}

/** A value to work with, with its source in words. */
export interface Stated<T extends number> extends Ranged<T> {
  readonly from: string;
}

/** How a body warms, by what is known of it. Temperatures are over the air. */
export interface ThermalRange {
  readonly tau: Ranged<Seconds>;
  readonly doubling: Ranged<KelvinDifference>;
  /** Plateau of unbroken long exposures. */
  readonly exposing: Ranged<KelvinDifference>;
  /** Plateau of live view or a lit rear screen. */
  readonly liveView: Ranged<KelvinDifference>;
  /** Plateau of being on with a dark screen. */
  readonly idle: Ranged<KelvinDifference>;
}

const between = <T extends number>(usual: T, least: T, most: T): Ranged<T> => ({
  usual,
  least,
  most,
});

/** A body that nobody has measured; where each figure comes from stands in `thermalSources.ts`. */
export const UNMEASURED: ThermalRange = {
  tau: between(seconds(480), seconds(240), seconds(900)),
  doubling: between(kelvins(6.5), kelvins(4.3), kelvins(8.1)),
  exposing: between(kelvins(10), kelvins(4), kelvins(17)),
  liveView: between(kelvins(15), kelvins(8), kelvins(25)),
  idle: between(kelvins(3), kelvins(1), kelvins(6)),
};

/** The dark current of a rested pixel at 20 °C: two decades, to be shown as unknown (from memory). */
export const DARK_CURRENT_AT_20: Ranged<ElectronsPerSecond> = between(
  electronsPerSecond(0.1),
  electronsPerSecond(0.01),
  electronsPerSecond(1),
);

type End = 'usual' | 'least' | 'most';
type Ends = { readonly [parameter in keyof ThermalRange]: End };

function modelAt(range: ThermalRange, ends: Ends): ThermalModel {
  const doubling = range.doubling[ends.doubling];
  const plateau = (of: KelvinDifference): Doublings => (of / doubling) as Doublings;
  return {
    tau: range.tau[ends.tau],
    plateaus: {
      off: 0 as Doublings,
      idle: plateau(range.idle[ends.idle]),
      exposing: plateau(range.exposing[ends.exposing]),
      'live-view': plateau(range.liveView[ends.liveView]),
    },
  };
}

/** The model to work with. */
export const usualModel = (range: ThermalRange): ThermalModel =>
  modelAt(range, {
    tau: 'usual',
    doubling: 'usual',
    exposing: 'usual',
    liveView: 'usual',
    idle: 'usual',
  });

const ENDS = ['least', 'most'] as const;

/**
 * The models at all corners of the ranges, 32 of them, always in the same order: the same place
 * stands for the same ends of the ranges of two bodies.
 */
export const cornerModels = (range: ThermalRange): readonly ThermalModel[] =>
  ENDS.flatMap((tau) =>
    ENDS.flatMap((doubling) =>
      ENDS.flatMap((exposing) =>
        ENDS.flatMap((liveView) =>
          ENDS.map((idle) => modelAt(range, { tau, doubling, exposing, liveView, idle })),
        ),
      ),
    ),
  );

/** What is predicted with the value to work with, and the smallest and largest over the corners. */
export function overCorners<T extends number>(
  range: ThermalRange,
  predict: (model: ThermalModel) => T,
): Ranged<T> {
  const usual = predict(usualModel(range));
  const corners = cornerModels(range).map(predict);
  return {
    usual,
    least: Math.min(usual, ...corners) as T,
    most: Math.max(usual, ...corners) as T,
  };
}
