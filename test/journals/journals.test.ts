import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readAnyFile } from '../../src/exchange/anyFile.ts';
import { frameRecords } from '../../src/exchange/frameTable.ts';
import { isFault } from '../../src/gear/read.ts';
import { EVENT_VERSION, type OutingEvent } from '../../src/outing/events.ts';
import { fold } from '../../src/outing/fold.ts';
import { inOrder } from '../../src/outing/sequence.ts';
import { EVERY_EVENT } from '../arbitraries/events.ts';

/*
 * Journals as each version of the app wrote them, with the log it read from them.
 * A file here is never edited: it stands for the phones that still hold such
 * journals. When the shape of an event changes, record one more before the change.
 */

interface Recorded {
  readonly name: string;
  readonly text: string;
  readonly versions: ReadonlySet<number>;
  readonly kinds: ReadonlySet<string>;
  readonly frames: readonly Record<string, unknown>[];
}

const recorded = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith('.json'))
  .map((name): Recorded => {
    const text = readFileSync(`${import.meta.dirname}/${name}`, 'utf8');
    const { events, frames } = JSON.parse(text) as {
      events: { v: number; kind: string }[];
      frames: Record<string, unknown>[];
    };
    const versions = new Set(events.map(({ v }) => v));
    return { name, text, versions, kinds: new Set(events.map(({ kind }) => kind)), frames };
  });

function eventsOf(text: string): readonly OutingEvent[] {
  const file = readAnyFile(text);
  if (isFault(file)) throw new Error(`${file.rule} at ${file.path}`);
  return file.content.events;
}

describe.each(recorded)('$name', ({ text, frames }) => {
  it('still gives the log that it gave when it was recorded', () => {
    const run = fold(inOrder(eventsOf(text)));
    if (!run) throw new Error('the outing has not started');
    const now = frameRecords(run);
    expect(frames.length).toBeGreaterThan(0);
    expect(now).toHaveLength(frames.length);
    // A later version may say more of a frame, never anything else.
    for (const [index, frame] of frames.entries()) expect(now[index]).toMatchObject(frame);
  });
});

describe('the recorded journals together', () => {
  it('hold one of every version that was ever shipped', () => {
    const versions = new Set(recorded.flatMap((one) => [...one.versions]));
    const shipped = Array.from({ length: EVENT_VERSION }, (_, index) => index + 1);
    expect([...versions].sort()).toEqual(shipped);
  });

  it('hold every kind of event', () => {
    const kinds = new Set(recorded.flatMap((one) => [...one.kinds]));
    expect([...kinds].sort()).toEqual([...new Set(EVERY_EVENT.map(({ kind }) => kind))].sort());
  });
});
