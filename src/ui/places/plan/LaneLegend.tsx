import { useId } from 'preact/hooks';
import { useHeatWords } from '../../words/planHeat.ts';
import { Act } from './LaneDrawing.tsx';
import type { LaneAct } from './lanes.ts';

const SHAPES = [
  ['exposure', 'exposure'],
  ['capped', 'capped'],
  ['own-dark', 'ownDark'],
  ['rest', 'rest'],
  ['swap', 'swap'],
] as const;

/** What the shapes of the lanes mean; only of those that are drawn. */
export function LaneLegend({
  acts,
  top,
  hasLight,
}: {
  readonly acts: readonly LaneAct[];
  readonly top: number;
  readonly hasLight: boolean;
}) {
  const { heat: say, format } = useHeatWords();
  const hatch = useId();
  return (
    <ul class="legend">
      {SHAPES.filter(([act]) => acts.some((each) => each.act === act)).map(([act, word]) => (
        <li key={act}>
          <svg class="lanes" width="28" height="18" aria-hidden="true">
            <defs>
              <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse">
                <path class="hatch" d="M-1 6L6 -1M-1 1L1 -1M4 6L6 4" />
              </pattern>
            </defs>
            <Act act={{ act }} from={3} to={25} base={17} bar={15} hatch={hatch} isChosen={false} />
          </svg>
          {say.legend[word]}
        </li>
      ))}
      <li>
        <svg class="lanes" width="28" height="18" aria-hidden="true">
          <path class="heat" d="M3 15C8 14 10 8 14 6L25 13" />
        </svg>
        {say.legend.heat(format.number(top, 2))}
      </li>
      {hasLight && (
        <li>
          <svg class="lanes" width="28" height="18" aria-hidden="true">
            <path class="width" d="M3 2L25 9M3 9L25 16" />
            <path class="light" d="M3 5.5L25 12.5" />
          </svg>
          {say.legend.light}
        </li>
      )}
    </ul>
  );
}
