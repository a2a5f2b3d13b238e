import { journalFile } from '../../src/exchange/journalFile.ts';
import { A, B, dialled, Evening, frame, gear, planOf, s } from '../evenings/evening.ts';
import { seeAsked, untilExpose, wait, wake } from '../journeys/acts/run.ts';
import type { AppWindow } from '../journeys/driver/phone.ts';
import { goTo } from '../journeys/places.ts';

/** Three rigs of which one takes its own dark frame, rests by the rule; and two side by side. */
function evenings(): readonly [busy: Evening, beside: Evening] {
  const c = gear.rigs[2]?.id;
  if (c === undefined) throw new Error('the practice gear has no third rig');
  const long = [1, 2].map((repeat) => frame('long', c, dialled('5.6', '60', '800'), { repeat }));
  const busy = new Evening(long, {
    ...planOf(long, { rest: { factor: 3, offUpToS: s(10) } }),
    name: 'Its own dark',
  });
  busy.setUp().shoot();
  const both = [A, B].map((rig) => frame('both', rig, dialled('8', '8', '800')));
  const beside = new Evening(
    both,
    { ...planOf(both, { order: 'side-by-side' }), name: 'Side by side' },
    'another-phone',
  );
  beside.setUp();
  return [busy, beside];
}

/**
 * The steps that the practice outing never asks for, on outings read back from a file: a body at its
 * own dark frame, a rest, and two rigs side by side. Begins anywhere with no outing under way.
 */
export async function rareSteps(
  app: AppWindow,
  look: (screen: string) => Promise<void>,
): Promise<void> {
  await goTo(app, 'Log');
  await app.tap('button', 'Log');
  await app.tap('button', /^Backup and restore/);
  const [busy, beside] = evenings();
  for (const [at, { events }] of [busy, beside].entries()) {
    const outing = `look-${at}` as (typeof events)[number]['outing'];
    const own = events.map((event) => ({ ...event, outing }));
    const stamp = { app: 'look', written: '2027-02-12T21:00:00.000Z' };
    const text = journalFile.write({ outing, events: own, frames: [], pairs: [] }, stamp);
    const bytes = new TextEncoder().encode(text);
    await app.upload('Choose a file', { name: 'journal.json', bytes });
    await app.tap('button', 'Take it in');
    await app.see(/^Taken in/);
  }
  await app.tap('button', 'Log');
  await app.tap('button', /^Its own dark/);
  // Right after its exposure, when the body is at its dark frame.
  await app.clock.jumpWall(new Date(busy.now().wallMs));
  await app.tap('button', 'Go on with this outing');
  await seeAsked(app, 'Dark frame');
  await look('busy');
  await wait(app, 61);
  await seeAsked(app, 'Rest');
  await look('rest');
  await app.tap('button', 'More');
  await app.tap('button', 'End the outing');
  await app.tap('button', 'End the outing', {
    within: { role: 'dialog', name: 'End the outing' },
  });
  await app.tap('button', 'Put the outing aside');
  await app.tap('button', 'Log');
  await app.tap('button', 'Log');
  await app.tap('button', /^Side by side/);
  await app.tap('button', 'Go on with this outing');
  await seeAsked(app, 'Mount');
  await look('mount-all');
  await untilExpose(app);
  await look('expose-all');
  await app.tap('button', 'Start all');
  await wait(app, 4);
  await look('running-two');
  await wait(app, 30);
  await wake(app);
  await look('record-two');
}
