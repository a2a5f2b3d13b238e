import { forecastAt, nineInTen } from '../../../light/forecast.ts';
import type { UtcMs } from '../../../science/units.ts';
import { useWords } from '../../words/words.ts';
import { useRun } from './useRun.ts';

/** What the readings come to: the light now, each meter against the clear sky, what does not fit. */
export function LightNow() {
  const { desk } = useRun();
  const { format, outing } = useWords();
  const { light } = outing;
  const scene = desk.light.scene.value;
  const now = scene && forecastAt(scene, desk.now.value.wallMs as UtcMs);
  if (!scene || !now) return null;
  const left = scene.readings.filter(({ weight }) => weight === 0).length;
  return (
    <>
      <p>{light.now(format.number(now.ev100, 1), format.number(nineInTen(now.sigma), 1))}</p>
      {scene.from === 'readings' && (
        <p>
          {scene.offsets
            .map(({ meter, stops }) => light.reads(meter, format.stopsFine(stops)))
            .join(' ')}{' '}
          {left > 0 && light.leftOut(left)}
        </p>
      )}
    </>
  );
}
