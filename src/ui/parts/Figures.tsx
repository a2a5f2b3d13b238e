import type { ComponentChildren } from 'preact';
import './Figure.css';

/** A row of figures that wraps. */
export const Figures = ({ children }: { readonly children: ComponentChildren }) => (
  <dl class="figures">{children}</dl>
);
