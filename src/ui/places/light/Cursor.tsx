import { useRef } from 'preact/hooks';
import type { Stretch } from '../../../light/skyTable.ts';
import { type Ev, later, type UtcMs } from '../../../science/units.ts';
import type { Plot } from './CurveDrawing.tsx';

interface Props {
  readonly view: Stretch;
  readonly at: UtcMs;
  /** Null where the scene is not known. */
  readonly ev: Ev | null;
  readonly scales: Plot;
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
export function Cursor({ view, at, ev, scales, label, said, onMove }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const { fromMs, toMs } = view;
  const to = (wanted: number): void => {
    const bounded = Math.min(Math.max(wanted, fromMs), toMs);
    onMove((Math.round(bounded / MINUTE_MS) * MINUTE_MS) as UtcMs);
  };
  const follow = (event: PointerEvent): void => {
    const { left, width } = (event.currentTarget as HTMLElement).getBoundingClientRect();
    to(fromMs + ((event.clientX - left) / Math.max(1, width)) * (toMs - fromMs));
  };
  const x = scales.x(at) - scales.left;
  return (
    <div
      ref={box}
      class="light-cursor"
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuemin={0}
      aria-valuemax={Math.round((toMs - fromMs) / MINUTE_MS)}
      aria-valuenow={Math.round((at - fromMs) / MINUTE_MS)}
      aria-valuetext={said}
      style={{ left: `${scales.left}px`, width: `${scales.width}px`, height: `${scales.height}px` }}
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
    >
      <svg aria-hidden="true" width={scales.width} height={scales.height}>
        <path class="hair" d={`M${x} 0V${scales.height}`} />
        {ev !== null && <circle class="spot" cx={x} cy={scales.y(ev)} r="6" />}
      </svg>
    </div>
  );
}
