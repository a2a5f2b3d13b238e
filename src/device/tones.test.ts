import { describe, expect, it } from 'vitest';
import { type CueKind, toneLength, toneSamples } from './tones.ts';

const RATE = 48_000;
/** Enough for the pitch, and a sixteenth of the sums. */
const LOW_RATE = 12_000;
const KINDS: readonly CueKind[] = ['lead-in', 'near-end', 'end'];

/** Stretches of sound, as [from, to] in seconds, parted by at least 50 ms of silence. */
function beeps(samples: Float32Array): [number, number][] {
  const found: [number, number][] = [];
  samples.forEach((value, i) => {
    if (Math.abs(value) < 0.05) return;
    const last = found.at(-1);
    if (last && i / RATE - last[1] < 0.05) last[1] = i / RATE;
    else found.push([i / RATE, i / RATE]);
  });
  return found;
}

/** Strength of one frequency in part of the samples: one term of their Fourier sum. */
function strength(samples: Float32Array, hz: number): number {
  let [re, im] = [0, 0];
  samples.forEach((value, i) => {
    re += value * Math.cos((2 * Math.PI * hz * i) / LOW_RATE);
    im += value * Math.sin((2 * Math.PI * hz * i) / LOW_RATE);
  });
  return (2 * Math.hypot(re, im)) / samples.length;
}

/** The strongest frequency between 200 and 3000 Hz, to 20 Hz. */
function pitch(samples: Float32Array): number {
  let best = 0;
  for (let hz = 200; hz <= 3000; hz += 20)
    if (strength(samples, hz) > strength(samples, best)) best = hz;
  return best;
}

describe('the tones of the cues', () => {
  it.each(KINDS)(
    '%s begins with its first sample, never clips, never clicks, ends in silence',
    (kind) => {
      const samples = toneSamples(kind, RATE);
      expect(samples.length / RATE).toBeCloseTo(toneLength(kind), 3);
      expect(beeps(samples)[0]?.[0]).toBeLessThan(0.003);
      expect(Math.max(...samples.map(Math.abs))).toBeGreaterThan(0.8);
      expect(Math.max(...samples.map(Math.abs))).toBeLessThanOrEqual(0.9);
      expect([samples[0], samples.at(-1)]).toEqual([0, expect.closeTo(0, 2)]);
      // The steepest step of the highest tone at full strength, and a little for the edges.
      const steepest = 2 * Math.PI * (1480 / RATE) * 0.9 * 1.05;
      const steps = samples.map((value, i) => Math.abs(value - (samples[i - 1] ?? 0)));
      expect(Math.max(...steps)).toBeLessThan(steepest);
    },
  );

  it('are told apart by count and length: one short, two short, one long', () => {
    const [leadIn = [], nearEnd = [], end = []] = KINDS.map((kind) =>
      beeps(toneSamples(kind, RATE)).map(([from, to]) => to - from),
    );
    expect([leadIn.length, nearEnd.length, end.length]).toEqual([1, 2, 1]);
    expect(Math.max(...leadIn, ...nearEnd)).toBeLessThan(0.15);
    expect(Math.min(...end)).toBeGreaterThan(0.8);
  });

  it('and by pitch; the end rises', () => {
    const pitches = KINDS.map((kind) =>
      pitch(toneSamples(kind, LOW_RATE).slice(0, 0.08 * LOW_RATE)),
    );
    expect(new Set(pitches).size).toBe(3);
    const end = toneSamples('end', LOW_RATE);
    const [early, later] = [end.slice(0, 0.3 * LOW_RATE), end.slice(0.5 * LOW_RATE)];
    expect(pitch(later)).toBeGreaterThan(pitch(early) * 1.3);
  });

  it('last as long at any sample rate', () => {
    for (const rate of [8000, 44_100, 96_000])
      expect(toneSamples('end', rate).length / rate).toBeCloseTo(toneLength('end'), 3);
  });
});
