import type { PlannedFrame } from '../../../plan/frame.ts';
import type { FrameTimes, Span } from '../../../plan/timeline.ts';
import { later } from '../../../science/units.ts';
import { RigSign } from '../../parts/RigSign.tsx';
import { usePlanWords } from '../../words/plan.ts';
import { useHeatWords } from '../../words/planHeat.ts';
import { heatRange, signedHeat } from './heatWords.ts';
import { intentWords } from './SetCard.tsx';
import { siteTimeFine } from './siteTime.ts';
import type { PlanView } from './usePlanView.ts';

/** A frame, when it falls, and the rest before it. */
interface Line {
  readonly frame: PlannedFrame;
  readonly times: FrameTimes;
  readonly rest: Span | null;
}

/** The lines of each visit, in order. */
function linesByVisit({ prepared: { frames, timeline } }: PlanView): readonly (readonly Line[])[] {
  const visits: Line[][] = [];
  const rests = [...timeline.rests];
  for (const [index, frame] of frames.entries()) {
    const times = timeline.frames[index];
    if (!times) break;
    // Rests stand in the order of the frames that wait for them.
    const next = rests.findIndex(({ rig, fromS }) => rig === frame.rig && fromS < times.startS);
    const [rest = null] = next < 0 ? [] : rests.splice(next, 1);
    const visit = visits.at(-1);
    const line = { frame, times, rest };
    if (visit?.[0]?.frame.visit === frame.visit) visit.push(line);
    else visits.push([line]);
  }
  return visits;
}

/** The frames in order, by visits, with their times from the start of the list and their heat. */
export function FrameList({ view }: { readonly view: PlanView }) {
  const { plan: say, format } = usePlanWords();
  const visits = linesByVisit(view);
  const together = view.plan.order === 'side-by-side';
  if (visits.length === 0) return <p>{say.noFrame}</p>;
  return (
    <>
      <p class="hint">{say.framesHint}</p>
      <ol class="visits">
        {visits.map((lines, index) => {
          const rig = lines[0] && view.rig(lines[0].frame.rig);
          return (
            <li key={lines[0]?.frame.key}>
              <h3>
                {together ? (
                  say.together
                ) : (
                  <span class="rig-line">
                    {rig && <RigSign letter={rig.rig.letter} />} {rig?.body.name}
                  </span>
                )}
                {index > 0 && (
                  <span class="hint">
                    {say.swapTakes(format.duration(view.plan.allowances.swapS))}
                  </span>
                )}
              </h3>
              <ol>
                {lines.map((line) => (
                  <FrameLine key={line.frame.key} view={view} line={line} together={together} />
                ))}
              </ol>
            </li>
          );
        })}
      </ol>
    </>
  );
}

function FrameLine({
  view,
  line: { frame, times, rest },
  together,
}: {
  readonly view: PlanView;
  readonly line: Line;
  readonly together: boolean;
}) {
  const words = useHeatWords();
  const { plan: say, format } = words;
  const { inLight } = view;
  const heat = view.heat.frames.get(frame.key);
  const rig = together ? view.rig(frame.rig) : null;
  return (
    <li class="frame-line">
      <span>
        {rig && <RigSign letter={rig.rig.letter} />} {intentWords(words, view.set(frame.set))}
        <span class="hint">
          {say.passAndRepeat(frame.pass, frame.repeat)}
          {rest &&
            `, ${say.restsFirst(format.duration((rest.toS - rest.fromS) as typeof rest.toS))}`}
        </span>
        {heat && (
          <span class="hint">
            {words.heat.short(signedHeat(words, heat.usual), heatRange(words, heat))}
          </span>
        )}
      </span>
      <span class="span">
        {say.fromTo(format.duration(times.startS), format.duration(times.endS))}
        <span class="hint">
          {say.middle(format.duration(times.midS))}
          {inLight.how === 'ready' &&
            `, ${siteTimeFine(words, inLight.site, later(inLight.light.startMs, times.startS))}`}
        </span>
      </span>
    </li>
  );
}
