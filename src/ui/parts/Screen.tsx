import type { ComponentChildren } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { useApp } from '../shell/useApp.ts';
import { useWords } from '../words/words.ts';
import { Icon } from './Icon.tsx';
import './Screen.css';

interface Props {
  readonly title: string;
  /** Stands after the title: `<InventedTag />`. */
  readonly tag?: ComponentChildren;
  /** A screen that was opened from another one: shows 'back' and takes the focus. */
  readonly inner?: boolean;
  /** Acts at the right of the title. */
  readonly acts?: ComponentChildren;
  /** Stays at the foot while the rest scrolls: the one act of the screen. */
  readonly foot?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** One screen with its title. It scrolls by itself. `<Screen title="Gear">…</Screen>` */
export function Screen({ title, tag, inner, acts, foot, children }: Props) {
  const { shell } = useWords();
  const { navigation } = useApp();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (inner) heading.current?.focus({ preventScroll: true });
  }, [inner]);
  return (
    <div class={`screen${inner ? ' inner' : ''}`}>
      <Scroller id={inner ? null : title}>
        <header class="screen-head">
          {inner && (
            <button
              type="button"
              class="icon-button back"
              aria-label={shell.back}
              onClick={() => navigation.back()}
            >
              <Icon name="back" />
            </button>
          )}
          <h1 ref={heading} tabIndex={-1}>
            {title}
          </h1>
          {tag}
          {acts && <div class="acts">{acts}</div>}
        </header>
        <div class="screen-body">{children}</div>
      </Scroller>
      {foot && <div class="screen-foot">{foot}</div>}
    </div>
  );
}

/** Where each outer screen was left, by its title. */
const left = new Map<string, number>();

/** Scrolls by itself, and an outer screen comes back to where it was left. */
function Scroller({
  id,
  children,
}: {
  readonly id: string | null;
  readonly children: ComponentChildren;
}) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const { current } = box;
    if (current === null || id === null) return;
    current.scrollTop = left.get(id) ?? 0;
    return () => {
      left.set(id, current.scrollTop);
    };
  }, [id]);
  return (
    <div class="scroller" ref={box}>
      {children}
    </div>
  );
}
