import type { PlannedRest } from '../../../plan/planHeat.ts';
import type { Seconds } from '../../../science/units.ts';
import { RigSign } from '../../parts/RigSign.tsx';
import { Section } from '../../parts/Section.tsx';
import { type HeatWords, useHeatWords } from '../../words/planHeat.ts';
import './heatLines.css';
import { signedHeat } from './heatWords.ts';
import { intentWords } from './SetCard.tsx';
import type { PlanView } from './usePlanView.ts';

/** Each rest that the limit asks for: how long, how sure, what it wins and what it costs. */
export function RestList({ view }: { readonly view: PlanView }) {
  const words = useHeatWords();
  const { heat: say } = words;
  const { rests } = view.heat;
  return (
    <Section title={say.rests}>
      {rests.length === 0 && <p>{say.restsNone}</p>}
      {rests.some(({ isSuggestion }) => isSuggestion) && <p class="hint">{say.suggestionHint}</p>}
      {rests.length > 0 && (
        <ol class="heat-lines">
          {rests.map((rest) => (
            <RestLine key={rest.key} view={view} rest={rest} />
          ))}
        </ol>
      )}
    </Section>
  );
}

function RestLine({ view, rest }: { readonly view: PlanView; readonly rest: PlannedRest }) {
  const words = useHeatWords();
  const { heat: say, plan, format } = words;
  const frame = view.prepared.frames.find(({ key }) => key === rest.key);
  const rig = view.rig(rest.rig);
  if (!frame) return null;
  const { usual } = rest.range;
  const enough = usual !== null;
  return (
    <li>
      <span>
        {rig && <RigSign letter={rig.rig.letter} />} {intentWords(words, view.set(frame.set))},{' '}
        {plan.passAndRepeat(frame.pass, frame.repeat)}
      </span>
      {enough ? (
        <>
          <span class="rest-time">{restTime(words, rest)}</span>
          <span class="hint">{worthWords(words, rest)}.</span>
          {!rest.isProposed && <span>{say.leftOut}</span>}
          {rest.isProposed && usual > rest.rest.s + 1 && <span>{say.endsEarly}</span>}
        </>
      ) : (
        <span>{say.neverEnough}</span>
      )}
      <span class="hint">
        {[
          say.limitIs(format.number(rest.limit, 2)),
          ...(rest.mode === 'idle' ? [say.restsOn] : []),
        ].join(', ')}
      </span>
    </li>
  );
}

/** 'Suggested rest 3:12 (0:00 to 9:30)' */
function restTime(
  { heat: say, format }: HeatWords,
  { rest, range, isSuggestion }: PlannedRest,
): string {
  const time = (of: Seconds | null) => (of === null ? say.never : format.duration(of));
  return say.restOf(
    isSuggestion,
    format.duration(rest.s),
    say.between(time(range.least), time(range.most)),
  );
}

function worthWords(words: HeatWords, { rest }: PlannedRest): string {
  const { heat: say, format } = words;
  const [without, left] = [signedHeat(words, rest.without), signedHeat(words, rest.with)];
  return rest.worth
    ? `${say.restWins(without, left, format.number(rest.worth.wins, 2))}; ${say.restCosts(format.number(rest.worth.costs, 2))}`
    : `${say.restCools(without, left)}; ${say.costUnknown}`;
}
