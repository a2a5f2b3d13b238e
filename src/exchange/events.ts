import type { Body } from '../gear/body.ts';
import type { RigId } from '../gear/ids.ts';
import type { Lens } from '../gear/lens.ts';
import {
  readBody,
  readGear,
  readLens,
  readMark,
  readRig,
  readSettings,
  readTimeChoice,
} from '../gear/parse.ts';
import {
  type Fault,
  fault,
  id,
  isFault,
  list,
  nullable,
  number,
  object,
  oneOf,
  type Reader,
  tagged,
  text,
  truth,
  whole,
  within,
} from '../gear/read.ts';
import type { Rig } from '../gear/rig.ts';
import { readSite, readSkyTable } from '../light/parse.ts';
import {
  EVENT_VERSION,
  type EventData,
  type EventKind,
  type GearPart,
  type OutingEvent,
  type Reading,
  SETUP_ITEMS,
  VERDICTS,
} from '../outing/events.ts';
import type { EventId, MadeId, OutingId, SessionId, WriterId } from '../outing/ids.ts';
import type { FrameKey } from '../plan/ids.ts';
import { readPlan, readPlannedFrame } from '../plan/parse.ts';
import { parseDuration, parseEv, parseFNumber, parseIso, parseSeconds } from '../science/units.ts';
import { readBodyClock, readEvenedUp, readMatchedFile } from './cameraFile.ts';
import { type OlderEvent, upcast } from './upcast.ts';

/*
 * Journal events from unknown JSON. Every kind has a reader; a kind that is added
 * without one does not compile.
 */

const MOST_TEXT = 100_000;
const MOST_KEY = 500;
const MOST_FRAMES = 100_000;
const MOST_EVENTS = 500_000;
/** Some fields of every frame. */
const MOST_CHANGES = 1_000_000;
/** Longer than any exposure, wait or delay of one outing. */
const MOST_S = 1e6;
/** The last instant that a date can name. */
const MOST_MS = 8.64e15;
const MOST_FILE_NUMBER = 1e9;

const rig = id<RigId>();
const made = id<MadeId>();
const readDuration = number(parseDuration, 0, MOST_S, 's');
const readTime = number(parseSeconds, 1e-6, MOST_S, 's');
const readFileNumber = nullable(whole(0, MOST_FILE_NUMBER));
const readVerdict = oneOf(VERDICTS);
/** Whether there is such a frame is the fold's question. */
const readFrameKey: Reader<FrameKey> = (value) =>
  typeof value === 'string' && value.length < MOST_KEY ? (value as FrameKey) : fault('not-an-id');
const readFrames = list(readPlannedFrame, MOST_FRAMES);
const nothing = object<Record<string, never>>({});

const metered = {
  n: number(parseFNumber, 0.1, 1000),
  t: readTime,
  s: number(parseIso, 0.1, 1e8),
};

type ReadingOf<K extends Reading['kind']> = Extract<Reading, { kind: K }>;

/** A meter reading, also for the form that takes one. */
export const readReading: Reader<Reading> = tagged<Reading, 'kind'>('kind', {
  ev: object<ReadingOf<'ev'>>({ kind: oneOf(['ev']), ev100: number(parseEv, -50, 50, 'EV') }),
  settings: object<ReadingOf<'settings'>>({ kind: oneOf(['settings']), ...metered }),
  'test-frame': object<ReadingOf<'test-frame'>>({
    kind: oneOf(['test-frame']),
    ...metered,
    thirdsOver: number((value) => value, -100, 100),
  }),
});

const readGearPart: Reader<GearPart> = tagged<GearPart, 'part'>('part', {
  body: object<{ part: 'body'; value: Body }>({ part: oneOf(['body']), value: readBody }),
  lens: object<{ part: 'lens'; value: Lens }>({ part: oneOf(['lens']), value: readLens }),
  rig: object<{ part: 'rig'; value: Rig }>({ part: oneOf(['rig']), value: readRig }),
});

type Corrected = EventData['corrected'];

const correction = <F extends Corrected['field'], T>(
  field: F,
  value: Reader<T>,
): Reader<{ frame: MadeId; field: F; value: T }> =>
  object<{ frame: MadeId; field: F; value: T }>({ frame: made, field: oneOf([field]), value });

const readCorrected: Reader<Corrected> = tagged<Corrected, 'field'>('field', {
  isoMark: correction('isoMark', readMark),
  fMark: correction('fMark', readMark),
  time: correction('time', readTimeChoice),
  elapsedS: correction('elapsedS', readTime),
  fileNumber: correction('fileNumber', readFileNumber),
  verdict: correction('verdict', nullable(readVerdict)),
  counts: correction('counts', truth),
  note: correction('note', text(MOST_TEXT)),
});

