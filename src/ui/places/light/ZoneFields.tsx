import { useEffect, useState } from 'preact/hooks';
import type { Site } from '../../../light/site.ts';
import { offsetAt, sameZone, type Zone } from '../../../light/zones.ts';
import { minutesEast } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { Pick } from '../../parts/Pick.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useLightWords } from '../../words/light.ts';
import { zoneWords } from './clock.ts';
import { useLight } from './useLight.ts';

const FIXED = '';

/** Every zone that this browser knows; the one in use stands first if it is not among them. */
function zoneNames(inUse: Zone): readonly string[] {
  const known = Intl.supportedValuesOf('timeZone');
  return inUse.kind === 'iana' && !known.includes(inUse.name) ? [inUse.name, ...known] : known;
}

/** Minutes ahead of UTC as a field holds them: '5:45', '-3:30'. */
const offsetText = (minutes: number): string =>
  `${minutes < 0 ? '-' : ''}${Math.floor(Math.abs(minutes) / 60)}:${String(Math.abs(minutes) % 60).padStart(2, '0')}`;

/** Minutes ahead of UTC from '5:45', '-3:30', '+2'; null if it is none, or none on earth. */
function readOffset(typed: string): number | null {
  const parts = /^(?:UTC)?\s*([+\-−]?)\s*(\d{1,2})(?::([0-5]\d))?$/i.exec(typed.trim());
  if (!parts) return null;
  const minutes = Number(parts[2]) * 60 + Number(parts[3] ?? 0);
  if (minutes > 14 * 60) return null;
  return parts[1] === '' || parts[1] === '+' ? minutes : -minutes || 0;
}

interface Props {
  readonly site: Site;
  readonly onChange: (zone: Zone) => string | null;
}

/** What the clocks at a site show: proposed from its coordinates, always to be changed. */
export function ZoneFields({ site, onChange }: Props) {
  const desk = useLight();
  const words = useLightWords();
  const { light } = words;
  const { zone, latDeg, lonDeg } = site;
  const [proposed, setProposed] = useState<Zone | null>(null);
  useEffect(() => {
    let gone = false;
    void desk.proposedZone({ lat: latDeg, lon: lonDeg }).then((found) => {
      if (!gone) setProposed(found);
    });
    return () => {
      gone = true;
    };
  }, [desk, latDeg, lonDeg]);
  return (
    <>
      <Pick
        label={light.zone}
        hint={light.zoneHint}
        value={zone.kind === 'iana' ? zone.name : FIXED}
        options={[
          { value: FIXED, label: light.fixedZone },
          ...zoneNames(zone).map((name) => ({ value: name, label: name })),
        ]}
        onPick={(name) =>
          onChange(
            name === FIXED
              ? { kind: 'fixed', offsetMin: offsetAt(zone, desk.now.peek()) }
              : { kind: 'iana', name },
          )
        }
      />
      {zone.kind === 'fixed' && (
        <TextField
          label={light.offset}
          hint={light.offsetHint}
          value={offsetText(zone.offsetMin)}
          onCommit={(typed) => {
            const minutes = readOffset(typed);
            return minutes === null
              ? light.offsetUnreadable
              : onChange({ kind: 'fixed', offsetMin: minutesEast(minutes) });
          }}
        />
      )}
      {proposed && !sameZone(zone, proposed) && (
        <div class="light-proposed">
          <p>{light.zoneProposed(zoneWords(proposed, words))}</p>
          <Button onPress={() => onChange(proposed)}>{light.takeZone}</Button>
        </div>
      )}
    </>
  );
}
