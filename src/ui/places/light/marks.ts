import type uPlot from 'uplot';
import { SUN_EVENT_NAMES, type SunEventName } from '../../../science/skyEvents.ts';
import type { UtcMs } from '../../../science/units.ts';
import { type Drawn, type Look, onPlot, plotSize } from './drawn.ts';

type Pen = CanvasRenderingContext2D;

function line(pen: Pen, colour: string, width: number, way: (pen: Pen) => void): void {
  pen.strokeStyle = colour;
  pen.lineWidth = width;
  pen.beginPath();
  way(pen);
  pen.stroke();
}

/** Words from where the pen is; a halo of the ground keeps them apart from what they cross. */
function write(pen: Pen, { ground, ink }: Look, words: string): void {
  pen.lineJoin = 'round';
  pen.strokeStyle = ground;
  pen.lineWidth = 4;
  pen.strokeText(words, 0, 0);
  pen.fillStyle = ink;
  pen.fillText(words, 0, 0);
}

const isSunEvent = (event: {
  readonly event: string;
  readonly at: UtcMs;
}): event is { readonly event: SunEventName; readonly at: UtcMs } =>
  (SUN_EVENT_NAMES as readonly string[]).includes(event.event);

/** Where the sun passes its limits: a line with its name and time along it, or its
 * time alone, as there is room. */
export function drawSunLines(
  chart: uPlot,
  { night, points, view, clock, words: { light } }: Drawn,
  look: Look,
): void {
  const { text, family } = look;
  const { width, height } = plotSize(chart);
  // Two names would stand in one another's way.
  let last = Number.NEGATIVE_INFINITY;
  for (const { event, at } of night.events.filter(isSunEvent)) {
    if (at <= view.fromMs || at >= view.toMs) continue;
    const here = chart.valToPos(at, 'x');
    const onCurve = points.find((point) => point.at >= at);
    const below = onCurve ? chart.valToPos(onCurve.low, 'y') > height / 2 : false;
    const named = here - last > 1.25 * text && here < width - 0.2 * text;
    if (named) last = here;
    onPlot(chart, (pen) => {
      line(pen, look.line, 1, (way) => {
        way.moveTo(here, 0);
        way.lineTo(here, height);
      });
      if (!named) return;
      pen.translate(here - 0.35 * text, below ? 0.4 * text : height - 0.4 * text);
      pen.rotate(-Math.PI / 2);
      pen.font = `${text}px ${family}`;
      pen.textAlign = below ? 'right' : 'left';
      const whole = `${light.lines[event]} ${clock.time(at)}`;
      const fits = pen.measureText(whole).width < height - 0.8 * text;
      write(pen, look, fits ? whole : clock.time(at));
    });
  }
}

/** The instant that it is, if it is on the plot. */
export function drawNow(chart: uPlot, { now, view, words: { light } }: Drawn, look: Look): void {
  if (now < view.fromMs || now > view.toMs) return;
  const { text, family, index } = look;
  const { width, height } = plotSize(chart);
  const x = chart.valToPos(now, 'x');
  onPlot(chart, (pen) => {
    line(pen, look.line, 2, (way) => {
      way.moveTo(x, 0);
      way.lineTo(x, height);
    });
    pen.fillStyle = index;
    pen.beginPath();
    pen.moveTo(x - 0.5 * text, 0);
    pen.lineTo(x + 0.5 * text, 0);
    pen.lineTo(x, 0.7 * text);
    pen.fill();
    pen.translate(x, -0.35 * text);
    pen.font = `bold ${text}px ${family}`;
    pen.textAlign = x > width - text ? 'right' : 'center';
    write(pen, look, light.now);
  });
}

/** Below this a reading hardly pulls at the curve. */
const LEFT_OUT = 0.2;

/** Crosses out the readings that hardly count. */
export function drawLeftOut(chart: uPlot, { points }: Drawn, { index }: Look): void {
  onPlot(chart, (pen) => {
    for (const { at, reading } of points) {
      if (!reading || reading.weight >= LEFT_OUT) continue;
      const [x, y] = [chart.valToPos(at, 'x'), chart.valToPos(reading.ev100, 'y')];
      line(pen, index, 2, (way) => {
        way.moveTo(x - 7, y - 7);
        way.lineTo(x + 7, y + 7);
        way.moveTo(x + 7, y - 7);
        way.lineTo(x - 7, y + 7);
      });
    }
  });
}
