import uPlot from 'uplot';
import type { Planned } from '../../../app/light.ts';
import type { Night } from '../../../light/night.ts';
import type { Scene } from '../../../light/scene.ts';
import type { Site } from '../../../light/site.ts';
import type { Stretch } from '../../../light/skyTable.ts';
import type { UtcMs } from '../../../science/units.ts';
import type { LightWords } from '../../words/light.ts';
import type { SiteClock } from './clock.ts';
import type { CurvePoint } from './curve.ts';

/** What stands on the drawing until the minute turns. */
export interface Drawn {
  readonly night: Night;
  readonly scene: Scene;
  readonly points: readonly CurvePoint[];
  readonly view: Stretch;
  readonly now: UtcMs;
  readonly planned: Planned | null;
  readonly site: Site;
  readonly clock: SiteClock;
  readonly words: LightWords;
}

/** How it is drawn: colours of the theme, and measures in whole CSS pixels. */
export interface Look {
  readonly ground: string;
  readonly ink: string;
  readonly line: string;
  readonly index: string;
  readonly family: string;
  /** Height of the small text, which everything else follows. */
  readonly text: number;
}

/** A colour of the theme let through, as far as `share`; colours of the theme are #rrggbb. */
export const through = (colour: string, share: number): string =>
  colour +
  Math.round(share * 255)
    .toString(16)
    .padStart(2, '0');

/** The room around the plot, in whole CSS pixels. */
export interface Room {
  /** For 'now'. */
  readonly top: number;
  /** Half of an hour's figures. */
  readonly right: number;
  /** For the EV. */
  readonly left: number;
  /** For the hours. */
  readonly hours: number;
  /** For bands, moon and planned frames, under the hours. */
  readonly tracks: number;
}

/** The letters of the rigs whose frames are planned, each once. */
export const lettersOf = (planned: Planned | null): readonly string[] => [
  ...new Set(planned?.frames.map(({ letter }) => letter)),
];

export const roomAt = (text: number, planned: Planned | null): Room => ({
  top: Math.ceil(1.2 * text),
  right: Math.ceil(1.4 * text),
  left: Math.ceil(2.4 * text),
  hours: Math.ceil(1.7 * text),
  tracks: Math.ceil((3.1 + 1.25 * lettersOf(planned).length) * text),
});

/** Draws on a chart in CSS pixels from the top left of its plot. */
export function onPlot(chart: uPlot, draw: (pen: CanvasRenderingContext2D) => void): void {
  const { ctx, bbox } = chart;
  ctx.save();
  ctx.translate(bbox.left, bbox.top);
  ctx.scale(uPlot.pxRatio, uPlot.pxRatio);
  // The chart leaves its own dashes and base line behind.
  ctx.setLineDash([]);
  ctx.textBaseline = 'alphabetic';
  draw(ctx);
  ctx.restore();
}

/** The size of a chart's plot in CSS pixels. */
export const plotSize = ({ bbox }: uPlot): { readonly width: number; readonly height: number } => ({
  width: bbox.width / uPlot.pxRatio,
  height: bbox.height / uPlot.pxRatio,
});
