import { useState } from 'preact/hooks';
import type { Given, Offer } from '../../app/gearFiles.ts';
import type { Rescued } from '../../app/rescue.ts';
import type { StoreFault } from '../../app/saving.ts';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import '../theme/base.css';
import { useWords } from '../words/words.ts';
import './CannotStart.css';

interface Props {
  /** What the storage refused; else the words of a mistake of our own, for a report. */
  readonly why: StoreFault | string;
  readonly onRetry: () => void;
  /**
   * Makes a file of what lies in the storage.
   *
   * @throws what the browser throws if the part that does it is not on the device.
   */
  readonly onRescue: () => Promise<Rescued>;
}

/** All there is when the app cannot start: why, the way to try again, and what is stored as a file. */
export function CannotStart({ why, onRetry, onRescue }: Props) {
  const { shell } = useWords();
  const [rescued, setRescued] = useState<Rescued | 'none' | 'coming'>('none');
  const ours = typeof why === 'string';
  const rescue = () => {
    setRescued('coming');
    onRescue().then(setRescued, () => setRescued({ how: 'failed' }));
  };
  const made = typeof rescued === 'string' ? null : rescued;
  return (
    <main class="cannot-start">
      <h1>{shell.appName}</h1>
      <Notice urgent>{ours ? shell.cannotStart : shell.cannotOpen[why.kind]}</Notice>
      {ours && <p>{why}</p>}
      <Button rank="main" onPress={onRetry}>
        {shell.tryAgain}
      </Button>
      {made && made.how !== 'ready' && <Notice urgent>{shell.rescued[made.how]}</Notice>}
      {made?.how === 'ready' ? (
        <Rescue offer={made.offer} />
      ) : (
        <Button field busy={rescued === 'coming'} onPress={rescue}>
          {shell.rescue}
        </Button>
      )}
      {(ours || why.kind === 'newer') && <a href="./?newest">{shell.openNewest}</a>}
    </main>
  );
}

/** Hands the file on. Without a sheet: those belong to the app, which has not started. */
function Rescue({ offer: ready }: { readonly offer: Offer | null }) {
  const { parts } = useWords();
  const [offer, setOffer] = useState(ready);
  const [given, setGiven] = useState<Given | null>(null);
  const give = async (from: Offer) => {
    const outcome = await from.give();
    setGiven(outcome);
    if (outcome.done === 'refused') setOffer(outcome.next);
  };
  if (offer === null) return <Notice urgent>{parts.noWayOut}</Notice>;
  if (given?.done === 'text') {
    return <textarea aria-label={parts.fileText} readOnly value={given.text} />;
  }
  return (
    <>
      <Button field onPress={() => void give(offer)}>
        {parts.give[offer.way]}
      </Button>
      <p role="status">{given ? parts.given[given.done] : parts.fileReady(offer.name)}</p>
    </>
  );
}
