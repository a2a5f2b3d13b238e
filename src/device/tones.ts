import { type Seconds, seconds } from '../science/units.ts';

/** The moments of an exposure that are told without the screen. */
export type CueKind = 'lead-in' | 'near-end' | 'end';

/** One beep of a cue. */
interface Beep {
  readonly fromS: number;
  readonly lengthS: Seconds;
  readonly hz: number;
}

/*
 * Told apart by count and length first and pitch second, so that wind and old ears
 * do not confuse them: one short, two short, one long that rises. Between 700 and
 * 1500 Hz, where a phone's speaker is loud and ageing ears still hear (common
 * practice, no source).
 */
const BEEPS: Readonly<Record<CueKind, readonly Beep[]>> = {
  'lead-in': [{ fromS: 0, lengthS: seconds(0.08), hz: 880 }],
  'near-end': [
    { fromS: 0, lengthS: seconds(0.1), hz: 740 },
    { fromS: 0.2, lengthS: seconds(0.1), hz: 740 },
  ],
  end: [
    { fromS: 0, lengthS: seconds(0.35), hz: 988 },
    { fromS: 0.35, lengthS: seconds(0.6), hz: 1480 },
  ],
};

/** Below full scale, so that no speaker clips. */
const PEAK = 0.9;
/** Rise and fall of each beep: short to the ear, long enough not to click. */
const EDGE_S = 0.005;

/** How long a cue sounds. */
export const toneLength = (kind: CueKind): Seconds =>
  seconds(Math.max(...BEEPS[kind].map(({ fromS, lengthS }) => fromS + lengthS)));

/**
 * A cue as samples from -1 to 1, one channel. The first beep begins with the first
 * sample.
 *
 * @param sampleRate Samples a second.
 */
export function toneSamples(kind: CueKind, sampleRate: number): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.ceil(toneLength(kind) * sampleRate));
  for (const { fromS, lengthS, hz } of BEEPS[kind]) {
    const first = Math.round(fromS * sampleRate);
    const count = Math.round(lengthS * sampleRate);
    for (let i = 0; i < count && first + i < samples.length; i += 1) {
      const t = i / sampleRate;
      const edge = Math.min(1, t / EDGE_S, (lengthS - t) / EDGE_S);
      samples[first + i] = PEAK * Math.max(0, edge) * Math.sin(2 * Math.PI * hz * t);
    }
  }
  return samples;
}

/**
 * Puts a cue on the audio clock, of a device or of an offline rendering.
 *
 * @param at When it begins, in seconds of the context's clock.
 */
export function placeTone(
  context: BaseAudioContext,
  kind: CueKind,
  at: Seconds,
): AudioBufferSourceNode {
  const samples = toneSamples(kind, context.sampleRate);
  const buffer = context.createBuffer(1, samples.length, context.sampleRate);
  buffer.copyToChannel(samples, 0);
  const source = context.createBufferSource();
  source.buffer = buffer;
  source.connect(context.destination);
  source.start(at);
  return source;
}
