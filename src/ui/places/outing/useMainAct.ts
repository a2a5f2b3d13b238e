import { useEffect } from 'preact/hooks';
import { useApp } from '../../shell/useApp.ts';

/** What a run hears besides its buttons: any tap lets sound out, and keys press the one act. */
export function useMainAct(): void {
  const app = useApp();
  useEffect(() => {
    const { unlock } = app.cues;
    let end = (): void => undefined;
    let over = false;
    import('../../shell/mainActKeys.ts').then(
      ({ listenForMainAct }) => {
        if (!over) end = listenForMainAct(app);
      },
      // That part is not on the device: the finger does it all.
      () => undefined,
    );
    addEventListener('click', unlock);
    return () => {
      over = true;
      end();
      removeEventListener('click', unlock);
    };
  }, [app]);
}
