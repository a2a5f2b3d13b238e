import { exactSettings, positionsOf } from '../../src/gear/positions.ts';
import type { Assembled } from '../../src/gear/rig.ts';
import type { Exact, Settings } from '../../src/gear/settings.ts';
import type { Dialled } from '../../src/plan/frame.ts';
import { must } from '../../src/science/refusal.ts';
import { later, type Seconds, type Stops, seconds, type UtcMs } from '../../src/science/units.ts';
import type { Going } from './world/hands.ts';

/** What really happened while a shutter was open. */
export interface Opened {
  /** What really stood on the rig; both ways of working note it. */
  readonly settings: Settings;
  readonly openedMs: UtcMs;
  readonly t: Seconds;
  /** log2(t s/n²). */
  readonly exposure: Stops;
}

/** What settings and a time do to a frame, in stops. */
export const exposureOf = ({ n, s }: Exact, t: Seconds): Stops =>
  Math.log2((t * s) / n ** 2) as Stops;

/** The position of the time dial after the one that is meant; the same at its end. */
function oneLonger({ body, lens }: Assembled, settings: Settings): Settings {
  const { times } = must(positionsOf(body, lens));
  const place = times.findIndex(
    ({ mark }) => settings.time.kind === 'dial' && mark === settings.time.mark,
  );
  const next = times[place + 1];
  return next ? { ...settings, time: { kind: 'dial', mark: next.mark } } : settings;
}

/**
 * Opens the shutter of a rig. An overrun is a hand that closes late in bulb, else a time dial that
 * stood a position too long.
 *
 * @param saidMs when it is taken to open.
 */
export function openShutter(
  rig: Assembled,
  { settings, exact }: Dialled,
  saidMs: UtcMs,
  { openLateS, closeLateS, overrunS }: Going,
): Opened {
  const openedMs = later(saidMs, openLateS);
  if (settings.time.kind === 'bulb') {
    const t = seconds(exact.t + (overrunS ?? 0) + closeLateS - openLateS);
    return { settings, openedMs, t, exposure: exposureOf(exact, t) };
  }
  const really = overrunS === null ? settings : oneLonger(rig, settings);
  const { t } = must(exactSettings(rig, really));
  return { settings: really, openedMs, t, exposure: exposureOf(exact, t) };
}
