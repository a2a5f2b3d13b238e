import { describe, expect, it } from 'vitest';
import { A, B, Evening, refusedFor, twoSets } from '../../test/evenings/evening.ts';
import { SILENT_FILE } from '../../test/pictures/silentFile.ts';
import type { RigId } from '../gear/ids.ts';
import type { SetId } from '../plan/ids.ts';
import { duration, type Seconds, seconds, stops } from '../science/units.ts';
import type { BodyClock, CameraFile, EvenedUp } from './cameraFile.ts';
import type { MadeId } from './ids.ts';

/* What is said of pictures after an outing: each act is an event, the newest holds, undo takes it back. */

const file = (name: string): CameraFile => ({ ...SILENT_FILE, name, exposureS: seconds(64) });

const clock = (rig: RigId, aheadS: number): BodyClock => ({
  rig,
  aheadS: aheadS as Seconds,
  sigmaS: duration(1),
  gainsSPerHour: duration(0),
  atMs: 0,
  from: 'sequence',
});

const needed = (set: string, rig: RigId, by: number, pass: number | null = null): EvenedUp => ({
  set: set as SetId,
  rig,
  pass,
  needed: { stops: stops(by), sigma: null, by: 'typed' },
});

const nobody = 'nobody' as RigId;
const ended = () => new Evening(twoSets()).setUp().shootAll().tap({ tap: 'end' });
const ids = (evening: Evening): readonly MadeId[] => evening.state().made.map(({ id }) => id);
const nameOf = (evening: Evening, made: MadeId) => evening.state().files.get(made)?.name;

describe('a clock frame', () => {
  it('is kept with its rig and instant, before, during and after the frames', () => {
    const evening = new Evening(twoSets());
    const before = evening.now();
    evening.tap({ tap: 'clock-framed', rig: A }).setUp().tap({ tap: 'clock-framed', rig: B });
    evening.shootAll().tap({ tap: 'end' }).tap({ tap: 'clock-framed', rig: A });
    const { clockFrames } = evening.state();
    expect(clockFrames.map(({ rig }) => rig)).toEqual([A, B, A]);
    expect(clockFrames[0]?.at).toEqual(before);
  });

  // Seen to fail with the question after the rig taken out of `next`.
  it('is of a rig of the plan', () => {
    expect(refusedFor(new Evening(twoSets()).try({ tap: 'clock-framed', rig: nobody }))).toBe(
      'no-such-rig',
    );
  });

  it('neither moves the file counter nor asks for another step', () => {
    const evening = new Evening(twoSets()).setUp().tap({ tap: 'set-counter', rig: A, next: 41 });
    const step = evening.step();
    evening.tap({ tap: 'clock-framed', rig: A });
    expect(evening.state().rigs.get(A)?.nextFile).toBe(41);
    expect(evening.step()).toEqual(step);
  });
});

describe('matched files', () => {
  // Seen to fail with the newest no longer overwriting in the fold.
  it('hold until a newer one is said of the same frame, also that it has none', () => {
    const evening = ended();
    const [first, second] = ids(evening) as [MadeId, MadeId];
    const files = [
      { made: first, file: file('one') },
      { made: second, file: file('two') },
    ];
    evening.tap({ tap: 'match-files', files, clocks: [clock(A, 5), clock(B, -3)] });
    evening.tap({
      tap: 'match-files',
      files: [{ made: first, file: file('three') }],
      clocks: [clock(A, 6)],
    });
    evening.tap({ tap: 'match-files', files: [{ made: second, file: null }], clocks: [] });
    expect(nameOf(evening, first)).toBe('three');
    expect(evening.state().files.get(second)).toBeNull();
    expect(evening.state().clocks.get(A)?.aheadS).toBe(6);
    expect(evening.state().clocks.get(B)?.aheadS).toBe(-3);
    evening.undo();
    expect(nameOf(evening, second)).toBe('two');
    evening.undo();
    expect(nameOf(evening, first)).toBe('one');
    expect(evening.state().clocks.get(A)?.aheadS).toBe(5);
    evening.undo();
    expect(evening.state().files.size + evening.state().clocks.size).toBe(0);
  });

  it('are refused whole for a frame or a rig that is not there, and where they say nothing', () => {
    const evening = ended();
    const [first] = ids(evening) as [MadeId];
    const match = (made: MadeId, rig: RigId) =>
      evening.try({
        tap: 'match-files',
        files: [
          { made: first, file: file('one') },
          { made, file: file('two') },
        ],
        clocks: [clock(rig, 1)],
      });
    expect(refusedFor(match('nothing' as MadeId, A))).toBe('no-such-frame');
    expect(refusedFor(match(first, nobody))).toBe('no-such-rig');
    expect(refusedFor(match(first, A))).toBeNull();
    const nothing = evening.try({ tap: 'match-files', files: [], clocks: [] });
    expect(refusedFor(nothing)).toBe('nothing-to-match');
  });
});

describe('values taken from files', () => {
  it('are corrections that one undo takes back together', () => {
    const evening = ended();
    const [first, second] = ids(evening) as [MadeId, MadeId];
    evening.tap({
      tap: 'take-values',
      changes: [
        { frame: first, field: 'isoMark', value: '125' },
        { frame: second, field: 'elapsedS', value: seconds(64) },
      ],
    });
    expect(evening.state().corrections.map(({ made, change }) => [made, change])).toEqual([
      [first, { field: 'isoMark', value: '125' }],
      [second, { field: 'elapsedS', value: 64 }],
    ]);
    expect(evening.undo().state().corrections).toEqual([]);
  });

  it('are refused whole for a frame that is not there, and where there are none', () => {
    const evening = ended();
    const [first] = ids(evening) as [MadeId];
    const take = (...frames: readonly MadeId[]) =>
      refusedFor(
        evening.try({
          tap: 'take-values',
          changes: frames.map((frame) => ({ frame, field: 'isoMark', value: '125' })),
        }),
      );
    expect(take(first, 'nothing' as MadeId)).toBe('no-such-frame');
    expect(take()).toBe('nothing-to-take');
    expect(take(first)).toBeNull();
  });
});

describe('the even-up as it was needed', () => {
  it('is kept by rig, set and pass, and can be taken back', () => {
    const evening = ended();
    evening.tap({ tap: 'even-up', found: needed('base', B, 0.8) });
    evening.tap({ tap: 'even-up', found: needed('base', B, 0.7, 1) });
    evening.tap({ tap: 'even-up', found: needed('base', B, 0.75) });
    const kept = () => evening.state().evenedUp.map((one) => [one.pass, one.needed?.stops]);
    expect(kept()).toEqual([
      [null, 0.75],
      [1, 0.7],
    ]);
    evening.tap({ tap: 'even-up', found: { ...needed('base', B, 0), needed: null } });
    expect(kept()).toEqual([[1, 0.7]]);
    evening.undo();
    expect(kept()).toHaveLength(2);
  });

  // Seen to fail with any of the three questions taken out of `next`.
  it('is of another rig of a set against its reference', () => {
    const evening = ended();
    const even = (set: string, rig: RigId) =>
      refusedFor(evening.try({ tap: 'even-up', found: needed(set, rig, 1) }));
    expect(even('nowhere', B)).toBe('no-such-pair');
    expect(even('base', nobody)).toBe('no-such-pair');
    expect(even('base', A)).toBe('no-such-pair');
    // There B is the reference.
    expect(even('high', A)).toBeNull();
  });
});
