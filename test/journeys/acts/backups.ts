import { backupFile } from '../../../src/exchange/backup.ts';
import { PRACTICE_GEAR } from '../../../src/gear/practice.ts';
import type { PlannedFrame } from '../../../src/plan/frame.ts';
import { DEFAULT_ALLOWANCES } from '../../../src/plan/newPlan.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { planOf } from '../../evenings/evening.ts';
import type { AppWindow } from '../driver/phone.ts';
import { goTo } from '../places.ts';

/** The practice gear as if it were somebody's own, and a plan of these frames, as a backup. */
export function backupOf(name: string, frames: readonly PlannedFrame[]): Uint8Array {
  const own = <T extends object>(things: readonly T[]): readonly T[] =>
    things.map((thing) => ({ ...thing, invented: false }));
  const plan: Plan = {
    ...planOf(frames),
    name,
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
    { app: 'journeys', written: '2027-02-12T12:00:00.000Z' },
  );
  return new TextEncoder().encode(text);
}

/** Hands a file to the place that reads backups and journals. */
export async function readBack(app: AppWindow, name: string, bytes: Uint8Array): Promise<void> {
  await goTo(app, 'Log');
  await app.tap('button', /^Backup and restore/);
  await app.upload('Choose a file', { name, bytes });
}

/** Takes a backup in on a phone that is new. */
export async function takeIn(app: AppWindow, bytes: Uint8Array): Promise<void> {
  await app.tap('button', 'Restore a backup');
  await app.upload('Choose a file', { name: 'backup.json', bytes });
  await app.tap('button', 'Take it in');
  await app.see(/^Taken in/);
}
