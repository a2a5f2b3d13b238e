import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { useWords } from '../words/words.ts';
import { Icon } from './Icon.tsx';
import './Reorder.css';

interface Item {
  readonly key: string;
  /** Said by the move buttons. */
  readonly name: string;
  readonly content: ComponentChildren;
}

interface Props {
  readonly label: string;
  readonly items: readonly Item[];
  /** `to` is the place in the list after the item was taken out of `from`. */
  readonly onMove: (from: number, to: number) => void;
}

interface Drag {
  readonly from: number;
  readonly to: number;
  /** How far the finger has gone, px. */
  readonly by: number;
}

/**
 * A list whose order is changed by buttons or by dragging the grip.
 * `<Reorder label="Shot list" items={items} onMove={(from, to) => …} />`
 */
export function Reorder({ label, items, onMove }: Props) {
  const { parts } = useWords();
  const rows = useRef<HTMLOListElement>(null);
  const start = useRef({ y: 0, middles: [] as readonly number[] });
  const [drag, setDrag] = useState<Drag | null>(null);
  const [said, setSaid] = useState('');

  const move = (from: number, to: number) => {
    const item = items[from];
    if (item === undefined || to < 0 || to >= items.length || to === from) return;
    onMove(from, to);
    setSaid(parts.movedTo(item.name, to + 1, items.length));
  };
  const grab = (event: PointerEvent & { currentTarget: Element }, from: number) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const middles = Array.from(rows.current?.children ?? [], (row) => {
      const { top, height } = row.getBoundingClientRect();
      return top + height / 2;
    });
    start.current = { y: event.clientY, middles };
    setDrag({ from, to: from, by: 0 });
  };
  const pull = (event: PointerEvent) => {
    if (drag === null) return;
    const { y, middles } = start.current;
    const by = event.clientY - y;
    const middle = (middles[drag.from] ?? 0) + by;
    const to = middles.filter((other, index) => index !== drag.from && other < middle).length;
    setDrag({ ...drag, to, by });
  };
  const drop = () => {
    setDrag(null);
    if (drag !== null) move(drag.from, drag.to);
  };

  return (
    <>
      <ol class={`reorder${drag ? ' dragging' : ''}`} aria-label={label} ref={rows}>
        {items.map((item, index) => (
          <li
            key={item.key}
            class={mark(drag, index)}
            style={drag?.from === index ? { transform: `translateY(${drag.by}px)` } : undefined}
          >
            <span
              class="grip"
              title={parts.drag(item.name)}
              onPointerDown={(event) => grab(event, index)}
              onPointerMove={pull}
              onPointerUp={drop}
              onPointerCancel={() => setDrag(null)}
            >
              <Icon name="grip" />
            </span>
            <div class="content">{item.content}</div>
            <span class="moves">
              <button
                type="button"
                class="icon-button"
                aria-label={parts.moveUp(item.name)}
                disabled={index === 0}
                onClick={() => move(index, index - 1)}
              >
                <Icon name="up" />
              </button>
              <button
                type="button"
                class="icon-button"
                aria-label={parts.moveDown(item.name)}
                disabled={index === items.length - 1}
                onClick={() => move(index, index + 1)}
              >
                <Icon name="down" />
              </button>
            </span>
          </li>
        ))}
      </ol>
      <p class="heard" role="status">
        {said}
      </p>
    </>
  );
}

/** Where the dragged item would land is marked by a heavy line. */
function mark(drag: Drag | null, index: number): string {
  if (drag === null) return '';
  if (index === drag.from) return 'held';
  const place = index - (index > drag.from ? 1 : 0);
  if (place === drag.to) return 'land-before';
  return place === drag.to - 1 ? 'land-after' : '';
}
