import { readText } from '../device/files.ts';
import { readAnyFile } from '../exchange/anyFile.ts';
import type { Backup } from '../exchange/backup.ts';
import type { FileContent } from '../exchange/json.ts';
import { MOST_BYTES } from '../exchange/readJson.ts';
import { type Arrival, arrivalOf } from '../exchange/restore.ts';
import { isFault } from '../gear/read.ts';
import { toFault } from '../store/fault.ts';
import type { Bringing, FileWorld, NotTaken, Taking } from './files.ts';
import type { Saving } from './saving.ts';

/** Reads our files back: whole or not at all, told first, then in one transaction. */
export function createTaking({
  store,
  clock,
  saving,
  gear,
  plans,
  sites,
  log,
  run,
  onFirstOwnBody,
}: FileWorld): Taking {
  /** What the file of `content` changes here now. */
  const meet = async (content: Backup): Promise<Arrival | NotTaken> => {
    if ((await settled(saving)) === 'not-saved' || run.journal.peek()?.unsaved.peek().length) {
      return { how: 'unsaved' };
    }
    try {
      const outings = [...new Set(content.events.map(({ outing }) => outing))];
      const [held, heldPlans, heldSites, tombstones, journals] = await Promise.all([
        store.gear(),
        store.plans(),
        store.sites(),
        store.tombstones(),
        Promise.all(outings.map((outing) => store.events(outing))),
      ]);
      const here = {
        gear: held,
        plans: heldPlans,
        sites: heldSites,
        tombstones,
        events: journals.flat(),
      };
      const arrival = arrivalOf(here, content);
      return isFault(arrival) ? { how: 'refused', fault: arrival } : arrival;
    } catch (cause) {
      return { how: 'store', fault: toFault(cause) };
    }
  };

  return {
    async look(file) {
      const text = await readText(file, MOST_BYTES);
      if (!text.read) return { how: 'unreadable', why: text.why };
      const read = readAnyFile(text.text);
      if (isFault(read)) return { how: 'refused', fault: read };
      const arrival = await meet(read.content);
      return 'how' in arrival
        ? arrival
        : { how: 'fits', brings: bringing(read, arrival, clock.now().offsetMin) };
    },
    async take({ file }) {
      const arrival = await meet(file.content);
      if ('how' in arrival) return arrival;
      const hadOwn = gear.hasOwn.peek();
      try {
        await store.restore(arrival);
        await Promise.all([gear.load(), plans.load(), sites.load(), log.refresh()]);
        const inHand = run.journal.peek()?.outing;
        if (inHand && arrival.events.some(({ outing }) => outing === inHand)) {
          run.leave();
          await run.open(inHand);
        }
      } catch (cause) {
        return { how: 'store', fault: toFault(cause) };
      }
      log.reread();
      if (gear.hasOwn.peek() && !hadOwn) onFirstOwnBody();
      return { how: 'taken', brings: bringing(file, arrival, clock.now().offsetMin) };
    },
  };
}

function bringing(file: FileContent<Backup>, arrival: Arrival, offsetMin: number): Bringing {
  const { head, content } = file;
  const writtenMs = Date.parse(head.written);
  const { events, gear, plans, sites, copies, deletedHere } = arrival;
  const gearOf = (wanted: string): number => gear.filter(({ kind }) => kind === wanted).length;
  const begun = new Set(
    events.flatMap(({ kind, outing }) => (kind === 'outing-started' ? [outing] : [])),
  );
  const touched = new Set(events.map(({ outing }) => outing));
  return {
    file,
    written: Number.isNaN(writtenMs) ? null : { wallMs: writtenMs, offsetMin },
    events: events.length,
    outings: content.events.flatMap((event) =>
      event.kind === 'outing-started' && touched.has(event.outing)
        ? [{ name: event.data.plan.name, begun: begun.has(event.outing) }]
        : [],
    ),
    bodies: gearOf('body'),
    lenses: gearOf('lens'),
    rigs: gearOf('rig'),
    plans: plans.length,
    sites: sites.length,
    copies,
    deletedHere,
  };
}

/** Waits until what was entered at the desks is written, or cannot be. */
const settled = (saving: Saving): Promise<'saved' | 'not-saved'> =>
  new Promise((done) => {
    const stop = saving.state.subscribe(({ kind }) => {
      if (kind === 'saving') return;
      done(kind);
      queueMicrotask(() => stop());
    });
  });
