import { expect, it } from 'vitest';
import { type Card, cardOf, type Kind } from '../../../test/evenings/card.ts';
import type { RigId } from '../../gear/ids.ts';
import type { MadeId } from '../../outing/ids.ts';
import { matchFiles } from './matchFiles.ts';
import { type Ask, type Decided, type Matching, NOTHING_DECIDED } from './types.ts';

const PLAIN: Kind = {
  name: 'plain',
  clock: 'near',
  clockFrames: 'start',
  numbers: 'right',
  named: true,
  missing: 0,
  extra: 0,
  gainsSPerHour: 0,
  writesEnd: false,
  cards: 'one',
  otherEvening: false,
};

const match = (card: Card, decided?: Decided): Matching =>
  matchFiles(card.run, card.frames, card.files, decided);

const seeds = (count: number): readonly number[] => Array.from({ length: count }, (_, n) => n + 1);

/** What somebody who was there says to a question. */
function truly(
  { truth, frames, ahead }: Card,
  ask: Ask,
  { groups }: Matching,
  so: Decided,
): Decided {
  if (ask.ask === 'which-file') {
    const file = truth.get(ask.made)?.[0] ?? null;
    return { ...so, files: new Map(so.files).set(ask.made, file) };
  }
  if (ask.ask === 'which-clock') {
    const off = (s: number): number => Math.abs(s - (ahead.get(ask.rig) ?? 0));
    const [best] = [...ask.choices].sort((a, b) => off(a.clock.aheadS) - off(b.clock.aheadS));
    return best ? { ...so, clocks: new Map(so.clocks).set(ask.rig, best.clock) } : so;
  }
  const files = new Set(groups.find(({ key }) => key === ask.group)?.files);
  const rigs = new Map<RigId, number>();
  for (const { id, rig } of frames) {
    if (truth.get(id)?.some((file) => files.has(file))) rigs.set(rig, (rigs.get(rig) ?? 0) + 1);
  }
  const [most] = [...rigs].sort((a, b) => b[1] - a[1]);
  return { ...so, rigs: new Map(so.rigs).set(ask.group, most?.[0] ?? null) };
}

// Seen to fail with decided files left out of what is said: it asked the same for ever.
it('comes to the truth in as many questions as there are frames at most, truly answered', () => {
  let asked = 0;
  for (const seed of seeds(60)) {
    const kind: Kind = {
      ...PLAIN,
      clock: 'anything',
      clockFrames: 'none',
      missing: 0.1,
      extra: 0.15,
    };
    const card = cardOf({ ...kind, numbers: 'none' }, seed);
    let decided = NOTHING_DECIDED;
    let found = match(card, decided);
    for (let n = 0; found.asks.length > 0; n += 1) {
      expect(n, `evening ${seed}`).toBeLessThan(card.frames.length + 4);
      const [ask] = found.asks;
      if (!ask) break;
      decided = truly(card, ask, found, decided);
      found = match(card, decided);
      asked += 1;
    }
    for (const { made, file } of found.frames) {
      const files = card.truth.get(made) ?? [];
      expect(files.length === 0 ? file : files.includes(file ?? -1), `evening ${seed}`).toBe(
        files.length === 0 ? null : true,
      );
    }
  }
  expect(asked).toBeGreaterThan(20);
});

// Seen to fail with accepted files matched anew, and with one of them left to another frame as well.
it('lets stand what was accepted before', () => {
  const card = cardOf(PLAIN, 5);
  const [first, second, third] = card.frames;
  const place = third ? (card.truth.get(third.id)?.[0] ?? -1) : -1;
  const file = card.files[place];
  if (!first || !second || !file) throw new Error('this evening has too few frames');
  const elsewhere = { ...file, name: 'ALD_9999.DNG' };
  const files = new Map([
    [first.id, file],
    [second.id, elsewhere],
  ]);
  const { frames } = matchFiles({ ...card.run, files }, card.frames, card.files);
  expect(frames.slice(0, 2)).toEqual([
    { made: first.id, file: place, sure: true, said: true, others: [] },
    { made: second.id, file: null, sure: true, said: true, others: [] },
  ]);
  expect(frames.slice(2).map((each) => each.file)).not.toContain(place);
});

// Seen to fail with decided rigs left out.
it('gives no frame a file of a group that is said to be of nobody here', () => {
  const card = cardOf(PLAIN, 5);
  const rigs = new Map(match(card).groups.map(({ key }) => [key, null]));
  const { frames, asks } = match(card, { ...NOTHING_DECIDED, rigs });
  expect(frames.every(({ file }) => file === null)).toBe(true);
  expect(asks.filter(({ ask }) => ask === 'which-rig')).toEqual([]);
});

// Seen to fail with copies matched as pictures of their own, and with clock frames left out.
it('knows clock frames, and a raw and its JPEG as one picture', () => {
  for (const seed of seeds(20)) {
    const card = cardOf({ ...PLAIN, clockFrames: 'both', cards: 'raw-and-jpeg' }, seed);
    const { left } = match(card);
    const isJpeg = (file: number): boolean => card.files[file]?.name.endsWith('JPG') ?? false;
    const copies = left.filter(({ kind }) => kind === 'copy');
    expect(copies.map(({ file }) => file)).toEqual([...card.files.keys()].filter(isJpeg));
    expect(
      copies.every(
        ({ file, copyOf }) =>
          card.files[copyOf ?? -1]?.name === card.files[file]?.name.replace('JPG', 'DNG'),
      ),
    ).toBe(true);
    const clocks = left.filter(({ kind }) => kind === 'clock-frame').map(({ file }) => file);
    expect(clocks).toEqual(card.clockFiles.filter((file) => !isJpeg(file)));
  }
});

// Seen to fail with the end of an exposure taken for its start.
it('finds how far a clock is ahead, within four of its sigmas', () => {
  for (const seed of seeds(40)) {
    for (const writesEnd of [false, true]) {
      const kind: Kind = {
        ...PLAIN,
        clock: 'hour',
        clockFrames: 'both',
        gainsSPerHour: 3,
        writesEnd,
      };
      const card = cardOf(kind, seed);
      for (const { rig, aheadS, sigmaS, from } of match(card).clocks) {
        expect(from).toBe('clock-frame');
        expect(Math.abs(aheadS - (card.ahead.get(rig) ?? 0)) / sigmaS).toBeLessThan(4);
      }
    }
  }
});

// Seen to fail with files of no time left out of the pairing.
it('matches files that say no time by their numbers and exposures', () => {
  const card = cardOf({ ...PLAIN, clockFrames: 'none' }, 4);
  const files = card.files.map((file) => ({ ...file, time: null }));
  const { frames, untimed, clocks } = matchFiles(card.run, card.frames, files);
  const right = frames.filter(({ made, file }) =>
    card.truth.get(made as MadeId)?.includes(file ?? -1),
  );
  expect(right.length).toBe(frames.length);
  expect(clocks).toEqual([]);
  expect(untimed).toEqual([]);
});
