import { mulberry32, type Random, seed } from '../../src/science/mulberry32.ts';

/*
 * The generator of the simulated checks, as they describe it: mulberry32, Box-Muller with the sine
 * left unused (one normal number for two draws), a pixel = offset + K (mu + sqrt(mu + read²) z),
 * row by row, frame after frame, from one stream.
 */

/** A standard normal number for two draws. */
export function normal(random: Random): number {
  const [u, v] = [random(), random()];
  return Math.sqrt(-2 * Math.log(1 - u)) * Math.cos(2 * Math.PI * v);
}

/** The camera of a simulated frame and the light on it. */
export interface Sensor {
  /** Electrons. */
  readonly read: number;
  /** Raw values per electron. */
  readonly gain: number;
  /** Raw values. */
  readonly offset: number;
  readonly rounded: boolean;
}

/** A source of frames from one stream. */
export interface Camera {
  /**
   * The next frame at a mean signal in electrons.
   *
   * @param pattern a factor on each pixel's signal; none = even.
   */
  frame(pixels: number, mu: number, sensor: Sensor, pattern?: Float64Array): Float64Array;
  /** A pattern of factors 1 + spread x z, one for each pixel. */
  pattern(pixels: number, spread: number): Float64Array;
  normals(count: number): Float64Array;
}

/** Frames from a seed. */
export function camera(from: number): Camera {
  const random = mulberry32(seed(from));
  const normals = (count: number) => Float64Array.from({ length: count }, () => normal(random));
  return {
    normals,
    pattern: (pixels, spread) => normals(pixels).map((z) => 1 + spread * z),
    frame: (pixels, mu, { read, gain, offset, rounded }, pattern) =>
      normals(pixels).map((z, index) => {
        const signal = mu * (pattern?.[index] ?? 1);
        const value = offset + gain * (signal + Math.sqrt(signal + read ** 2) * z);
        return rounded ? Math.floor(value + 0.5) : value;
      }),
  };
}

/** The first of two frames with something brighter in some of its rows and columns, both ends in. */
export function withMover(
  frame: Float64Array,
  width: number,
  mover: {
    readonly add: number;
    readonly rows: readonly [number, number];
    readonly columns: readonly [number, number];
  },
): Float64Array {
  const within = (value: number, [from, to]: readonly [number, number]) =>
    value >= from && value <= to;
  return frame.map((value, index) =>
    within(Math.floor(index / width), mover.rows) && within(index % width, mover.columns)
      ? value + mover.add
      : value,
  );
}

/** The mean of 3 x 3 pixels about each, round the edges to the other side. */
export function blurred(values: Float64Array, width: number): Float64Array {
  const height = values.length / width;
  return values.map((_, index) => {
    const [row, column] = [Math.floor(index / width), index % width];
    let sum = 0;
    for (let y = -1; y <= 1; y += 1) {
      for (let x = -1; x <= 1; x += 1) {
        const place = ((row + y + height) % height) * width + ((column + x + width) % width);
        sum += values[place] as number;
      }
    }
    return sum / 9;
  });
}
