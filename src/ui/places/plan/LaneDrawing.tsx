import { useId } from 'preact/hooks';
import type { RigId } from '../../../gear/ids.ts';
import type { FrameKey } from '../../../plan/ids.ts';
import type { HeatPoint } from '../../../plan/planHeat.ts';
import type { Seconds } from '../../../science/units.ts';
import type { LaneAct, LightPoint } from './lanes.ts';

/** Heights of the drawing in px, from the reader's own text size. */
export interface LaneSizes {
  readonly text: number;
  /** Before the first and after the last instant: half of what stands at a tick. */
  readonly pad: number;
  readonly mark: number;
  readonly lane: number;
  readonly gap: number;
  readonly light: number;
  readonly axis: number;
}

export const laneSizes = (text: number): LaneSizes => ({
  text,
  pad: Math.round(text * 1.45),
  mark: Math.round(text * 0.7),
  lane: Math.round(text * 3.4),
  gap: Math.round(text * 0.6),
  light: Math.round(text * 5),
  axis: Math.round(text * 1.7),
});

interface Props {
  readonly rigs: readonly RigId[];
  readonly acts: readonly LaneAct[];
  readonly courses: ReadonlyMap<RigId, readonly HeatPoint[]>;
  /** The heat at the top of a lane. */
  readonly top: number;
  readonly light: readonly LightPoint[] | null;
  readonly ticks: readonly { readonly atS: Seconds; readonly says: string }[];
  readonly chosen: { readonly key: FrameKey; readonly midS: Seconds };
  readonly sizes: LaneSizes;
  readonly width: number;
  /** Where an instant stands. */
  readonly x: (at: Seconds) => number;
  /** Where a lane begins. */
  readonly y: (lane: number) => number;
}

const path = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

/**
 * The lanes of a timeline with the light beneath. Each act has a shape of its own; nothing is told by
 * colour alone. Read out by the slider over it and by the table, so hidden from ears.
 */
export function LaneDrawing(props: Props) {
  const { rigs, acts, courses, top, light, ticks, chosen, sizes, width, x, y } = props;
  const hatch = useId();
  const lightFrom = y(rigs.length);
  const foot = lightFrom + (light ? sizes.light : 0);
  const bar = Math.round(sizes.text * 1.3);
  return (
    <svg class="lanes" width={width} height={foot + sizes.axis} aria-hidden="true">
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse">
          <path class="hatch" d="M-1 6L6 -1M-1 1L1 -1M4 6L6 4" />
        </pattern>
      </defs>
      {ticks.map(({ atS, says }) => (
        <g key={atS}>
          <path class="grid" d={`M${x(atS).toFixed(1)} ${sizes.mark}V${foot + 4}`} />
          <text x={x(atS)} y={foot + sizes.axis - 3} text-anchor="middle">
            {says}
          </text>
        </g>
      ))}
      {rigs.map((rig, lane) => {
        const base = y(lane) + sizes.lane;
        const room = sizes.lane - bar - 4;
        const course = courses.get(rig) ?? [];
        return (
          <g key={rig}>
            <path class="base" d={`M0 ${base + 0.5}H${width}`} />
            <path
              class="heat"
              d={path(
                course.map(({ atS, heat }) => [x(atS), base - bar - 2 - (room * heat) / top]),
              )}
            />
            {acts
              .filter((act) => act.rig === rig)
              .map((act) => (
                <Act
                  key={`${act.act} ${act.fromS}`}
                  act={act}
                  from={x(act.fromS)}
                  to={x(act.toS)}
                  base={base}
                  bar={bar}
                  hatch={hatch}
                  isChosen={act.frame === chosen.key && act.act !== 'own-dark'}
                />
              ))}
          </g>
        );
      })}
      {light && <LightCurve points={light} from={lightFrom} height={sizes.light} x={x} />}
      <path class="base" d={`M0 ${foot + 0.5}H${width}`} />
      <Marker at={x(chosen.midS)} size={sizes.mark} foot={foot} />
    </svg>
  );
}

interface ActProps {
  readonly act: Pick<LaneAct, 'act'>;
  readonly from: number;
  readonly to: number;
  /** The line that it stands on. */
  readonly base: number;
  readonly bar: number;
  readonly hatch: string;
  readonly isChosen: boolean;
}

/** One act in its own shape; also drawn beside its word. */
export function Act({ act: { act }, from, to, base, bar, hatch, isChosen }: ActProps) {
  const width = Math.max(to - from, 1.5);
  const box = { x: from, y: base - bar, width, height: bar };
  const inner = {
    x: from + 0.75,
    y: base - bar + 0.75,
    width: Math.max(width - 1.5, 0.5),
    height: bar - 1.5,
  };
  return (
    <>
      {act === 'exposure' && <rect class="exposure" {...box} />}
      {act === 'capped' && (
        <>
          <rect class="outlined" {...inner} />
          <rect class="exposure" {...box} height={Math.max(4, bar * 0.3)} />
        </>
      )}
      {act === 'own-dark' && <rect class="outlined" {...inner} fill={`url(#${hatch})`} />}
      {act === 'rest' && (
        <path
          class="rest"
          d={`M${from + 2} ${base - bar / 2}H${from + Math.max(2.1, width - 2)}`}
        />
      )}
      {act === 'swap' && (
        <path
          class="swap"
          d={`M${from + 0.75} ${base - bar / 2}V${base - 1}H${from + width - 0.75}V${base - bar / 2}`}
        />
      )}
      {isChosen && (
        <rect class="chosen" x={from - 3} y={base - bar - 3} width={width + 6} height={bar + 6} />
      )}
    </>
  );
}

/** The frame whose figures stand below: a pointer over the lanes and a line down to the clock. */
const Marker = ({
  at,
  size,
  foot,
}: {
  readonly at: number;
  readonly size: number;
  readonly foot: number;
}) => (
  <>
    <path class="marker" d={`M${at - size * 0.6} 0H${at + size * 0.6}L${at} ${size}Z`} />
    <path class="marker-line" d={`M${at} ${size}V${foot}`} />
  </>
);

function LightCurve({
  points,
  from,
  height,
  x,
}: {
  readonly points: readonly LightPoint[];
  readonly from: number;
  readonly height: number;
  readonly x: (at: Seconds) => number;
}) {
  const { lowest, highest } = evRange(points);
  const y = (ev: number) => from + 4 + ((height - 8) * (highest - ev)) / (highest - lowest);
  const line = (of: 'ev' | 'low' | 'high') =>
    path(points.map((point) => [x(point.atS), y(point[of])]));
  return (
    <>
      <path class="width" d={line('high')} />
      <path class="width" d={line('low')} />
      <path class="light" d={line('ev')} />
    </>
  );
}

/** The lowest and the highest EV that are drawn. */
export const evRange = (points: readonly LightPoint[]) => ({
  lowest: Math.min(...points.map(({ low }) => low)),
  highest: Math.max(...points.map(({ high }) => high)),
});
