import type { RigId } from '../../src/gear/ids.ts';
import { exactSettings } from '../../src/gear/positions.ts';
import { PRACTICE_GEAR } from '../../src/gear/practice.ts';
import { type Assembled, assemble } from '../../src/gear/rig.ts';
import type { Exact, Settings } from '../../src/gear/settings.ts';
import { framesOf, type LogFrame } from '../../src/log/frames.ts';
import type { CameraFile } from '../../src/outing/cameraFile.ts';
import type { EventId, MadeId } from '../../src/outing/ids.ts';
import type { Instant } from '../../src/outing/instant.ts';
import type { RunState } from '../../src/outing/state.ts';
import { mulberry32, type Random, seed } from '../../src/science/mulberry32.ts';
import { must } from '../../src/science/refusal.ts';
import { duration, fNumber, iso, pixels, seconds } from '../../src/science/units.ts';
import { A, B, dialled, Evening, frame } from './evening.ts';

/*
 * An evening's log and the cards of its bodies, with the truth of which file is whose: taps that
 * come early and late, clocks that are off and gain, files that are missing and files too many.
 */

/** What an evening is like; everything else is drawn. */
export interface Kind {
  readonly name: string;
  readonly clock: 'near' | 'minutes' | 'hour' | 'day' | 'anything';
  readonly clockFrames: 'none' | 'start' | 'both';
  readonly numbers: 'none' | 'right' | 'one-forgotten';
  /** Whether files say model and serial number. */
  readonly named: boolean;
  /** Shares of frames whose file is gone, and after which something unlogged was shot. */
  readonly missing: number;
  readonly extra: number;
  readonly gainsSPerHour: number;
  readonly writesEnd: boolean;
  readonly cards: 'one' | 'two' | 'raw-and-jpeg';
  readonly otherEvening: boolean;
}

export interface Card {
  readonly run: RunState;
  readonly frames: readonly LogFrame[];
  readonly files: readonly CameraFile[];
  /** By frame: the places of files that are its picture; empty = it is gone. */
  readonly truth: ReadonlyMap<MadeId, readonly number[]>;
  readonly clockFiles: readonly number[];
  /** By rig: the offset of its clock half-way. */
  readonly ahead: ReadonlyMap<RigId, number>;
}

const START_MS = Date.UTC(2027, 1, 12, 17, 30);
const OFFSET_MIN = 60;

const base = (() => {
  const frames = [
    frame('base', A, dialled('6.3', '64', '100')),
    frame('base', B, dialled('8', '60', '100'), { visit: 2 }),
  ];
  const evening = new Evening(frames).setUp().shootAll();
  const state = evening.state();
  const [first] = framesOf(state);
  if (!first) throw new Error('no frame was made');
  return { state, frame: first };
})();

export const between = (random: Random, from: number, to: number): number =>
  from + random() * (to - from);
const pick = <T>(random: Random, from: readonly T[]): T =>
  from[Math.floor(random() * from.length)] as T;
/** Near enough to a normal distribution, and never far out. */
const scatter = (random: Random): number => random() + random() + random() + random() - 2;

const partsOf = (rig: RigId): Assembled => {
  const parts = assemble(PRACTICE_GEAR, rig);
  if (!parts) throw new Error(`no rig ${rig}`);
  return parts;
};

const SETTINGS: readonly (readonly [string, string, string])[] = [
  ['6.3', '1/10', '100'],
  ['8', '1/4', '200'],
  ['8', '0.5', '12800'],
  ['8', '2', '800'],
  ['8', '8', '400'],
  ['11', '1', '100'],
  ['5.6', '4', '200'],
];
const LONG = { [A]: '64', [B]: '60' };

function instantAt(atS: number): Instant {
  const wallMs = START_MS + atS * 1000;
  return { ...base.frame.opened, wallMs, offsetMin: OFFSET_MIN, monoMs: 1000 + atS * 1000 };
}

/** A picture as a body took it. */
interface Shot {
  readonly rig: RigId;
  readonly atS: number;
  readonly exact: Exact;
  readonly made: MadeId | null;
  readonly isClock: boolean;
  readonly gone: boolean;
  readonly number: number;
}

/** How long an evening is: at most, or exactly so many sets by two rigs. */
interface Length {
  readonly sets: number;
  readonly repeats: number;
  readonly exactly?: boolean;
}

