import { forecastAt, nineInTen } from '../../../light/forecast.ts';
import type { Scene } from '../../../light/scene.ts';
import { later, minutesBetween, type UtcMs } from '../../../science/units.ts';
import { useLightWords } from '../../words/light.ts';

const HALF_HOUR_S = 1800;

/** How sure the curve is, and where the readings contradict it. */
export function Width({ scene, now }: { readonly scene: Scene; readonly now: UtcMs }) {
  const { format, light } = useLightWords();
  const figure = (value: number): string => format.number(value, 1);
  const { readings, sky, contradictions } = scene;
  const counted = readings.filter(({ weight }) => weight > 0);
  // The clock here is that of the minute before.
  const last = counted.findLast(({ at }) => at < later(now, 60));
  const [here, ahead] = [forecastAt(scene, now), forecastAt(scene, later(now, HALF_HOUR_S))];
  // Without readings it is as wide at any time of the evening.
  const alone = scene.from === 'model' ? forecastAt(scene, sky.startMs) : null;
  const sentence = (): string => {
    if (scene.from === 'model')
      return sky.cloud === null || sky.cloud === 'clear' ? light.modelAlone : light.modelUnderCloud;
    if (last && here && ahead)
      return light.fromReading(
        Math.max(0, Math.floor(minutesBetween(last.at, now))),
        figure(nineInTen(here.sigma)),
        figure(nineInTen(ahead.sigma)),
      );
    return light.fromReadings(counted.length);
  };
  return (
    <div class="light-width">
      <p>{sentence()}</p>
      {sky.cloud === null && <p>{light.cloudNotStated(alone && figure(nineInTen(alone.sigma)))}</p>}
      {contradictions.map((found) => (
        <p key={found.code}>{light.contradiction(found, figure)}</p>
      ))}
    </div>
  );
}
