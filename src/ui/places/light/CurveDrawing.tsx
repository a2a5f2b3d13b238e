import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { useApp } from '../../shell/useApp.ts';
import { chartOf, dataOf } from './chart.ts';
import { type Drawn, type Look, type Room, roomAt } from './drawn.ts';

interface Props extends Drawn {
  /** What lies over the plot. */
  readonly children: (chart: uPlot, room: Room) => ComponentChildren;
}

/** The size of the plot on the screen in whole pixels, and the reader's own text size. */
function useBox() {
  const ref = useRef<HTMLDivElement>(null);
  const [box, setBox] = useState({ width: 0, height: 0, text: 14 });
  useLayoutEffect(() => {
    const { current } = ref;
    if (current === null) return;
    const measure = (): void => {
      const { clientWidth: width, clientHeight: height } = current;
      const text = Math.round(Number.parseFloat(getComputedStyle(current).fontSize));
      setBox((before) =>
        before.width === width && before.height === height && before.text === text
          ? before
          : { width, height, text },
      );
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    return () => observer.disconnect();
  }, []);
  return { ref, ...box };
}

function lookOf(element: HTMLElement, text: number): Look {
  const style = getComputedStyle(element);
  const colour = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    ground: colour('ground'),
    ink: colour('ink'),
    line: colour('line'),
    index: colour('index'),
    family: style.fontFamily,
    text,
  };
}

/**
 * The light against the clock, its bands, moon, readings and planned frames, with room for a
 * cursor. Read out by the cursor and the table, so hidden from ears.
 */
export function CurveDrawing({ children, ...drawn }: Props) {
  const { night, scene, points, now, planned, site, clock, words } = drawn;
  const { ref, width, height, text } = useBox();
  const host = useRef<HTMLDivElement>(null);
  const [chart, setChart] = useState<uPlot | null>(null);
  const theme = useApp().theme.value;
  const room = useMemo(() => roomAt(text, planned), [text, planned]);
  // The cursor moves many times a second; what stands still is not drawn again for it. The chart
  // that is ready takes the place of the one before, so that the cursor keeps its focus.
  useLayoutEffect(() => {
    const { current } = host;
    if (current === null || width === 0 || points.length === 0) return;
    const size = { width, height: room.top + height + room.hours + room.tracks };
    const options = chartOf(drawn, lookOf(current, text), room, size, setChart);
    const made = new uPlot(options, dataOf(drawn), current);
    return () => made.destroy();
  }, [night, scene, points, now, site, clock.zone, words.language, width, height, room, theme]);
  return (
    <div
      class="light-drawing"
      style={{ paddingTop: `${room.top}px`, paddingBottom: `${room.hours + room.tracks}px` }}
    >
      <div class="chart" ref={host} aria-hidden="true" />
      <div class="plot" ref={ref}>
        {chart && children(chart, room)}
      </div>
    </div>
  );
}
