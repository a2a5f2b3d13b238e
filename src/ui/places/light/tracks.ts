import type uPlot from 'uplot';
import type { BandName } from '../../../light/night.ts';
import type { Stretch } from '../../../light/skyTable.ts';
import { type Drawn, type Look, lettersOf, onPlot, plotSize, type Room } from './drawn.ts';

/** How high the step of each band stands: the darker, the higher. */
const STEPS: Readonly<Record<BandName, number>> = {
  day: 0,
  civil: 0.25,
  nautical: 0.5,
  astronomical: 0.75,
  night: 1,
};

/** A waning moon, as an outline about a point. */
const crescent = (x: number, y: number, r: number): Path2D =>
  new Path2D(
    `M${x} ${y - r}A${r} ${r} 0 1 0 ${x + r} ${y}A${0.8 * r} ${0.8 * r} 0 1 1 ${x} ${y - r}Z`,
  );

/** Under the hours, on their clock: the bands as a stair, the moon, the planned frames. */
export function drawTracks(
  chart: uPlot,
  { night, view, planned }: Drawn,
  { text, family, ink, line }: Look,
  { hours }: Room,
): void {
  const { width, height } = plotSize(chart);
  const part = ({
    fromMs,
    toMs,
  }: Stretch): { readonly from: number; readonly wide: number } | null => {
    const from = chart.valToPos(Math.max(fromMs, view.fromMs), 'x');
    const to = chart.valToPos(Math.min(toMs, view.toMs), 'x');
    return to > from ? { from, wide: to - from } : null;
  };
  const stairHigh = 1.2 * text;
  const stairFoot = height + hours + stairHigh;
  const row = (index: number): number => stairFoot + (1.4 + 1.25 * index) * text;
  onPlot(chart, (pen) => {
    pen.fillStyle = line;
    pen.fillRect(0, stairFoot - 0.5, width, 1);
    for (const band of night.bands) {
      const drawn = part(band);
      const high = STEPS[band.band] * stairHigh;
      if (drawn) pen.fillRect(drawn.from, stairFoot - high, drawn.wide, high);
    }
    pen.fill(crescent(-0.9 * text, row(0), 0.5 * text));
    for (const up of night.moon.up) {
      const drawn = part(up);
      if (drawn) pen.fillRect(drawn.from, row(0) - 2, drawn.wide, 4);
    }
    pen.font = `${text}px ${family}`;
    pen.textAlign = 'right';
    pen.textBaseline = 'middle';
    for (const [index, letter] of lettersOf(planned).entries()) {
      pen.fillStyle = ink;
      pen.fillText(letter, -0.35 * text, row(index + 1));
      pen.fillStyle = line;
      for (const frame of planned?.frames ?? []) {
        const drawn = frame.letter === letter ? part(frame) : null;
        if (drawn) {
          const top = row(index + 1) - 0.4 * text;
          pen.fillRect(drawn.from, top, Math.max(2, drawn.wide), 0.8 * text);
        }
      }
    }
  });
}
