import { useState } from 'preact/hooks';
import type { Given, Offer } from '../../app/gearFiles.ts';
import { useWords } from '../words/words.ts';
import { Button } from './Button.tsx';
import './GiveFile.css';
import { Notice } from './Notice.tsx';
import { Sheet } from './Sheet.tsx';

interface Props {
  readonly title: string;
  /** The file made ready before the sheet opens: the tap here must be the one that gives it. null = no way out. */
  readonly offer: Offer | null;
  readonly onClose: () => void;
}

/** Gets a file off the phone: shared, else downloaded, else as text to copy. */
export function GiveFile({ title, offer: ready, onClose }: Props) {
  const { parts } = useWords();
  const [offer, setOffer] = useState(ready);
  const [given, setGiven] = useState<Given | null>(null);
  const give = (from: Offer) => {
    void from.give().then((outcome) => {
      setGiven(outcome);
      if (outcome.done === 'refused') setOffer(outcome.next);
    });
  };
  return (
    <Sheet
      title={title}
      onClose={onClose}
      acts={
        offer && (
          <Button rank="main" field onPress={() => give(offer)}>
            {parts.give[offer.way]}
          </Button>
        )
      }
    >
      {offer ? <p>{parts.fileReady(offer.name)}</p> : <Notice urgent>{parts.noWayOut}</Notice>}
      {given?.done === 'text' ? (
        <textarea
          class="file-text"
          aria-label={parts.fileText}
          readOnly
          value={given.text}
          onFocus={(event) => event.currentTarget.select()}
        />
      ) : (
        <p role="status">{given && parts.given[given.done]}</p>
      )}
    </Sheet>
  );
}
