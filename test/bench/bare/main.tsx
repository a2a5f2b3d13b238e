import { signal } from '@preact/signals';
import { openDB } from 'idb';
import { render } from 'preact';
import { Workbox } from 'workbox-window';

/*
 * The least that a page of the app's libraries can be: it draws a line at once, and puts right what
 * the line says when the database has answered. With #asks-first it draws when it has answered, as a
 * page must whose colours lie there.
 */

const opened = signal(0);

const draw = () => {
  const host = document.getElementById('app');
  if (host === null) throw new Error('index.html has no #app');
  render(<p>Opened {opened} times.</p>, host);
};

const asksFirst = location.hash === '#asks-first';
if (!asksFirst) draw();

void new Workbox('./sw.js').register({ immediate: true });

const db = await openDB<{ times: { key: string; value: number } }>('bare', 1, {
  upgrade(fresh) {
    fresh.createObjectStore('times');
  },
});
opened.value = ((await db.get('times', 'opened')) ?? 0) + 1;
if (asksFirst) draw();
await db.put('times', opened.value, 'opened');
