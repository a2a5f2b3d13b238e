import { useLayoutEffect } from 'preact/hooks';
import type uPlot from 'uplot';
import type { Stretch } from '../../../light/skyTable.ts';
import { later, type UtcMs } from '../../../science/units.ts';
import type { Room } from './drawn.ts';

interface Props {
  readonly chart: uPlot;
  readonly room: Room;
  readonly view: Stretch;
  readonly at: UtcMs;
  readonly label: string;
  readonly said: string;
  readonly onMove: (at: UtcMs) => void;
}

const MINUTE_MS = 60_000;
/** Minutes that a key moves the cursor. */
const KEYS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
};

/** The instant that is read off: moved by a finger, a mouse or the keys, as the ARIA slider it is. */
export function Cursor({ chart, room, view, at, label, said, onMove }: Props) {
  const { fromMs, toMs } = view;
  const to = (wanted: number): void => {
    const bounded = Math.min(Math.max(wanted, fromMs), toMs);
    onMove((Math.round(bounded / MINUTE_MS) * MINUTE_MS) as UtcMs);
  };
  const follow = (event: PointerEvent): void => {
    const { left } = (event.currentTarget as HTMLElement).getBoundingClientRect();
    to(chart.posToVal(event.clientX - left, 'x'));
  };
  useLayoutEffect(() => {
    // A whole minute may lie just outside of the plot, where the chart would hide it.
    const onPlot = Math.min(Math.max(at, fromMs), toMs);
    chart.setCursor({ left: chart.valToPos(onPlot, 'x'), top: 0 });
  }, [chart, at]);
  return (
    <div
      class="light-cursor"
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuemin={0}
      aria-valuemax={Math.round((toMs - fromMs) / MINUTE_MS)}
      aria-valuenow={Math.round((at - fromMs) / MINUTE_MS)}
      aria-valuetext={said}
      style={{ left: `${room.left}px`, right: `${room.right}px` }}
      onPointerDown={(event) => {
        (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
        follow(event);
      }}
      onPointerMove={(event) => {
        if (event.buttons > 0) follow(event);
      }}
      onKeyDown={(event) => {
        const minutes = KEYS[event.key];
        if (minutes === undefined) return;
        event.preventDefault();
        to(later(at, minutes * 60));
      }}
    />
  );
}
