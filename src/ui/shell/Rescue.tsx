import { useState } from 'preact/hooks';
import type { Given, Offer } from '../../app/gearFiles.ts';
import { type Rescued, type RescueWorld, rescueStorage } from '../../app/rescue.ts';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { useRescueWords } from '../words/rescue.ts';
import { useWords } from '../words/words.ts';

/** Makes a file of what lies in the storage, and hands it on. */
export function Rescue({ world }: { readonly world: RescueWorld }) {
  const say = useRescueWords();
  const [rescued, setRescued] = useState<Rescued | 'none' | 'coming'>('none');
  const rescue = async () => {
    setRescued('coming');
    setRescued(await rescueStorage(world));
  };
  const made = typeof rescued === 'string' ? null : rescued;
  if (made?.how === 'ready') return <GiveHere offer={made.offer} />;
  return (
    <>
      {made && <Notice urgent>{say[made.how]}</Notice>}
      <Button field busy={rescued === 'coming'} onPress={() => void rescue()}>
        {say.act}
      </Button>
    </>
  );
}

/** Hands a file on. Without a sheet: those belong to the app, which has not started. */
function GiveHere({ offer: ready }: { readonly offer: Offer | null }) {
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
