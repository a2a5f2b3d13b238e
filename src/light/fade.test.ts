import { describe, expect, test } from 'vitest';
import { CURVED_DUSK, EVEN_DUSK, minutesOn, skyOf } from '../../test/arbitraries/sky.ts';
import { ev, seconds } from '../science/units.ts';
import { fadeAt, fadeBetween, fadeOver, fastestFade } from './fade.ts';
import { fitScene } from './fit.ts';
import type { Exposure } from './forecast.ts';
import type { MeterReading } from './reading.ts';
import { assumedScene, type Scene } from './scene.ts';
import { skyEv } from './skyTable.ts';

const frame = (minutes: number, t: number): Exposure => ({
  startMs: minutesOn(minutes),
  t: seconds(t),
});
const read = (minutes: number, value: number): MeterReading => ({
  at: minutesOn(minutes),
  meter: 'spot meter',
  ev100: ev(value),
});
const metered = (scale: number, minutes: readonly number[]): Scene =>
  fitScene(
    EVEN_DUSK,
    minutes.map((minute) => read(minute, 8 - 0.2 * scale * minute)),
  );
const OFTEN = [0, 5, 10, 15, 20, 25, 30, 35, 40];

describe('the fade of a scene', () => {
  test('is that of its curve, and a scale of the fit scales it', () => {
    expect(fadeAt(assumedScene(EVEN_DUSK), minutesOn(30))).toBeCloseTo(-0.2, 9);
    expect(fadeAt(metered(1.1, OFTEN), minutesOn(20))).toBeCloseTo(-0.22, 2);
    expect(fadeAt(assumedScene(EVEN_DUSK), minutesOn(0))).toBeNull();
  });

  test('is fastest where the curve is steepest', () => {
    const found = fastestFade(assumedScene(CURVED_DUSK), {
      fromMs: minutesOn(0),
      toMs: minutesOn(180),
    });
    // -10 tanh((t - 45)/35) is steepest at minute 45, by 10/35 a minute.
    expect(found?.at).toBe(minutesOn(45));
    expect(found?.rate).toBeCloseTo(-10 / 35, 3);
  });

  test('has no fastest minute where the light only grows', () => {
    const dawn = assumedScene(skyOf((minute) => minute / 10, 60));
    expect(fastestFade(dawn, { fromMs: minutesOn(1), toMs: minutesOn(59) })).toBeNull();
  });
});

describe('the fade between two frames', () => {
  test('lies between their middles where it is even, with elapsed times', () => {
    // Middles at minute 10.5 and 20: 9.5 minutes of 0.2 stop, of equal exposures the means cancel.
    const short = fadeBetween(assumedScene(EVEN_DUSK), frame(10, 60), frame(19.5, 60));
    expect(short?.stops).toBeCloseTo(-1.9, 6);
  });

  test('counts the mean light over a long exposure, not the light at its middle', () => {
    const found = fadeBetween(assumedScene(EVEN_DUSK), frame(10, 1), frame(8, 600));
    // log2(sinh(a)/a) with a = 0.2 x 10 x ln2 / 2: 0.1137; the middle of the long one is minute 13.
    const middles = -0.2 * (13 - (10 + 1 / 120));
    expect(found?.stops).toBeCloseTo(middles + 0.1137, 3);
  });

  test('is the mean that many small steps give on a bent curve', () => {
    const t = 240;
    const steps = Array.from({ length: 2400 }, (_, i) => (i + 0.5) / 10);
    const light = steps.map((s) => 2 ** (skyEv(CURVED_DUSK, minutesOn(40 + s / 60)) ?? Number.NaN));
    const mean = Math.log2(light.reduce((sum, each) => sum + each, 0) / light.length);
    const at20 = skyEv(CURVED_DUSK, minutesOn(20)) ?? Number.NaN;
    const found = fadeBetween(assumedScene(CURVED_DUSK), frame(20, 0.001), frame(40, t));
    expect(found?.stops).toBeCloseTo(mean - at20, 4);
  });

  test('turns its sign with the order of the frames, and adds up', () => {
    const scene = assumedScene(CURVED_DUSK);
    const [a, b, c] = [frame(20, 60), frame(25, 8), frame(40, 200)];
    const between = (x: Exposure, y: Exposure) => fadeBetween(scene, x, y)?.stops ?? Number.NaN;
    expect(between(a, b) + between(b, a)).toBeCloseTo(0, 12);
    expect(between(a, b) + between(b, c)).toBeCloseTo(between(a, c), 12);
  });

  test('is unknown where the sky is', () => {
    expect(fadeBetween(assumedScene(EVEN_DUSK), frame(10, 60), frame(119.5, 60))).toBeNull();
    expect(fadeBetween(assumedScene(EVEN_DUSK), frame(-5, 60), frame(10, 60))).toBeNull();
    expect(fadeOver(assumedScene(EVEN_DUSK), [])).toBeNull();
    expect(
      fadeOver(assumedScene(EVEN_DUSK), [{ reference: [], other: [frame(10, 1)] }]),
    ).toBeNull();
  });
});

