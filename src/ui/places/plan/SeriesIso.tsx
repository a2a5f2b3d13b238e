import type { Assembled } from '../../../gear/rig.ts';
import { seriesIsos } from '../../../plan/heatSeries.ts';
import { Notice } from '../../parts/Notice.tsx';
import { Pick } from '../../parts/Pick.tsx';
import { usePlanWords } from '../../words/plan.ts';

interface Props {
  readonly rig: Assembled;
  /** Null if the dials of the body refuse. */
  readonly isoMark: string | null;
  readonly onPick: (isoMark: string) => void;
}

/** At which ISO a body is measured, and what of its profile would spoil the series. */
export function SeriesIso({ rig, isoMark, onPick }: Props) {
  const { format, plan } = usePlanWords();
  const { body } = rig;
  return (
    <>
      {isoMark !== null && (
        <Pick
          label={plan.seriesIso}
          hint={plan.seriesIsoHint}
          options={seriesIsos(rig).map((mark) => ({ value: mark, label: format.isoMark(mark) }))}
          value={isoMark}
          onPick={(picked) => {
            onPick(picked);
            return null;
          }}
        />
      )}
      {body.darkFrame.kind !== 'never' && <Notice>{plan.seriesOwnDark(body.name)}</Notice>}
    </>
  );
}
