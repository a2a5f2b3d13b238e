import { forecastAt, nineInTen } from '../../../light/forecast.ts';
import { later, type Seconds } from '../../../science/units.ts';
import { RigSign } from '../../parts/RigSign.tsx';
import { useHeatWords } from '../../words/planHeat.ts';
import { heatRange, signedHeat } from './heatWords.ts';
import { intentWords } from './SetCard.tsx';
import { siteTimeFine } from './siteTime.ts';
import type { PlanView } from './usePlanView.ts';

/** The figures of one frame of a timeline, each at its own place. */
export function FrameFigures({ view, at }: { readonly view: PlanView; readonly at: number }) {
  const words = useHeatWords();
  const { heat: say, plan, format } = words;
  const { prepared, inLight } = view;
  const frame = prepared.frames[at];
  const times = prepared.timeline.frames[at];
  if (!frame || !times) return null;
  const rig = view.rig(frame.rig);
  const heat = view.heat.frames.get(frame.key);
  const rest = prepared.timeline.rests.findLast(
    (span) => span.rig === frame.rig && span.toS <= times.startS,
  );
  const before = prepared.timeline.frames.findLast(
    (other, index) => index < at && other.rig === frame.rig,
  );
  const rested = rest && (!before || rest.fromS >= before.startS) ? rest : null;
  const clock = (seconds: Seconds) =>
    inLight.how === 'ready'
      ? siteTimeFine(words, inLight.site, later(inLight.light.startMs, seconds))
      : format.duration(seconds);
  const scene =
    inLight.how === 'ready'
      ? forecastAt(inLight.evening.scene, later(inLight.light.startMs, times.midS))
      : null;
  return (
    <>
      <p class="frame-name">
        {rig && <RigSign letter={rig.rig.letter} />} {intentWords(words, view.set(frame.set))},{' '}
        {plan.passAndRepeat(frame.pass, frame.repeat)}
      </p>
      <dl class="frame-figures">
        <div>
          <dt>{say.shutter}</dt>
          <dd>{plan.fromTo(clock(times.startS), clock(times.endS))}</dd>
        </div>
        <div>
          <dt>{say.restBefore}</dt>
          <dd>{rested ? format.duration((rested.toS - rested.fromS) as Seconds) : say.noRest}</dd>
        </div>
        <div class="wide">
          <dt>{say.heatMid}</dt>
          <dd>{heat && `${signedHeat(words, heat.usual)} (${heatRange(words, heat)})`}</dd>
        </div>
        <div>
          <dt>{say.sceneEv}</dt>
          <dd class={scene ? undefined : 'unknown'}>
            {scene
              ? say.evWithin(
                  format.number(scene.ev100, 1),
                  format.number(nineInTen(scene.sigma), 1),
                )
              : words.parts.unknown}
          </dd>
        </div>
      </dl>
    </>
  );
}
