import type { Database } from '../schema.ts';

/** The first database: journal, gear, plans, settings, and the name of the installation. */
export function journalGearAndPlans(db: Database): void {
  const events = db.createObjectStore('events', { keyPath: ['outing', 'writer', 'seq'] });
  // The last fence against the same event under two numbers.
  events.createIndex('by-id', 'id', { unique: true });
  // First and last moment of an outing without reading its events.
  events.createIndex('by-time', ['outing', 'wallMs']);
  db.createObjectStore('gear', { keyPath: 'id' });
  db.createObjectStore('plans', { keyPath: 'id' });
  db.createObjectStore('settings', { keyPath: 'key' });
  db.createObjectStore('installation', { keyPath: 'key' });
}
