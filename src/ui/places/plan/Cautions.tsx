import { usePlanWords } from '../../words/plan.ts';

/** The usual cautions; local rules come before them. */
export function Cautions() {
  const { plan } = usePlanWords();
  return (
    <ul class="cautions">
      {plan.cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
