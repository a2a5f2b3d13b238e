import type { PlanSet } from '../../../plan/plan.ts';
import { Row } from '../../parts/Row.tsx';
import type { PlanWords } from '../../words/plan.ts';
import { usePlanWords } from '../../words/plan.ts';
import { Problems } from './Problems.tsx';
import { RigRows } from './RigRows.tsx';
import { SetLight } from './SetLight.tsx';
import { sizeWords } from './sentences.ts';
import type { PlanView } from './usePlanView.ts';

interface Props {
  readonly view: PlanView;
  readonly set: PlanSet;
  readonly place: number;
  readonly current: boolean;
  readonly onOpen: () => void;
}

/** What a set is called: its intent, else its kind, or that a light set has none yet. */
export const intentWords = ({ plan }: PlanWords, set: PlanSet | undefined): string =>
  set?.intent.trim() || (set && set.kind !== 'light' ? plan.kinds[set.kind] : plan.noIntent);

/** One line of the shot list with what it comes to on each rig. */
export function SetCard({ view, set, place, current, onOpen }: Props) {
  const words = usePlanWords();
  const title = words.plan.setAt(place, intentWords(words, set));
  const table = view.prepared.table.find((candidate) => candidate.set === set.id);
  return (
    <article class="set-card">
      <h3>
        <Row
          title={title}
          note={<SetInWords view={view} set={set} />}
          current={current}
          onPress={onOpen}
        />
      </h3>
      {table?.kind === 'compared' && <RigRows caption={title} view={view} table={table} />}
      <SetLight view={view} set={set} />
      <Problems view={view} set={set.id} />
    </article>
  );
}

/** Kind, hold, passes and repeats in a few words. */
function SetInWords({ view, set }: { readonly view: PlanView; readonly set: PlanSet }) {
  const words = usePlanWords();
  const { plan, format } = words;
  const table = view.prepared.table.find((candidate) => candidate.set === set.id);
  if (set.kind === 'capped-dark') {
    const after = table?.kind === 'follows' ? view.set(table.after) : undefined;
    return (
      <>
        {plan.kinds[set.kind]}
        {after && `. ${plan.follows(intentWords(words, after))}`}
      </>
    );
  }
  if (set.kind === 'capped-series') {
    const wait = set.restBeforeS ? format.duration(set.restBeforeS) : null;
    return (
      <>
        {plan.kinds[set.kind]}. {plan.seriesInShort(set.repeats, wait)}.
      </>
    );
  }
  const stops = set.hold.kind === 'same-iso-and-time' ? set.hold.aperture.plus : null;
  return (
    <>
      {plan.kinds[set.kind]}
      {set.targetOffset !== 0 && `, ${plan.fromMeter(format.stops(set.targetOffset))}`}.{' '}
      {plan.holdInWords(set.hold, stops === null ? '' : sizeWords(words, stops))}.{' '}
      {plan.turns(set.passes, set.repeats)}.
    </>
  );
}
