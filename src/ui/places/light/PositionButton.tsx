import { useState } from 'preact/hooks';
import type { Site } from '../../../light/site.ts';
import type { Place } from '../../../science/place.ts';
import { metres } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { useLightWords } from '../../words/light.ts';
import { useLight } from './useLight.ts';

interface Props {
  /** Height is null where the phone does not know it. */
  readonly onFound: (at: Pick<Place, 'lat' | 'lon'>, heightM: Site['heightM'] | null) => void;
}

/** Says why, asks the phone once when it is pressed, and says what came of it. */
export function PositionButton({ onFound }: Props) {
  const desk = useLight();
  const { format, light } = useLightWords();
  const [asking, setAsking] = useState(false);
  const [said, setSaid] = useState('');
  const ask = async () => {
    setAsking(true);
    setSaid(light.asking);
    const answer = await desk.whereAmI();
    setAsking(false);
    if (answer.kind !== 'here') {
      setSaid(light.noPosition[answer.kind]);
      return;
    }
    const { latDeg, lonDeg, heightM, withinM } = answer;
    setSaid(light.positioned(format.number(Math.ceil(withinM), 0)));
    onFound({ lat: latDeg, lon: lonDeg }, heightM === null ? null : metres(Math.round(heightM)));
  };
  return (
    <div class="light-ask">
      <p class="hint">{light.positionWhy}</p>
      <div class="acts">
        <Button busy={asking} onPress={() => void ask()}>
          {light.askPosition}
        </Button>
      </div>
      <p role="status">{said}</p>
    </div>
  );
}
