import { useEffect } from 'preact/hooks';
import type { App } from '../../app/app.ts';
import { UndoBar } from '../parts/UndoBar.tsx';
import '../theme/base.css';
import { later } from './later.tsx';
import { PlaceBar } from './PlaceBar.tsx';
import { fetchLaterPlaces, LANDED } from './places.ts';
import './Shell.css';
import { UnsavedNotice } from './UnsavedNotice.tsx';
import { AppContext } from './useApp.ts';

/** Seen once, right after everything came over the network. */
const firstStart = later<object>(
  ({ children }) => <main>{children}</main>,
  async () => (await import('./FirstStart.tsx')).FirstStart,
);

/** The frame of the app: the place in use, what must be said over all places, the bar of places. */
export function Shell({ app }: { readonly app: App }) {
  const { dim } = app.preferences.current.value;
  useEffect(() => {
    // The first screen comes first.
    const timer = setTimeout(fetchLaterPlaces, 1000);
    return () => clearTimeout(timer);
  }, []);
  return (
    <AppContext.Provider value={app}>
      <div class="shell" data-dim={dim ? 'on' : undefined}>
        {app.firstStart.value ? <firstStart.Content /> : <Places app={app} />}
      </div>
    </AppContext.Provider>
  );
}

function Places({ app }: { readonly app: App }) {
  const { place } = app.navigation.at.value;
  const entry = LANDED.find((landed) => landed.place === place) ?? LANDED[0];
  if (entry === undefined) return null;
  const { Content } = entry;
  const bare = entry.bare?.(app) ?? false;
  return (
    <>
      <main class="place">
        <Content key={entry.place} />
      </main>
      <div class="over">
        <UnsavedNotice />
        <UndoBar />
      </div>
      {!bare && <PlaceBar current={entry.place} />}
    </>
  );
}
