import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** A stretch of a long list: it is drawn, or only its height is kept. */
export interface Stretch {
  readonly key: string;
  /** How high it will be, in rem, as long as it has never been drawn. */
  readonly rem: number;
}

interface Props<S extends Stretch> {
  readonly stretches: readonly S[];
  readonly draw: (stretch: S) => ComponentChildren;
}

/** Stretches that are drawn before anybody has scrolled: more than one screen. */
const AT_ONCE = 2;

/**
 * A long list of which only what is near the screen is drawn, so that ten thousand lines open as
 * fast as a hundred. Stands inside a `Screen`, which scrolls it.
 */
export const Windowed = <S extends Stretch>({ stretches, draw }: Props<S>) => (
  <div>
    {stretches.map((stretch, index) => (
      <Near key={stretch.key} rem={stretch.rem} atOnce={index < AT_ONCE}>
        {() => draw(stretch)}
      </Near>
    ))}
  </div>
);

interface NearProps {
  readonly rem: number;
  readonly atOnce: boolean;
  readonly children: () => ComponentChildren;
}

function Near({ rem, atOnce, children }: NearProps) {
  const box = useRef<HTMLDivElement>(null);
  const height = useRef(`${rem}rem`);
  const [near, setNear] = useState(atOnce);
  useEffect(() => {
    const { current } = box;
    if (!current) return;
    const observer = new IntersectionObserver(
      (seen) => {
        const entry = seen.at(-1);
        if (!entry) return;
        // What was drawn knows its height, also when the text has been enlarged.
        if (!entry.isIntersecting) height.current = `${current.offsetHeight}px`;
        setNear(entry.isIntersecting);
      },
      { root: current.closest('.scroller'), rootMargin: '100% 0px' },
    );
    observer.observe(current);
    return () => observer.disconnect();
  }, []);
  return (
    <div ref={box} style={near ? undefined : { blockSize: height.current }}>
      {near && children()}
    </div>
  );
}
