import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Planned } from '../../../app/light.ts';
import type { Night } from '../../../light/night.ts';
import type { Scene } from '../../../light/scene.ts';
import type { Site } from '../../../light/site.ts';
import type { Stretch } from '../../../light/skyTable.ts';
import type { UtcMs } from '../../../science/units.ts';
import type { SiteClock } from './clock.ts';
import { type CurvePoint, evRange, type Scales } from './curve.ts';
import { Still } from './Still.tsx';
import { Tracks } from './Tracks.tsx';

/** Where the plot stands in its drawing, in CSS pixels. */
export interface Plot extends Scales {
  /** The ends of its scale, in EV. */
  readonly lowest: number;
  readonly highest: number;
  readonly left: number;
  readonly width: number;
  readonly height: number;
}

interface Props {
  readonly night: Night;
  readonly scene: Scene;
  readonly points: readonly CurvePoint[];
  readonly view: Stretch;
  readonly now: UtcMs;
  readonly planned: Planned | null;
  readonly site: Site;
  readonly clock: SiteClock;
  /** What lies over the plot. */
  readonly children: (plot: Plot) => ComponentChildren;
}

/** The width of the box on the screen, and the reader's own text size. */
function useBox() {
  const ref = useRef<HTMLDivElement>(null);
  const [box, setBox] = useState({ width: 0, height: 0, text: 14 });
  useLayoutEffect(() => {
    const { current } = ref;
    if (current === null) return;
    const measure = (): void => {
      const { width, height } = current.getBoundingClientRect();
      const text = Number.parseFloat(getComputedStyle(current).fontSize);
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

/** The light against the clock, its bands, moon, readings and planned frames, with room for a cursor. */
export function CurveDrawing({ children, ...given }: Props) {
  const { ref, width, height, text } = useBox();
  const { night, scene, points, view, now, planned, site, clock } = given;
  const plot = useMemo((): Plot => {
    const { lowest, highest } = evRange(
      points,
      scene.readings.map(({ ev100 }) => ev100),
    );
    const left = 2.1 * text;
    const plotWidth = Math.max(0, width - left - 0.4 * text);
    return {
      left,
      width: plotWidth,
      height,
      lowest,
      highest,
      x: (at) => left + ((at - view.fromMs) / (view.toMs - view.fromMs)) * plotWidth,
      y: (ev) => ((highest - ev) / Math.max(1, highest - lowest)) * height,
    };
  }, [width, height, text, points, scene, view.fromMs, view.toMs]);
  // The cursor moves many times a second; what stands still is not drawn again for it.
  const still = useMemo(
    () => <Still {...{ night, scene, points, view, now, clock, plot, text }} />,
    [night, scene, points, now, clock, plot],
  );
  const tracks = useMemo(
    () => <Tracks {...{ night, view, planned, site, clock, plot, text }} />,
    [night, planned, site, clock, plot],
  );
  return (
    <div class="light-drawing">
      <div class="plot" ref={ref}>
        {width > 0 && points.length > 0 && (
          <>
            {still}
            {children(plot)}
          </>
        )}
      </div>
      {width > 0 && tracks}
    </div>
  );
}
