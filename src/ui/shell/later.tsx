import type { ComponentChildren, FunctionComponent } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Place } from '../../app/navigation.ts';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { Screen } from '../parts/Screen.tsx';
import { useWords } from '../words/words.ts';

/** Something that comes with a later part. */
interface Later<P> {
  readonly Content: FunctionComponent<P>;
  /** Brings the part in before it is shown. */
  readonly fetch: () => void;
}

/**
 * What is not needed in the field, in a part of its own: the first script stays small and starts
 * fast in the cold. The part lies in the offline store like the rest, so this is a short wait and
 * no network.
 *
 * @param Around what stands around the wait, and around the word that the part is missing.
 */
export function later<P extends object>(
  Around: FunctionComponent<{ readonly children: ComponentChildren }>,
  load: () => Promise<FunctionComponent<P>>,
): Later<P> {
  let loaded: FunctionComponent<P> | null = null;
  let coming: Promise<unknown> | null = null;
  const fetch = (): Promise<unknown> => {
    coming ??= load().then(
      (content) => {
        loaded = content;
      },
      (cause: unknown) => {
        coming = null;
        throw cause;
      },
    );
    return coming;
  };

  function Content(props: P) {
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
      return <Loaded {...props} />;
    }
    return (
      <Around>
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
      </Around>
    );
  }
  // A failed early fetch says nothing: the content itself will ask again and say so.
  return { Content, fetch: () => void fetch().catch(() => undefined) };
}

/** A whole screen of a place that comes later: until then its empty frame. */
export const laterScreen = (place: Place, load: () => Promise<FunctionComponent>): Later<object> =>
  later(({ children }) => {
    const { shell } = useWords();
    return <Screen title={shell.place[place]}>{children}</Screen>;
  }, load);