describe('how sure a fade is', () => {
  test('without readings: a tenth of it, and the wandering of the sky', () => {
    const found = fadeBetween(assumedScene(EVEN_DUSK), frame(10, 1), frame(15, 1));
    expect(found?.from).toBe('model');
    // 1 stop: 0.1 ⊕ 0.1 sqrt(5/10).
    expect(found?.sigma).toBeCloseTo(Math.hypot(0.1, 0.1 * Math.sqrt(0.5)), 4);
  });

  test('with readings all along: better than the model, and says so', () => {
    const found = fadeBetween(metered(1, OFTEN), frame(10, 1), frame(15, 1));
    expect(found?.from).toBe('readings');
    expect(found?.stops).toBeCloseTo(-1, 1);
    expect(found?.sigma).toBeLessThan(0.09);
    expect(found?.sigma).toBeGreaterThan(0.03);
  });

  test('a single reading tells nothing of a difference, however near it stands', () => {
    const alone = fadeBetween(assumedScene(EVEN_DUSK), frame(10, 1), frame(15, 1));
    for (const minute of [12, 60]) {
      const found = fadeBetween(metered(1, [minute]), frame(10, 1), frame(15, 1));
      expect(found?.stops).toBeCloseTo(-1, 6);
      expect(found?.sigma).toBeCloseTo(alone?.sigma ?? Number.NaN, 9);
    }
  });

  test('readings ten minutes apart leave the wandering between frames that are near each other', () => {
    // The sky wanders over three minutes by 0.1 sqrt(3/10) = 0.055, which no meter can see.
    const found = fadeBetween(metered(1, OFTEN), frame(20, 1), frame(23, 1));
    expect(found?.sigma).toBeGreaterThan(0.03);
    expect(found?.sigma).toBeLessThan(Math.hypot(0.06, 0.055));
  });

  test('what a mirror cancels does not count', () => {
    const scene = assumedScene(EVEN_DUSK);
    const a = [frame(10, 1), frame(19, 1)];
    const b = [frame(13, 1), frame(16, 1)];
    const mirror = fadeOver(scene, [{ reference: a, other: b }]);
    const forward = fadeOver(scene, [{ reference: a.slice(0, 1), other: b.slice(0, 1) }]);
    expect(mirror?.stops).toBeCloseTo(0, 9);
    expect(mirror?.sigma).toBeLessThan((forward?.sigma ?? 0) * 0.9);
    // The wandering over three gaps, of which the outer two stand at half: (3 + 3)/4 minutes.
    expect(mirror?.sigma).toBeCloseTo(0.1 * Math.sqrt(1.5 / 10), 6);
  });

  test('passes are averaged in stops', () => {
    const scene = assumedScene(EVEN_DUSK);
    const found = fadeOver(scene, [
      { reference: [frame(10, 1)], other: [frame(12, 1)] },
      { reference: [frame(20, 1), frame(21, 1)], other: [frame(24.5, 1)] },
    ]);
    expect(found?.stops).toBeCloseTo((-0.4 + -0.8) / 2, 9);
  });

  test('a change of the sky that the readings saw is in the fade of the frames around it', () => {
    const readings = [
      ...[0, 4, 8, 12, 16].map((minute) => read(minute, 8 - 0.2 * minute)),
      ...[20, 24].map((minute) => read(minute, 8 - 0.2 * minute - 1.2)),
    ];
    const scene = fitScene(EVEN_DUSK, readings);
    expect(scene.contradictions.map(({ code }) => code)).toContain('sky-changed');
    const across = fadeBetween(scene, frame(15, 1), frame(21, 1));
    const before = fadeBetween(scene, frame(5, 1), frame(11, 1));
    // Six minutes of 0.2, and most of the change; what the meter's errors may have made of it is left.
    expect(across?.stops).toBeLessThan(-1.2 - 0.8);
    expect(across?.stops).toBeGreaterThan(-1.2 - 1.3);
    expect(Math.abs((across?.stops ?? 9) + 2.4)).toBeLessThan(1.96 * (across?.sigma ?? 0));
    expect(Math.abs((before?.stops ?? 9) + 1.2)).toBeLessThan(0.2);
    expect(across?.sigma).toBeLessThan(0.5);
  });

  test('under lamps there is little fade left, and it is known well', () => {
    const lit = (minute: number): number => Math.log2(2 ** (8 - 0.2 * minute) + 2 ** -1);
    const scene = fitScene(
      EVEN_DUSK,
      [10, 20, 30, 40, 50, 60, 70].map((minute) => read(minute, lit(minute))),
    );
    const found = fadeBetween(scene, frame(62, 1), frame(68, 1));
    expect(found?.stops).toBeCloseTo(lit(68) - lit(62), 1);
    expect(found?.sigma).toBeLessThan(0.1);
  });
});
