import { bodyFrom1, planFrom1 } from './older.ts';

/*
 * From the records of a database to what a backup holds. Nothing is trusted here: the backup's own
 * reader looks at all that comes out, and says of what is not as expected where it is wrong.
 */

type Fields = Readonly<Record<string, unknown>>;

const fieldsOf = (value: unknown): Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : {};

const recordsOf = (stores: Fields, name: string): readonly Fields[] => {
  const records = Object.hasOwn(stores, name) ? stores[name] : [];
  return Array.isArray(records) ? records.map(fieldsOf) : [];
};

const withValues = (
  content: unknown,
  name: string,
  step: (record: Fields) => unknown,
): Record<string, unknown> => {
  const stores = fieldsOf(fieldsOf(content)['stores']);
  const records = recordsOf(stores, name).map((record) => ({ ...record, value: step(record) }));
  return { stores: { ...stores, [name]: records } };
};

/** Databases 1 and 2 said nothing of how bodies warm, and knew named orders only. */
export const storageFrom2 = (content: unknown): unknown =>
  withValues(
    withValues(content, 'gear', ({ kind, value }) => (kind === 'body' ? bodyFrom1(value) : value)),
    'plans',
    ({ value }) => planFrom1(value),
  );

/** The content of a backup, still to be read. */
export function backupOfStorage(content: unknown): unknown {
  const stores = fieldsOf(fieldsOf(content)['stores']);
  const all = ['gear', 'plans', 'sites'].map((name) => recordsOf(stores, name));
  const [gear = [], plans = [], sites = []] = all.map((records) =>
    records.filter(({ deleted }) => deleted !== true),
  );
  const values = (records: readonly Fields[]): unknown[] => records.map(({ value }) => value);
  const ofKind = (wanted: string): unknown[] => values(gear.filter(({ kind }) => kind === wanted));
  const deleted = all.flat().filter((record) => record['deleted'] === true);
  return {
    gear: { bodies: ofKind('body'), lenses: ofKind('lens'), rigs: ofKind('rig') },
    plans: values(plans),
    sites: values(sites),
    events: recordsOf(stores, 'events'),
    tombstones: [...deleted, ...recordsOf(stores, 'tombstones')].map(({ id }) => id),
  };
}
