import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import './Section.css';

interface Props {
  readonly title: string;
  /** One act on the right of the title. */
  readonly act?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A titled part of a screen. `<Section title="Bodies" act={<Button …/>}>…</Section>` */
export function Section({ title, act, children }: Props) {
  const id = useId();
  return (
    <section class="section" aria-labelledby={id}>
      <div class="title">
        <h2 id={id}>{title}</h2>
        {act}
      </div>
      {children}
    </section>
  );
}
