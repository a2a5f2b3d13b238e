import { encodeQR } from 'qr';

/** A code as a drawing whose unit is one module. */
interface CodeDrawing {
  /** Modules along each side, the quiet zone among them. */
  readonly side: number;
  /** The dark modules, as the path of an SVG. */
  readonly path: string;
}

/** The quiet zone that ISO/IEC 18004 asks for, in modules. */
const QUIET = 4;

/**
 * Draws a text as a QR code (ISO/IEC 18004). A quarter of it may be lost: a finger's print, a
 * reflection or the edge of a lamp on the screen.
 */
export function codeDrawing(text: string): CodeDrawing {
  const rows = encodeQR(text, 'raw', { ecc: 'quartile', border: QUIET });
  const path = rows
    .flatMap((row, y) =>
      runsOf(row).map(([from, length]) => `M${from} ${y}h${length}v1h${-length}z`),
    )
    .join('');
  return { side: rows.length, path };
}

/** Where dark modules lie side by side: from which on, and how many. One rectangle has no seams. */
function runsOf(row: readonly boolean[]): (readonly [from: number, length: number])[] {
  const runs: [number, number][] = [];
  row.forEach((dark, x) => {
    const last = runs.at(-1);
    if (!dark) return;
    if (last && last[0] + last[1] === x) last[1] += 1;
    else runs.push([x, 1]);
  });
  return runs;
}
