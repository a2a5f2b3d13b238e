import { isRefusal, type Refusal } from '../science/refusal.ts';

/*
 * From unknown JSON to typed values, in one pass that stops at the first fault
 * and says where it is.
 *
 * A reader is a function. `object` asks for a reader of every field of its type,
 * so that a field added to a type without a reader does not compile, and it
 * refuses fields that it does not know: dropping them silently would lose what a
 * newer version wrote. Nothing is copied from the input but what a reader
 * returned, so hostile keys have nowhere to land.
 */

/** What is wrong with an input, and where. A class, because input could look like one but not be one. */
export class Fault implements Refusal {
  readonly refused = true;
  readonly rule: string;
  /** Place within the input, as in `bodies[1].iso.lowest`; empty = the input itself. */
  readonly path: string;
  /** What the sentence on the screen needs besides the rule: bounds, the text that was found. */
  readonly params: Readonly<Record<string, string | number>>;

  constructor(rule: string, path: string, params: Fault['params']) {
    this.rule = rule;
    this.path = path;
    this.params = params;
  }
}

/** Turns unknown input into a typed value, or says what is wrong with it. */
export type Reader<T> = (value: unknown) => T | Fault;

/** One reader for each field of an object type. */
export type Fields<T> = { readonly [K in keyof T]-?: Reader<T[K]> };

/** Makes a fault at the place where a reader stands. */
export const fault = (rule: string, params: Fault['params'] = {}): Fault =>
  new Fault(rule, '', params);

/** Tells a fault from a value. */
export const isFault = (value: unknown): value is Fault => value instanceof Fault;

/** The same fault seen from one level further out: `segment` is a field's name or `[index]`. */
export function within(segment: string, { rule, path, params }: Fault): Fault {
  const joint = path === '' || path.startsWith('[') ? '' : '.';
  return new Fault(rule, `${segment}${joint}${path}`, params);
}

/** Enough of a wrong text to recognise it by. */
const excerpt = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text);

const isPlainObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** An object with exactly these fields. */
export function object<T extends object>(fields: Fields<T>): Reader<T> {
  const known = Object.keys(fields) as (keyof T & string)[];
  return (value) => {
    if (!isPlainObject(value)) return fault('not-an-object');
    for (const key of Object.keys(value)) {
      if (!Object.hasOwn(fields, key)) return fault('field-unknown', { field: excerpt(key) });
    }
    const result: Partial<T> = {};
    for (const key of known) {
      if (!Object.hasOwn(value, key)) return within(key, fault('field-missing'));
      const field = fields[key](value[key]);
      if (isFault(field)) return within(key, field);
      result[key] = field;
    }
    return result as T;
  };
}

/** A list of at most `most` items. */
export function list<T>(item: Reader<T>, most: number): Reader<readonly T[]> {
  return (value) => {
    if (!Array.isArray(value)) return fault('not-a-list');
    if (value.length > most) return fault('list-too-long', { most });
    const result: T[] = [];
    for (const [index, element] of value.entries()) {
      const read = item(element);
      if (isFault(read)) return within(`[${index}]`, read);
      result.push(read);
    }
    return result;
  };
}

/** A table from ids to values. */
export function table<K extends string, T>(
  key: Reader<K>,
  item: Reader<T>,
  most: number,
): Reader<Readonly<Record<K, T>>> {
  return (value) => {
    if (!isPlainObject(value)) return fault('not-an-object');
    const names = Object.keys(value);
    if (names.length > most) return fault('list-too-long', { most });
    const entries: [K, T][] = [];
    for (const name of names) {
      const id = key(name);
      if (isFault(id)) return within(excerpt(name), id);
      const read = item(value[name]);
      if (isFault(read)) return within(excerpt(name), read);
      entries.push([id, read]);
    }
    return Object.fromEntries(entries) as Record<K, T>;
  };
}

/** Units that a bound is told in; a count has none. */
export type BoundUnit = 's' | 'min' | 'mm' | 'm' | '°' | 'K' | 'stop' | 'EV' | 'px' | 'bit';

/**
 * A number that a unit's own parser accepts, between two bounds (both allowed).
 * Minus zero is read as zero, as JSON writes it.
 *
 * @param unit what the bounds are told in, should the number lie outside.
 */
export function number<T extends number>(
  parse: (value: number) => T | Refusal,
  least: number,
  most: number,
  unit?: BoundUnit,
): Reader<T> {
  return (value) => {
    if (typeof value !== 'number' || !Number.isFinite(value)) return fault('not-a-number');
    const parsed = parse(value === 0 ? 0 : value);
    if (isRefusal(parsed)) return fault(parsed.rule);
    return parsed < least || parsed > most
      ? fault('out-of-range', unit === undefined ? { least, most } : { least, most, unit })
      : parsed;
  };
}

/** A whole number between two bounds (both allowed). */
export const whole = (least: number, most: number): Reader<number> =>
  number((value) => (Number.isInteger(value) ? value : fault('not-whole')), least, most);

export const truth: Reader<boolean> = (value) =>
  typeof value === 'boolean' ? value : fault('not-yes-or-no');

/**
 * Free text that may be empty and may run over several lines. Any character is
 * taken: a journal must not become unreadable over an odd one in a note.
 */
export const text =
  (most: number): Reader<string> =>
  (value) => {
    if (typeof value !== 'string') return fault('not-text');
    return value.length > most ? fault('text-too-long', { most }) : value;
  };

/** One line of text that may be empty; controls and halves of a character are no text. */
export const line = (most: number): Reader<string> =>
  also(text(most), (value) => (/[\p{Cc}\p{Cs}]/u.test(value) ? fault('text-unprintable') : null));

/** One line of text that says something. */
export const name = (most: number): Reader<string> =>
  also(line(most), (value) => (value.trim() === '' ? fault('text-empty') : null));

/**
 * The id of a stored thing. Names that every object answers to (`constructor`)
 * are refused, because ids serve as keys.
 */
export function id<T extends string>(): Reader<T> {
  return (value) =>
    typeof value === 'string' && /^[A-Za-z0-9][\w.~:-]{0,99}$/.test(value) && !(value in {})
      ? (value as T)
      : fault('not-an-id');
}

/** One of a few words. */
export function oneOf<const T extends string | number>(choices: readonly T[]): Reader<T> {
  return (value) =>
    choices.find((choice) => choice === value) ??
    fault('not-among', { choices: choices.join(', ') });
}

/** A value or null, where null means none or unknown. */
export function nullable<T>(reader: Reader<T>): Reader<T | null> {
  return (value) => (value === null ? null : reader(value));
}

/** An object whose field `tag` says which of several shapes it has: one reader for each. */
export function tagged<T extends object, K extends keyof T & string>(
  tag: K,
  shapes: { readonly [V in T[K] & string]: Reader<T> },
): Reader<T> {
  const readTag = oneOf(Object.keys(shapes) as (T[K] & string)[]);
  return (value) => {
    if (!isPlainObject(value)) return fault('not-an-object');
    if (!Object.hasOwn(value, tag)) return within(tag, fault('field-missing'));
    const kind = readTag(value[tag]);
    return isFault(kind) ? within(tag, kind) : shapes[kind](value);
  };
}

/** A reader with a rule on top that several fields decide together. */
export function also<T>(reader: Reader<T>, rule: (value: T) => Fault | null): Reader<T> {
  return (value) => {
    const read = reader(value);
    return isFault(read) ? read : (rule(read) ?? read);
  };
}
