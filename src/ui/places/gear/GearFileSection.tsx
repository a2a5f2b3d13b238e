import { useState } from 'preact/hooks';
import type { Taken } from '../../../app/files.ts';
import { gearFiles, type Offer } from '../../../app/gearFiles.ts';
import { Button } from '../../parts/Button.tsx';
import { GiveFile } from '../../parts/GiveFile.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Section } from '../../parts/Section.tsx';
import { TakeFile } from '../../parts/TakeFile.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useGearWords } from '../../words/gear.ts';

/** Own gear to a file, and gear from a file. */
export function GearFileSection() {
  const { gear: kept, desks } = useApp();
  const { gear, notTaken } = useGearWords();
  const [offer, setOffer] = useState<Offer | null | 'closed'>('closed');
  const [taken, setTaken] = useState<Taken | null>(null);
  return (
    <Section title={gear.file}>
      <p>{gear.fileIs}</p>
      <div class="acts">
        {kept.hasOwn.value && (
          <Button onPress={() => setOffer(gearFiles(desks).offer())}>{gear.toFile}</Button>
        )}
        <TakeFile
          label={gear.fromFile}
          onFile={(file) => void gearFiles(desks).take(file).then(setTaken)}
        />
      </div>
      {taken && (
        <Notice urgent>{taken.how === 'taken' ? gear.taken(taken.brings) : notTaken(taken)}</Notice>
      )}
      {offer !== 'closed' && (
        <GiveFile title={gear.toFile} offer={offer} onClose={() => setOffer('closed')} />
      )}
    </Section>
  );
}
