import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { App } from '../../app/app.ts';

export const AppContext = createContext<App | null>(null);

/** The app behind the screens. @throws Error outside of `Shell`. */
export function useApp(): App {
  const app = useContext(AppContext);
  if (app === null) throw new Error('a screen stands outside of the app');
  return app;
}