export function cardOf(kind: Kind, from: number, most: Length = { sets: 4, repeats: 4 }): Card {
  const random = mulberry32(seed(from));
  const rigs = random() < 0.25 && !most.exactly ? [A] : [A, B];
  const shots: Shot[] = [];
  const frames: LogFrame[] = [];
  const clockFrames: { id: EventId; rig: RigId; at: Instant }[] = [];
  const counter = new Map(rigs.map((rig) => [rig, 1 + Math.floor(random() * 9000)]));
  const forgotten = new Map(rigs.map((rig) => [rig, 0]));
  let atS = 60;
  let tappedS = 0;
  const shoot = (rig: RigId, exact: Exact, made: MadeId | null, more: Partial<Shot> = {}) => {
    const number = counter.get(rig) ?? 1;
    counter.set(rig, number + 1);
    shots.push({ rig, atS, exact, made, isClock: false, gone: false, number, ...more });
  };
  const clockFrame = (): void => {
    for (const rig of rigs) {
      atS = Math.max(atS, tappedS) + between(random, 5, 20);
      const said = atS + scatter(random) * 0.8;
      clockFrames.push({ id: `clock-${rig}-${atS}` as EventId, rig, at: instantAt(said) });
      const exact = { n: fNumber(4), t: seconds(1 / 60), s: iso(400) };
      shoot(rig, exact, null, { isClock: true });
    }
  };
  if (kind.clockFrames !== 'none') clockFrame();
  const sets = most.exactly ? most.sets : 1 + Math.floor(random() * most.sets);
  for (let set = 0; set < sets; set += 1) {
    const repeats = 1 + Math.floor(random() * most.repeats);
    const [f, t, s] = pick(random, SETTINGS);
    const isLong = random() < 0.3;
    const order = random() < 0.5 ? rigs : [...rigs].reverse();
    for (const rig of order) {
      atS += between(random, 40, 120);
      const settings: Settings = dialled(f, isLong ? (LONG[rig as string] ?? t) : t, s);
      for (let repeat = 0; repeat < repeats; repeat += 1) {
        atS += between(random, 3, 25);
        makeFrame(rig, settings);
      }
    }
  }
  if (kind.clockFrames === 'both') clockFrame();
  return developed(kind, random, { shots, frames, clockFrames, rigs });

  /** Unlogged, so that all numbers after it are logged too low; else they were set right again. */
  function forget(rig: RigId, count: number): void {
    if (kind.numbers === 'one-forgotten') forgotten.set(rig, (forgotten.get(rig) ?? 0) + count);
  }

  function makeFrame(rig: RigId, settings: Settings): void {
    const exact = must(exactSettings(partsOf(rig), settings));
    const made = `made-${frames.length}` as MadeId;
    const oneTap = exact.t < 2;
    const extra =
      random() < kind.extra ? pick(random, ['retake', 'test', 'bracket'] as const) : null;
    // Now and then something else was set than was logged.
    const wrong = random() < 0.02 ? pick(random, [2 ** (1 / 3), 2, 0.5]) : 1;
    if (extra === 'test') {
      shoot(rig, { ...exact, t: seconds(exact.t * pick(random, [1, 0.25, 2])) }, null);
      atS += exact.t + between(random, 8, 30);
      forget(rig, 1);
    }
    const logged =
      kind.numbers === 'none' ? null : (counter.get(rig) ?? 1) - (forgotten.get(rig) ?? 0);
    // Not where something unlogged was shot: if log and files tell the same lie, nobody can know.
    const late = extra === null && random() < 0.02 ? between(random, 5, 40) : 0;
    const offS = oneTap ? exact.t + between(random, 0.3, 4) : scatter(random) * 1.5;
    // Taps come in the order of the frames, however late.
    tappedS = Math.max(tappedS + 1, atS + late + offS);
    frames.push({
      ...base.frame,
      id: made,
      planned: { ...base.frame.planned, rig, settings, exact },
      rig,
      settings,
      exact,
      openTime: { from: 'dial', s: exact.t },
      opened: instantAt(tappedS),
      closed: null,
      leadInS: duration(oneTap ? 0 : 2),
      fileNumber: logged,
      fileName: null,
    });
    shoot(rig, { ...exact, t: seconds(exact.t * wrong) }, made, { gone: random() < kind.missing });
    atS += exact.t + between(random, 1, 4);
    if (extra === 'retake' || extra === 'bracket') {
      const steps = extra === 'retake' ? [1] : [0.5, 2];
      for (const step of steps) {
        atS += between(random, extra === 'retake' ? 4 : 1, extra === 'retake' ? 40 : 2);
        shoot(rig, { ...exact, t: seconds(exact.t * step) }, null);
        atS += exact.t * step;
      }
      forget(rig, steps.length);
    }
  }
}

interface Shooting {
  readonly shots: readonly Shot[];
  readonly frames: readonly LogFrame[];
  readonly clockFrames: RunState['clockFrames'];
  readonly rigs: readonly RigId[];
}

