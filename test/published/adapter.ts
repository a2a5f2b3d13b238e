import { isRefusal, type Refusal } from '../../src/science/refusal.ts';
import type { Entry } from './entry.ts';

/** Turns a given value into a typed one by a constructor of ours. */
export interface Reader<T> {
  readonly unit: string;
  readonly read: (raw: unknown) => T | Refusal;
  /** What stands in where the sheet leaves the input out; none = it must be there. */
  readonly otherwise?: T;
}

// The readers of one adapter are of many types; each keeps its own through `Read`.
// biome-ignore lint/suspicious/noExplicitAny: a bound that accepts every reader
type Readers = Readonly<Record<string, Reader<any>>>;

type Read<R extends Readers> = {
  readonly [K in keyof R]: R[K] extends Reader<infer T> ? T : never;
};

/** What an adapter gives back: a value, a refusal, no event, or a value with further fields. */
export type Outcome =
  | number
  | string
  | boolean
  | null
  | Refusal
  | readonly Outcome[]
  | { readonly value: Outcome; readonly [field: string]: Outcome };

/** Runs the checks of one quantity. */
export interface Adapter {
  /** A quantity that is not always in the same unit tells it by the entry. */
  readonly unit: string | ((entry: Entry) => string);
  readonly run: (entry: Entry) => Outcome;
}

/** The adapters of one sheet, by quantity. */
export interface AdapterSet {
  readonly adapters: Readonly<Record<string, Adapter>>;
  /** Quantities that the app has no use for, with the reason. */
  readonly withoutUse: Readonly<Record<string, string>>;
}

/**
 * Makes the adapter of a quantity: it reads the inputs by name, checks their units and calls the
 * product. It does no arithmetic.
 */
export function adapter<R extends Readers>(of: {
  readonly unit: string;
  readonly inputs: R;
  readonly run: (inputs: Read<R>) => Outcome;
}): Adapter {
  return {
    unit: of.unit,
    run: (entry) => {
      for (const name of Object.keys(entry.inputs)) {
        if (!Object.hasOwn(of.inputs, name)) throw new Error(`unknown input ${name}`);
      }
      const read: Record<string, unknown> = {};
      let refusal: Refusal | null = null;
      for (const [name, reader] of Object.entries(of.inputs)) {
        const given = entry.inputs[name];
        if (given === undefined) {
          if (!('otherwise' in reader)) throw new Error(`input ${name} is missing`);
          read[name] = reader.otherwise;
          continue;
        }
        if (sameUnit(given.unit) !== sameUnit(reader.unit)) {
          throw new Error(`unknown unit ${given.unit} of ${name}, known: ${reader.unit}`);
        }
        const value: unknown = reader.read(given.value);
        if (isRefusal(value)) refusal ??= value;
        read[name] = value;
      }
      return refusal ?? of.run(read as Read<R>);
    },
  };
}

/** 'stop' and 'stops' are one unit. */
export const sameUnit = (unit: string): string => (unit === 'stop' ? 'stops' : unit);

const NOT_FINITE: Readonly<Record<string, number>> = {
  Infinity: Number.POSITIVE_INFINITY,
  '-Infinity': Number.NEGATIVE_INFINITY,
  NaN: Number.NaN,
};

/** A number as a sheet writes it, the three that JSON lacks as strings. */
export function sheetNumber(raw: unknown): number {
  const value = typeof raw === 'string' ? NOT_FINITE[raw] : raw;
  if (typeof value !== 'number') throw new Error(`${JSON.stringify(raw)} is no number`);
  return value;
}

/** A reader of a number through one of our constructors. */
export const number = <T>(unit: string, parse: (value: number) => T | Refusal): Reader<T> => ({
  unit,
  read: (raw) => parse(sheetNumber(raw)),
});

/** A reader of a text through one of our constructors. */
export const text = <T>(unit: string, parse: (value: string) => T | Refusal): Reader<T> => ({
  unit,
  read: (raw) => {
    if (typeof raw !== 'string') throw new Error(`${JSON.stringify(raw)} is no text`);
    return parse(raw);
  },
});

/** A reader of a flag. */
export const flag: Reader<boolean> = {
  unit: 'flag',
  read: (raw) => {
    if (typeof raw !== 'boolean') throw new Error(`${JSON.stringify(raw)} is no flag`);
    return raw;
  },
};

/** The same reader for an input that the sheet may leave out. */
export const optional = <T, D>(reader: Reader<T>, otherwise: D): Reader<T | D> => ({
  ...reader,
  otherwise,
});
