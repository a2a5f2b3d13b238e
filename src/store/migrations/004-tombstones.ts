import type { Database } from '../schema.ts';

/** Ids that were deleted where a file was written, of things that were never here. */
export function tombstones(db: Database): void {
  db.createObjectStore('tombstones', { keyPath: 'id' });
}
