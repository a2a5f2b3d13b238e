import type { Millimetres } from '../../science/units.ts';
import './FormatOutline.css';

interface Props {
  readonly widthMm: Millimetres;
  readonly heightMm: Millimetres;
}

/**
 * A sensor's outline, one millimetre to one pixel, so that outlines below one another compare by
 * eye. `<FormatOutline widthMm={body.widthMm} heightMm={body.heightMm} />`
 */
export const FormatOutline = ({ widthMm, heightMm }: Props) => (
  <svg
    class="format-outline"
    viewBox={`0 0 ${widthMm + 2} ${heightMm + 2}`}
    width={widthMm + 2}
    aria-hidden="true"
  >
    <rect x="1" y="1" width={widthMm} height={heightMm} />
  </svg>
);
