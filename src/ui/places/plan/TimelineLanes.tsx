import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { offsetAt } from '../../../light/zones.ts';
import type { FrameKey } from '../../../plan/ids.ts';
import { later, type Seconds } from '../../../science/units.ts';
import { Icon } from '../../parts/Icon.tsx';
import { RigSign } from '../../parts/RigSign.tsx';
import { useHeatWords } from '../../words/planHeat.ts';
import { FrameFigures } from './FrameFigures.tsx';
import { evRange, LaneDrawing, laneSizes } from './LaneDrawing.tsx';
import { LaneLegend } from './LaneLegend.tsx';
import { axisTicks, laneActs, lightUnder, nearestFrame } from './lanes.ts';
import { siteTime } from './siteTime.ts';
import { TimelineTable } from './TimelineTable.tsx';
import './timeline.css';
import type { PlanView } from './usePlanView.ts';

/** How much closer than the whole list: each step doubles. */
const CLOSEST = 16;

/** The width of the box on the screen and the reader's own text size, in whole px. */
function useBox() {
  const ref = useRef<HTMLDivElement>(null);
  const [box, setBox] = useState({ width: 0, text: 14 });
  useLayoutEffect(() => {
    const { current } = ref;
    if (current === null) return;
    const measure = () => {
      const width = current.clientWidth;
      const text = Math.round(Number.parseFloat(getComputedStyle(current).fontSize));
      setBox((before) =>
        before.width === width && before.text === text ? before : { width, text },
      );
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    return () => observer.disconnect();
  }, []);
  return { ref, ...box };
}

/**
 * The course of a list: a lane for each rig, the light beneath, the clock below. One frame is chosen,
 * by a tap or by keys as the ARIA slider that it is, and its figures stand under the lanes.
 */
export function TimelineLanes({ view }: { readonly view: PlanView }) {
  const words = useHeatWords();
  const { heat: say, format } = words;
  const { plan, prepared, inLight, heat } = view;
  const { frames, timeline } = prepared;
  const { ref, width: room, text } = useBox();
  const [times, setTimes] = useState(1);
  const [wanted, setWanted] = useState<FrameKey | null>(null);
  const start = inLight.how === 'ready' ? { ...inLight.light, site: inLight.site } : null;
  const scene = inLight.how === 'ready' ? inLight.evening.scene : null;
  const acts = useMemo(() => laneActs(plan, prepared), [plan, prepared]);
  const light = useMemo(
    () => (scene && start ? lightUnder(scene, start.startMs, timeline.wallS) : null),
    [scene, start?.startMs, timeline.wallS],
  );
  const at = Math.max(
    0,
    frames.findIndex(({ key }) => key === wanted),
  );
  const chosen = timeline.frames[at];

  const sizes = laneSizes(text);
  const { pad } = sizes;
  const width = room * times;
  const x = (seconds: Seconds) => pad + ((width - 2 * pad) * seconds) / Math.max(1, timeline.wallS);
  const y = (lane: number) => sizes.mark + 2 + lane * (sizes.lane + sizes.gap);
  const rigs = plan.rigs.filter((rig) => heat.courses.has(rig));

  // The chosen frame stays in sight when it is chosen by keys and when the lanes come closer.
  useLayoutEffect(() => {
    const { current } = ref;
    if (current === null || !chosen || times === 1) return;
    const middle = x(chosen.midS);
    const { scrollLeft, clientWidth } = current;
    if (middle < scrollLeft + clientWidth * 0.1 || middle > scrollLeft + clientWidth * 0.9) {
      current.scrollLeft = middle - clientWidth / 2;
    }
  }, [chosen?.key, times, room]);

  if (!chosen) return null;
  const choose = (index: number) => {
    const to = frames[Math.min(Math.max(index, 0), frames.length - 1)];
    if (to) setWanted(to.key);
  };
  const tap = (event: MouseEvent) => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const seconds = (((event.clientX - box.left - pad) / (width - 2 * pad)) *
      timeline.wallS) as Seconds;
    const lane =
      rigs[Math.floor((event.clientY - box.top - sizes.mark) / (sizes.lane + sizes.gap))];
    const inLane = acts.filter(({ rig }) => lane === undefined || rig === lane);
    const key = nearestFrame(inLane, seconds);
    if (key !== null) setWanted(key);
  };
  const keyed = (event: KeyboardEvent) => {
    const to = KEYS[event.key]?.(at, frames.length);
    if (to === undefined) return;
    event.preventDefault();
    choose(to);
  };
  const clock = start && {
    startMs: start.startMs,
    offsetMin: offsetAt(start.site.zone, start.startMs),
  };
  const ticks = axisTicks(timeline.wallS, width - 2 * pad, text * 3.9, clock).map((atS) => ({
    atS,
    says: start
      ? siteTime(words, start.site, later(start.startMs, atS))
      : format.number(atS / 60, 0),
  }));
  const top = Math.max(
    0.25,
    ...[...heat.courses.values()].flatMap((course) => course.map((point) => point.heat)),
  );
  const evs = light && evRange(light);

  return (
    <figure class="timeline" aria-label={say.lanes}>
      <div class="timeline-chart" style={{ fontSize: 'var(--t-bar)' }}>
        <div class="gutter" aria-hidden="true" style={{ paddingTop: `${sizes.mark + 2}px` }}>
          {rigs.map((rig) => {
            const assembled = view.rig(rig);
            return (
              <div
                key={rig}
                class="of-lane"
                style={{ height: `${sizes.lane}px`, marginBottom: `${sizes.gap}px` }}
              >
                {assembled && <RigSign letter={assembled.rig.letter} />}
              </div>
            );
          })}
          {evs && (
            <div class="of-light" style={{ height: `${sizes.light}px` }}>
              <span>{format.number(evs.highest, 0)}</span>
              <span>EV</span>
              <span>{format.number(evs.lowest, 0)}</span>
            </div>
          )}
        </div>
        <div class="lanes-box" ref={ref}>
          {room > 0 && (
            <div
              class="lanes-cursor"
              role="slider"
              tabIndex={0}
              aria-label={say.frame}
              aria-valuemin={1}
              aria-valuemax={frames.length}
              aria-valuenow={at + 1}
              aria-valuetext={say.frameOf(at + 1, frames.length)}
              aria-describedby={FIGURES}
              style={{ width: `${width}px` }}
              onClick={tap}
              onKeyDown={keyed}
            >
              <LaneDrawing
                rigs={rigs}
                acts={acts}
                courses={heat.courses}
                top={top}
                light={light}
                ticks={ticks}
                chosen={chosen}
                sizes={sizes}
                width={width}
                x={x}
                y={y}
              />
            </div>
          )}
        </div>
      </div>
      <p class="hint">
        {start ? say.axisClock(start.site.name) : say.axisMinutes}.
        {!light && ` ${inLight.how === 'computing' ? say.lightComputing : say.lightUnknown}`}
      </p>
      <div class="timeline-acts">
        <StepButton name={say.before} icon="back" off={at === 0} onPress={() => choose(at - 1)} />
        <span class="place">{say.frameOf(at + 1, frames.length)}</span>
        <StepButton
          name={say.after}
          icon="onward"
          off={at === frames.length - 1}
          onPress={() => choose(at + 1)}
        />
        <span class="closer">
          <StepButton
            name={say.wider}
            icon="minus"
            off={times === 1}
            onPress={() => setTimes(times / 2)}
          />
          <StepButton
            name={say.closer}
            icon="plus"
            off={times === CLOSEST}
            onPress={() => setTimes(times * 2)}
          />
        </span>
      </div>
      <div id={FIGURES} aria-live="polite">
        <FrameFigures view={view} at={at} />
      </div>
      <LaneLegend acts={acts} top={top} hasLight={light !== null} />
      <TimelineTable view={view} acts={acts} />
    </figure>
  );
}

/** The figures under the lanes; there is one timeline on a screen. */
const FIGURES = 'timeline-figures';

/** Where a key goes from a frame. */
const KEYS: Readonly<Record<string, (at: number, count: number) => number>> = {
  ArrowRight: (at) => at + 1,
  ArrowUp: (at) => at + 1,
  ArrowLeft: (at) => at - 1,
  ArrowDown: (at) => at - 1,
  PageUp: (at) => at + 5,
  PageDown: (at) => at - 5,
  Home: () => 0,
  End: (_, count) => count - 1,
};

const StepButton = ({
  name,
  icon,
  off,
  onPress,
}: {
  readonly name: string;
  readonly icon: 'back' | 'onward' | 'minus' | 'plus';
  readonly off: boolean;
  readonly onPress: () => void;
}) => (
  <button type="button" class="icon-button" aria-label={name} disabled={off} onClick={onPress}>
    <Icon name={icon} />
  </button>
);
