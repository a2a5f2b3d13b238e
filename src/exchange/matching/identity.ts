import type { RigId } from '../../gear/ids.ts';
import type { Assembled } from '../../gear/rig.ts';
import type { CameraFile } from '../../outing/cameraFile.ts';
import { prefixOf } from './fileNumber.ts';
import type { Written } from './groups.ts';

/* How well what files say of their body suits a rig, as a cost. All figures are our choice. */

const NAME = { suits: 0, silent: 6, suitsAnother: 30 } as const;
const PREFIX = { suits: 0, silent: 2, suitsAnother: 8 } as const;
const PIXELS = { suits: 0, silent: 3, other: 8 } as const;
const FOCAL = { suits: 0, silent: 2, other: 8 } as const;

/** That files which suit a rig so well are none of this outing: somebody chose them for it. */
const SUITS_WELL = 10;
export const NONE_THOUGH_IT_SUITS = 20;

/** Whether a body's files are so much a rig's that they are hardly anybody else's. */
export const suitsWell = (identity: number): boolean => identity < SUITS_WELL;

/** Raw files show a rim of pixels more than the finished picture. */
const PIXELS_WITHIN = 0.03;
/** Focal lengths are engraved in round figures. */
const FOCAL_WITHIN = 0.06;

const letters = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');

/** Whether a body's name in Gear and the model in a file name one another. */
function namesSuit(name: string, { make, model }: Written): boolean {
  const [ours, theirs] = [letters(name), letters(model ?? '')];
  if (ours === '' || theirs === '') return false;
  return ours.includes(theirs) || `${letters(make ?? '')}${theirs}`.includes(ours);
}

const near = (a: number, b: number, within: number): boolean => Math.abs(a / b - 1) <= within;

/** What it costs to say that a rig took these files, by what they say of the body alone. */
export function identityCost(
  rig: Assembled,
  all: readonly Assembled[],
  group: Written,
  files: readonly CameraFile[],
): number {
  const others = all.filter((other) => other.rig.id !== rig.rig.id);
  const sample = group.files.map((place) => files[place] as CameraFile);
  return (
    nameCost(rig, others, group) +
    prefixCost(rig, others, sample) +
    pixelsCost(rig, sample) +
    focalCost(rig, sample)
  );
}

function nameCost(rig: Assembled, others: readonly Assembled[], group: Written): number {
  if (namesSuit(rig.body.name, group)) return NAME.suits;
  return others.some(({ body }) => namesSuit(body.name, group)) ? NAME.suitsAnother : NAME.silent;
}

function prefixCost(
  rig: Assembled,
  others: readonly Assembled[],
  files: readonly CameraFile[],
): number {
  const suits = ({ body }: Assembled): boolean =>
    body.files.prefix !== '' &&
    2 * files.filter(({ name }) => prefixOf(name) === body.files.prefix.toLowerCase()).length >
      files.length;
  if (suits(rig)) return PREFIX.suits;
  return others.some(suits) ? PREFIX.suitsAnother : PREFIX.silent;
}

function pixelsCost({ body }: Assembled, files: readonly CameraFile[]): number {
  const sized = files.filter(({ pixelsWide, pixelsHigh }) => pixelsWide && pixelsHigh);
  if (sized.length === 0) return PIXELS.silent;
  const long = Math.max(body.pixelsWide, body.pixelsHigh);
  const short = Math.min(body.pixelsWide, body.pixelsHigh);
  const suits = sized.filter(({ pixelsWide, pixelsHigh }) => {
    const [a, b] = [pixelsWide ?? 0, pixelsHigh ?? 0];
    return near(Math.max(a, b), long, PIXELS_WITHIN) && near(Math.min(a, b), short, PIXELS_WITHIN);
  });
  return 2 * suits.length > sized.length ? PIXELS.suits : PIXELS.other;
}

function focalCost({ lens }: Assembled, files: readonly CameraFile[]): number {
  const said = files.filter(({ focalMm }) => focalMm);
  if (said.length === 0) return FOCAL.silent;
  const suits = said.filter(({ focalMm }) => near(focalMm ?? 0, lens.focalMm, FOCAL_WITHIN));
  return 2 * suits.length > said.length ? FOCAL.suits : FOCAL.other;
}

/** Files of one body in two groups (with and without a serial number) say one make and model. */
export const mayBeOneBody = (a: Written, b: Written): boolean =>
  a.make?.toLowerCase() === b.make?.toLowerCase() &&
  a.model?.toLowerCase() === b.model?.toLowerCase() &&
  (a.serial === null || b.serial === null);

/** A rig, or none of the outing. */
export type Taker = RigId | null;
