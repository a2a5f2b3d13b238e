import { backupFile } from '../../src/exchange/backup.ts';
import { PRACTICE_GEAR } from '../../src/gear/practice.ts';
import type { OutingEvent } from '../../src/outing/events.ts';
import { DEFAULT_ALLOWANCES } from '../../src/plan/newPlan.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { A, B, dialled, frame, planOf } from '../evenings/evening.ts';
import type { AppWindow } from '../journeys/driver/phone.ts';

/** Its shutter is open so long; the self-timer comes before. */
export const EXPOSURE_S = 8;
export const LEAD_IN_S = 2;

export const RIGS = ['A Alder 44', 'B Birch 36'] as const;
export const PLAN = 'Many short frames';

/** The practice gear as somebody's own, and a list of twenty-four frames, bulb among them. */
export function backup(): Uint8Array {
  const own = <T extends object>(things: readonly T[]): readonly T[] =>
    things.map((thing) => ({ ...thing, invented: false }));
  const timed = dialled('8', String(EXPOSURE_S), '400');
  const list = [1, 2, 3].map((pass) =>
    [A, B].map((rig, at) =>
      [1, 2, 3, 4].map((repeat) =>
        frame('short', rig, timed, { pass, repeat, visit: 2 * pass - 1 + at }),
      ),
    ),
  );
  const frames = list.flat(2);
  const base = planOf(frames, { order: 'alternate' });
  const plan: Plan = {
    ...base,
    name: PLAN,
    sets: base.sets.map((set) => ({ ...set, passes: 3, repeats: 4 })),
    allowances: DEFAULT_ALLOWANCES,
    invented: false,
  };
  const { bodies, lenses, rigs } = PRACTICE_GEAR;
  const text = backupFile.write(
    {
      gear: { bodies: own(bodies), lenses: own(lenses), rigs: own(rigs) },
      plans: [plan],
      sites: [],
      events: [],
      tombstones: [],
    },
    { app: 'faults', written: '2027-02-12T12:00:00.000Z' },
  );
  return new TextEncoder().encode(text);
}

/** What lies in the phone's database of the newest outing, read past the app. */
export const journalOnDisk = (window: AppWindow): Promise<readonly OutingEvent[]> =>
  window.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>) =>
      new Promise<T>((give, fail) => {
        request.onsuccess = () => give(request.result);
        request.onerror = () => fail(request.error);
      });
    const database = await done(indexedDB.open('evenfall'));
    const all = await done(
      database.transaction('events').objectStore('events').getAll() as IDBRequest<OutingEvent[]>,
    );
    database.close();
    const newest = all.reduce<OutingEvent | undefined>(
      (last, event) =>
        event.kind === 'outing-started' && event.wallMs >= (last?.wallMs ?? 0) ? event : last,
      undefined,
    );
    return all.filter(({ outing }) => outing === newest?.outing);
  }, undefined);
