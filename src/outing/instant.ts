import type { SessionId } from './ids.ts';

/**
 * A moment by both clocks of the device.
 *
 * The wall clock says when, but it jumps (network time, time zone, by hand).
 * The steady clock only counts within one page session, and on some systems
 * stands still while the phone sleeps. Keeping both lets a reader tell.
 */
export interface Instant {
  /** Milliseconds since 1970-01-01 UTC. */
  readonly wallMs: number;
  /** Minutes that local time was ahead of UTC. */
  readonly offsetMin: number;
  /** IANA zone of the device. */
  readonly zone: string;
  /** Steady milliseconds since the page session began. */
  readonly monoMs: number;
  readonly session: SessionId;
}
