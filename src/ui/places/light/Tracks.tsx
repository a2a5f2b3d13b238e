import type { Planned } from '../../../app/light.ts';
import type { BandName, Night } from '../../../light/night.ts';
import type { Site } from '../../../light/site.ts';
import type { Stretch } from '../../../light/skyTable.ts';
import { localTime } from '../../../light/zones.ts';
import type { Plot } from './CurveDrawing.tsx';
import type { SiteClock } from './clock.ts';
import { hourTicks } from './curve.ts';

interface Props {
  readonly night: Night;
  readonly view: Stretch;
  readonly planned: Planned | null;
  readonly site: Site;
  readonly clock: SiteClock;
  readonly plot: Plot;
  /** Height of the small text in CSS pixels. */
  readonly text: number;
}

/** How high the step of each band stands: the darker, the higher. */
const STEPS: Readonly<Record<BandName, number>> = {
  day: 0,
  civil: 0.25,
  nautical: 0.5,
  astronomical: 0.75,
  night: 1,
};

/** A waning moon, as an outline about a point. */
const crescent = (x: number, y: number, r: number): string =>
  `M${x} ${y - r}A${r} ${r} 0 1 0 ${x + r} ${y}A${0.8 * r} ${0.8 * r} 0 1 1 ${x} ${y - r}Z`;

/** Under the plot, on its clock: the hours, the bands as a stair, the moon, the planned frames. */
export function Tracks({ night, view, planned, site, clock, plot, text }: Props) {
  const { left, width, x } = plot;
  const right = left + width;
  const hours = hourTicks(view, (at) => localTime(site.zone, at), width, 3.8 * text);
  const part = ({
    fromMs,
    toMs,
  }: Stretch): { readonly from: number; readonly to: number } | null => {
    const from = x(Math.max(fromMs, view.fromMs));
    const to = x(Math.min(toMs, view.toMs));
    return to > from ? { from, to } : null;
  };
  const stairTop = 1.7 * text;
  const stairFoot = stairTop + 1.2 * text;
  const rigs = [...new Set(planned?.frames.map(({ letter }) => letter))];
  const row = (index: number): number => stairFoot + (1.4 + 1.25 * index) * text;
  const foot = row(rigs.length) + 0.5 * text;
  return (
    <svg class="tracks" aria-hidden="true" width={right + 0.4 * text} height={foot}>
      {hours.map((at) => (
        <g key={at}>
          <path class="tick" d={`M${x(at)} 0v${0.35 * text}`} />
          <text x={Math.min(x(at), right - text)} y={1.35 * text} text-anchor="middle">
            {clock.time(at)}
          </text>
        </g>
      ))}
      <path class="foot" d={`M${left} ${stairFoot}H${right}`} />
      {night.bands.map((band) => {
        const drawn = part(band);
        const high = STEPS[band.band] * (stairFoot - stairTop);
        return (
          drawn &&
          high > 0 && (
            <rect
              key={band.fromMs}
              class="stair"
              x={drawn.from}
              width={drawn.to - drawn.from}
              y={stairFoot - high}
              height={high}
            />
          )
        );
      })}
      <path class="crescent" d={crescent(left - 0.9 * text, row(0), 0.5 * text)} />
      {night.moon.up.map((up) => {
        const drawn = part(up);
        return (
          drawn && <path key={up.fromMs} class="moon" d={`M${drawn.from} ${row(0)}H${drawn.to}`} />
        );
      })}
      {rigs.map((letter, index) => (
        <g key={letter}>
          <text class="name" x={left - 0.35 * text} y={row(index + 1)} dy="0.35em">
            {letter}
          </text>
          {planned?.frames
            .filter((frame) => frame.letter === letter)
            .map((frame) => {
              const drawn = part(frame);
              return (
                drawn && (
                  <rect
                    key={frame.fromMs}
                    class="frame"
                    x={drawn.from}
                    width={Math.max(2, drawn.to - drawn.from)}
                    y={row(index + 1) - 0.4 * text}
                    height={0.8 * text}
                  />
                )
              );
            })}
        </g>
      ))}
    </svg>
  );
}
