import { useRef, useState } from 'preact/hooks';
import { isFault } from '../../../gear/read.ts';
import { siteFields } from '../../../light/parse.ts';
import { SITE_DEFAULTS, type Site } from '../../../light/site.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useDrafts } from '../../shell/useDrafts.ts';
import { useLightWords } from '../../words/light.ts';
import { coordinatesText, typedCoordinates } from './coordinates.ts';
import { PositionButton } from './PositionButton.tsx';
import { useLight } from './useLight.ts';

/** The two things of a site that nobody can guess: what it is called and where it is. */
export function NewSite() {
  const { navigation, sites } = useApp();
  const drafts = useDrafts();
  const desk = useLight();
  const { light } = useLightWords();
  const draft = drafts.current.value.newSite;
  const height = useRef<Site['heightM']>(SITE_DEFAULTS.heightM);
  const [refusal, setRefusal] = useState<string | null>(null);

  const save = async (): Promise<string | null> => {
    const { name, coordinates } = drafts.current.peek().newSite;
    if (name.trim() === '') return light.nameFirst;
    if (coordinates.trim() === '') return light.coordinatesFirst;
    const at = typedCoordinates(coordinates);
    if (isFault(at)) return light.fault(at);
    const added = await desk.add({ name, ...at, heightM: height.current });
    if (isFault(added)) return light.fault(added);
    drafts.clear('newSite');
    sites.use(added);
    navigation.replace('light', added);
    return null;
  };

  return (
    <Screen
      inner
      title={light.newSite}
      foot={
        <>
          {refusal && <Notice urgent>{refusal}</Notice>}
          <Button rank="main" onPress={() => void save().then(setRefusal)}>
            {light.saveSite}
          </Button>
        </>
      }
    >
      <div class="form">
        <TextField
          label={light.name}
          hint={light.nameHint}
          value={draft.name}
          onCommit={(text) => {
            const read = siteFields.name(text.trim());
            if (isFault(read)) return light.fault(read);
            drafts.change('newSite', { name: read });
            return null;
          }}
        />
        <PositionButton
          onFound={(at, heightM) => {
            height.current = heightM ?? SITE_DEFAULTS.heightM;
            drafts.change('newSite', { coordinates: coordinatesText(at) });
          }}
        />
        <TextField
          label={light.coordinates}
          hint={light.coordinatesHint}
          value={draft.coordinates}
          onCommit={(text) => {
            const read = typedCoordinates(text);
            if (isFault(read)) return light.fault(read);
            drafts.change('newSite', { coordinates: text.trim() });
            return null;
          }}
        />
        <p>{light.restFollows}</p>
      </div>
    </Screen>
  );
}
