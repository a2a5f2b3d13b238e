import type { Gear } from '../../../gear/rig.ts';
import type { BodyClock } from '../../../outing/cameraFile.ts';
import type { Seconds } from '../../../science/units.ts';
import { type PictureWords, usePictureWords } from '../../words/pictures.ts';
import { RigName } from '../outing/RigName.tsx';

/** From here on an amount is told as a duration: figures of seconds alone say little. */
const LONG_S = 90;

/** An amount of time without its sign: '2.4 s', '1:00:03'. */
const amount = ({ format }: PictureWords, s: number): string =>
  Math.abs(s) < LONG_S
    ? `${format.number(Math.abs(s), 1)}\u00a0s`
    : format.duration(Math.abs(s) as Seconds);

/** '1:00:02 ahead of this phone, ±0.4 s, from the clock frame' */
export function clockText(words: PictureWords, clock: BodyClock): string {
  const { pictures: say } = words;
  const { aheadS, sigmaS, gainsSPerHour, from } = clock;
  const stands = aheadS < 0 ? say.behind : say.ahead;
  const drifts = gainsSPerHour < 0 ? say.loses : say.gains;
  return [
    stands(amount(words, aheadS), amount(words, sigmaS)),
    Math.abs(gainsSPerHour) >= 0.05 && drifts(amount(words, gainsSPerHour)),
    say.from[from],
  ]
    .filter(Boolean)
    .join(', ');
}

/** How each body's clock stood. */
export function ClockLines({
  clocks,
  gear,
}: {
  readonly clocks: readonly BodyClock[];
  readonly gear: Gear;
}) {
  const words = usePictureWords();
  return (
    <dl class="log-facts">
      {clocks.map((clock) => (
        <div key={clock.rig}>
          <dt>
            <RigName gear={gear} rig={clock.rig} />
          </dt>
          <dd>{clockText(words, clock)}</dd>
        </div>
      ))}
    </dl>
  );
}
