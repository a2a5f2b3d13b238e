import type { FileNames } from '../../../gear/body.ts';
import { BODY_DEFAULTS } from '../../../gear/defaults.ts';
import { fileName } from '../../../gear/files.ts';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useGearWords } from '../../words/gear.ts';
import { same } from './same.ts';

/** How the body names its files. `onChange` returns one sentence to refuse it. */
export function FileNameFields({
  files,
  onChange,
}: {
  readonly files: FileNames;
  readonly onChange: (files: FileNames) => string | null;
}) {
  const { gear } = useGearWords();
  return (
    <Disclosure
      label={gear.files}
      stated={gear.filesStated(fileName(files, 1), fileName(files, files.rollsOverAfter))}
      isDefault={same(files, BODY_DEFAULTS.files)}
    >
      <TextField
        label={gear.prefix}
        value={files.prefix}
        onCommit={(prefix) => onChange({ ...files, prefix: prefix.trim() })}
      />
      <div class="pair">
        <NumberField
          label={gear.digits}
          value={files.digits}
          onCommit={(digits) =>
            // The counter runs out of digits where it did before, unless the owner says otherwise.
            onChange(
              files.rollsOverAfter === 10 ** files.digits - 1
                ? { ...files, digits, rollsOverAfter: 10 ** digits - 1 }
                : { ...files, digits },
            )
          }
        />
        <NumberField
          label={gear.rollsOver}
          value={files.rollsOverAfter}
          onCommit={(rollsOverAfter) => onChange({ ...files, rollsOverAfter })}
        />
      </div>
      <Switch
        label={gear.sharedNumber}
        on={files.rawAndJpegShareNumber}
        onChange={(rawAndJpegShareNumber) => onChange({ ...files, rawAndJpegShareNumber })}
      />
    </Disclosure>
  );
}