const AHEAD: Readonly<Record<Kind['clock'], (random: Random) => number>> = {
  near: (random) => scatter(random) * 15,
  minutes: (random) => between(random, -600, 600),
  hour: (random) => pick(random, [-3600, 3600, 7200]) + scatter(random) * 15,
  day: (random) => pick(random, [-86_400, 86_400, 2 * 86_400]) + scatter(random) * 15,
  anything: (random) => between(random, -2e8, 1e6),
};

/** The files of all shots, in any order. */
function developed(
  kind: Kind,
  random: Random,
  { shots, frames, clockFrames, rigs }: Shooting,
): Card {
  const middleS = (shots.at(-1)?.atS ?? 0) / 2;
  const ahead = new Map(rigs.map((rig) => [rig, AHEAD[kind.clock](random)]));
  const subSecond = random() < 0.5;
  const files: { file: CameraFile; made: MadeId | null; isClock: boolean; stem: number }[] = [];
  const secondCardFrom = kind.cards === 'two' ? (shots.length * random()) | 0 : shots.length;
  // A body counts from the start again on its second card.
  const onCard = new Map<RigId, number>();
  shots.forEach((shot, place) => {
    if (shot.gone) return;
    const { rig, atS, exact } = shot;
    const shownS =
      START_MS / 1000 +
      OFFSET_MIN * 60 +
      atS +
      (ahead.get(rig) ?? 0) +
      (kind.gainsSPerHour * (atS - middleS)) / 3600 +
      (kind.writesEnd ? exact.t : 0);
    const onSecond = place >= secondCardFrom;
    const number = onSecond ? (onCard.get(rig) ?? 0) + 1 : shot.number;
    if (onSecond) onCard.set(rig, number);
    const file = fileOf(rig, exact, shownS, { number, subSecond, named: kind.named });
    files.push({ file, made: shot.made, isClock: shot.isClock, stem: place });
    if (kind.cards === 'raw-and-jpeg') {
      const jpeg = { ...file, name: file.name.replace('DNG', 'JPG'), bytes: 4e6 };
      files.push({ file: jpeg, made: shot.made, isClock: shot.isClock, stem: place });
    }
  });
  if (kind.otherEvening) {
    for (let n = 0; n < 12; n += 1) {
      const shot = pick(random, shots);
      const days = pick(random, [-3, -1, 2, 7]);
      const atS = START_MS / 1000 + 3600 + days * 86_400 + between(random, 0, 9000);
      const look = { number: 100 + n, subSecond, named: kind.named };
      const file = fileOf(shot.rig, shot.exact, atS + (ahead.get(shot.rig) ?? 0), look);
      files.push({ file, made: null, isClock: false, stem: -1 });
    }
  }
  for (let last = files.length - 1; last > 0; last -= 1) {
    const other = Math.floor(random() * (last + 1));
    [files[last], files[other]] = [files[other] as never, files[last] as never];
  }
  const truth = new Map(frames.map(({ id }) => [id, [] as number[]]));
  files.forEach(({ made }, place) => {
    if (made) truth.get(made)?.push(place);
  });
  const plan = { ...base.state.plan, rigs };
  return {
    run: { ...base.state, plan, clockFrames, files: new Map(), startedAt: instantAt(0) },
    frames,
    files: files.map(({ file }) => file),
    truth,
    clockFiles: files.flatMap(({ isClock }, place) => (isClock ? [place] : [])),
    ahead,
  };
}

function fileOf(
  rig: RigId,
  exact: Exact,
  shownS: number,
  look: { readonly number: number; readonly subSecond: boolean; readonly named: boolean },
): CameraFile {
  const { body, lens } = partsOf(rig);
  const { prefix, digits } = body.files;
  const shownMs = look.subSecond ? Math.round(shownS * 100) * 10 : Math.floor(shownS) * 1000;
  // Times below a second are written as a whole part of one, all others to a tenth.
  const t = exact.t < 0.3 ? 1 / Math.round(1 / exact.t) : Math.round(exact.t * 10) / 10;
  return {
    name: `${look.named ? prefix : 'IMG_'}${String(look.number).padStart(look.named ? digits : 4, '0')}.DNG`,
    bytes: 5e7,
    time: { shownMs, offsetMin: null, subSecond: look.subSecond },
    exposureS: seconds(t),
    fNumber: fNumber(Math.round(exact.n * 10) / 10),
    iso: iso(Math.round(exact.s)),
    focalMm: look.named ? lens.focalMm : null,
    make: look.named ? 'Invented' : null,
    model: look.named ? body.name.toUpperCase() : null,
    serial: look.named ? `0${prefix}7` : null,
    lens: null,
    pixelsWide: look.named ? pixels(body.pixelsWide) : null,
    pixelsHigh: look.named ? pixels(body.pixelsHigh) : null,
    temperature: null,
  };
}
