import { useWords } from '../../words/words.ts';

/** The usual cautions; local rules come before them. */
export function Cautions() {
  const { plan } = useWords();
  return (
    <ul class="cautions">
      {plan.cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}
