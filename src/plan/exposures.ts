import type { RigId } from '../gear/ids.ts';
import type { Exposure } from '../light/forecast.ts';
import { later, type UtcMs } from '../science/units.ts';
import type { SetId } from './ids.ts';
import type { Prepared } from './prepare.ts';

/** One rig's frames of a set in one pass, as they fall if the list starts at an instant. */
export const exposuresOf = (
  { frames, timeline }: Prepared,
  startMs: UtcMs,
  set: SetId,
  rig: RigId,
  pass: number,
): readonly Exposure[] =>
  frames.flatMap((frame, place) => {
    const times = timeline.frames[place];
    return times && frame.set === set && frame.rig === rig && frame.pass === pass
      ? [{ startMs: later(startMs, times.startS), t: frame.exact.t }]
      : [];
  });
