import type { Database } from '../schema.ts';

/** The sites of the Light place. */
export function sites(db: Database): void {
  db.createObjectStore('sites', { keyPath: 'id' });
}
