import { useEffect } from 'preact/hooks';
import { useApp } from '../../shell/useApp.ts';

/**
 * What a run has besides its buttons: any tap lets sound out, keys press the one act, and the focus
 * stays on the screen when a step goes.
 */
export function useMainAct(): void {
  const app = useApp();
  useEffect(() => {
    const { unlock } = app.cues;
    const ends: (() => void)[] = [];
    let over = false;
    Promise.all([import('../../shell/mainActKeys.ts'), import('../../shell/keptFocus.ts')]).then(
      ([{ listenForMainAct }, { keepFocus }]) => {
        if (!over) ends.push(listenForMainAct(app), keepFocus());
      },
      // Those parts are not on the device: the finger does it all.
      () => undefined,
    );
    addEventListener('click', unlock);
    return () => {
      over = true;
      for (const end of ends) end();
      removeEventListener('click', unlock);
    };
  }, [app]);
}