const readData: { readonly [K in EventKind]: Reader<EventData[K]> } = {
  'outing-started': object<EventData['outing-started']>({
    plan: readPlan,
    gear: readGear,
    frames: readFrames,
    site: nullable(readSite),
    sky: nullable(readSkyTable),
  }),
  'setup-ticked': object<EventData['setup-ticked']>({
    rig,
    item: oneOf(SETUP_ITEMS),
    done: truth,
  }),
  'setup-finished': nothing,
  'counter-set': object<EventData['counter-set']>({ rig, next: whole(0, MOST_FILE_NUMBER) }),
  mounted: object<EventData['mounted']>({ rigs: list(rig, 50) }),
  dialled: object<EventData['dialled']>({ rig, settings: readSettings }),
  'exposure-started': object<EventData['exposure-started']>({
    frame: readFrameKey,
    rig,
    leadInS: readDuration,
  }),
  'exposure-closed': object<EventData['exposure-closed']>({ made }),
  recorded: object<EventData['recorded']>({
    made,
    settings: readSettings,
    fileNumber: readFileNumber,
  }),
  'extra-shot': object<EventData['extra-shot']>({ rig, count: whole(1, 100_000) }),
  judged: object<EventData['judged']>({ made, verdict: readVerdict }),
  'retake-asked': object<EventData['retake-asked']>({ frame: readFrameKey }),
  'frame-skipped': object<EventData['frame-skipped']>({ frame: readFrameKey }),
  replanned: object<EventData['replanned']>({
    remaining: readFrames,
    reason: oneOf(['next-two-swapped', 'set-dropped', 'set-rematched']),
  }),
  noted: object<EventData['noted']>({ text: text(MOST_TEXT), made: nullable(made) }),
  'reading-taken': object<EventData['reading-taken']>({
    meter: text(MOST_TEXT),
    reading: readReading,
  }),
  'battery-changed': object<EventData['battery-changed']>({ rig }),
  'lens-touched': object<EventData['lens-touched']>({ rig }),
  'powered-off': object<EventData['powered-off']>({ rig }),
  'rest-skipped': object<EventData['rest-skipped']>({ rig, leftS: readDuration }),
  'cue-late': object<EventData['cue-late']>({ made, lateS: readDuration }),
  paused: nothing,
  resumed: nothing,
  ended: nothing,
  undone: object<EventData['undone']>({ target: id<EventId>() }),
  discarded: object<EventData['discarded']>({ made }),
  corrected: readCorrected,
  'gear-corrected': readGearPart,
  'clock-framed': object<EventData['clock-framed']>({ rig }),
  'files-matched': object<EventData['files-matched']>({
    files: list(readMatchedFile, MOST_FRAMES),
    clocks: list(readBodyClock, 50),
  }),
  'values-taken': object<EventData['values-taken']>({
    changes: list(readCorrected, MOST_CHANGES),
  }),
  'evened-up': readEvenedUp,
};

const readKind = oneOf(Object.keys(readData) as EventKind[]);

/** All of an event but its data, which only its kind and version can tell. */
const readEnvelope = object<OlderEvent>({
  id: id<EventId>(),
  outing: id<OutingId>(),
  writer: id<WriterId>(),
  seq: whole(1, MOST_EVENTS),
  v: whole(1, Number.MAX_SAFE_INTEGER),
  kind: text(100),
  wallMs: number((value) => value, -MOST_MS, MOST_MS),
  offsetMin: whole(-1440, 1440),
  zone: text(100),
  monoMs: number((value) => value, -MOST_MS, MOST_MS),
  session: id<SessionId>(),
  data: (value) => value,
});

/**
 * One event of a journal, brought up from the version that wrote it.
 *
 * @returns the first fault; 'event-newer' at `v` for one that a newer version wrote.
 */
export const readEvent: Reader<OutingEvent> = (value) => {
  const found = readEnvelope(value);
  if (isFault(found)) return found;
  if (found.v > EVENT_VERSION) {
    return within('v', fault('event-newer', { version: found.v, known: EVENT_VERSION }));
  }
  const event = upcast(found);
  const kind = readKind(event.kind);
  if (isFault(kind)) return within('kind', kind);
  const data: EventData[EventKind] | Fault = readData[kind](event.data);
  // The kind chose the reader of its data; the compiler cannot follow that through the union.
  return isFault(data) ? within('data', data) : ({ ...event, kind, data } as OutingEvent);
};

/** The events of a file, in its order. */
export const readEvents: Reader<readonly OutingEvent[]> = list(readEvent, MOST_EVENTS);
