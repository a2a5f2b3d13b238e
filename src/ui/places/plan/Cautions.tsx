interface Props {
  readonly of: readonly string[];
}

/** What to take care of, line by line. */
export const Cautions = ({ of }: Props) => (
  <ul class="cautions">
    {of.map((caution) => (
      <li key={caution}>{caution}</li>
    ))}
  </ul>
);
