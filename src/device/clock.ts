/** A moment by both clocks of the device; the journal's Instant has the same fields. */
export interface Moment<Session extends string> {
  /** Milliseconds since 1970-01-01 UTC. It jumps when the clock is set. */
  readonly wallMs: number;
  /** Minutes that local time is ahead of UTC. */
  readonly offsetMin: number;
  /** IANA zone of the device. */
  readonly zone: string;
  /** Steady milliseconds since the page was loaded; may stand still while the phone sleeps. */
  readonly monoMs: number;
  /** The page load that `monoMs` counts from. */
  readonly session: Session;
}

/** The only source of time in the app. */
export interface Clock<Session extends string = string> {
  now(): Moment<Session>;
}

/** What a browser may lack. */
interface MaybeThere {
  readonly Temporal?: { readonly Now: { timeZoneId(): string } };
}

/** Asked anew each time: the phone changes its zone when it crosses a border. */
function zoneNow(): string {
  const { Temporal } = globalThis as MaybeThere;
  // The first DateTimeFormat reads tables of the whole world: 25 ms of a start, on a slow phone 100.
  return Temporal?.Now.timeZoneId() ?? new Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** The device's clocks; `session` is a fresh id for this load of the page. */
export function systemClock<Session extends string>(session: Session): Clock<Session> {
  return {
    now() {
      const date = new Date();
      return {
        wallMs: date.getTime(),
        // Positive zero in UTC: -0 would not survive a file.
        offsetMin: 0 - date.getTimezoneOffset(),
        zone: zoneNow(),
        monoMs: performance.now(),
        session,
      };
    },
  };
}
