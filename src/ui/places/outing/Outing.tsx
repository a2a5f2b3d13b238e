import { useApp } from '../../shell/useApp.ts';
import { Begin } from './Begin.tsx';
import { RunScreen } from './RunScreen.tsx';
import './outing.css';

/** The Outing place: a plan to begin with, or the outing in hand. */
export function Outing() {
  const { run } = useApp();
  const state = run.state.value;
  return state ? <RunScreen key={state.outing} /> : <Begin />;
}
