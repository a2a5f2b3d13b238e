import type { FunctionComponent } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Place } from '../../app/navigation.ts';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { Screen } from '../parts/Screen.tsx';
import { useWords } from '../words/words.ts';

/**
 * A place that is not needed in the field, in a part of its own: the first script
 * stays small and starts fast in the cold. The part lies in the offline store like
 * the rest, so this is a short wait and no network.
 */
export function later(
  place: Place,
  load: () => Promise<FunctionComponent>,
): { readonly Content: FunctionComponent; readonly fetch: () => void } {
  let loaded: FunctionComponent | null = null;
  let coming: Promise<FunctionComponent> | null = null;
  const fetch = (): Promise<FunctionComponent> => {
    coming ??= load().then(
      (content) => {
        loaded = content;
        return content;
      },
      (cause: unknown) => {
        coming = null;
        throw cause;
      },
    );
    return coming;
  };

  function Content() {
    const { shell } = useWords();
    const [tries, setTries] = useState(0);
    const [state, setState] = useState<'coming' | 'here' | 'failed'>(loaded ? 'here' : 'coming');
    // Each try fetches anew.
    useEffect(() => {
      let gone = false;
      const say = (next: 'here' | 'failed') => {
        if (!gone) setState(next);
      };
      fetch().then(
        () => say('here'),
        () => say('failed'),
      );
      return () => {
        gone = true;
      };
    }, [tries]);
    if (loaded && state === 'here') {
      const Loaded = loaded;
      return <Loaded />;
    }
    return (
      <Screen title={shell.place[place]}>
        {state === 'failed' && (
          <Notice
            urgent
            acts={
              <Button
                onPress={() => {
                  setState('coming');
                  setTries(tries + 1);
                }}
              >
                {shell.tryAgain}
              </Button>
            }
          >
            {shell.partMissing}
          </Notice>
        )}
      </Screen>
    );
  }
  // A failed early fetch says nothing: the place itself will ask again and say so.
  return { Content, fetch: () => void fetch().catch(() => undefined) };
}
