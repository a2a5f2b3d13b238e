import { isFault } from '../../../gear/read.ts';
import type { Site } from '../../../light/site.ts';
import { isRefusal, type Refusal } from '../../../science/refusal.ts';
import { parseDegrees, parseHeight } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useLightWords } from '../../words/light.ts';
import { coordinatesText, typedCoordinates } from './coordinates.ts';
import { useLight } from './useLight.ts';
import { ZoneFields } from './ZoneFields.tsx';

/** Everything that is stated of a site. */
export function SiteScreen({ site }: { readonly site: Site }) {
  const { navigation } = useApp();
  const desk = useLight();
  const { light, parts } = useLightWords();
  const commit = (part: Partial<Site>): string | null => {
    const fault = desk.change(site.id, part);
    return fault && light.fault(fault);
  };
  const commitNumber = <T extends number>(
    value: T | Refusal,
    part: (value: T) => Partial<Site>,
  ): string | null => (isRefusal(value) ? parts.notANumber : commit(part(value)));
  return (
    <Screen inner title={site.name} tag={site.invented && <InventedTag />}>
      <Section title={light.where}>
        <div class="form">
          <TextField
            label={light.name}
            value={site.name}
            onCommit={(text) => commit({ name: text.trim() })}
          />
          <TextField
            label={light.coordinates}
            hint={light.coordinatesHint}
            value={coordinatesText({ lat: site.latDeg, lon: site.lonDeg })}
            onCommit={(text) => {
              const read = typedCoordinates(text);
              if (isFault(read)) return light.fault(read);
              void desk.move(site.id, read);
              return null;
            }}
          />
          <ZoneFields site={site} onChange={(zone) => commit({ zone })} />
          <NumberField
            label={light.height}
            unit={light.metres}
            value={site.heightM}
            onCommit={(value) => commitNumber(parseHeight(value), (heightM) => ({ heightM }))}
          />
          <NumberField
            label={light.ridge}
            hint={light.ridgeHint}
            unit={light.degrees}
            value={site.ridgeDeg}
            onCommit={(value) => commitNumber(parseDegrees(value), (ridgeDeg) => ({ ridgeDeg }))}
          />
          <TextField
            long
            label={light.note}
            hint={light.noteHint}
            value={site.note}
            onCommit={(text) => commit({ note: text })}
          />
        </div>
      </Section>
      <Section title={light.siteActs}>
        <div class="acts">
          <Button
            onPress={() => {
              const copied = desk.copy(site.id, light.copyOf(site.name));
              if (!isFault(copied)) navigation.go('light', copied, 'site');
            }}
          >
            {light.copy}
          </Button>
          <Button
            onPress={() => {
              navigation.replace('light');
              desk.remove(site.id);
            }}
          >
            {light.delete}
          </Button>
        </div>
      </Section>
    </Screen>
  );
}
