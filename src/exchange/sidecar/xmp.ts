import type { CameraFile } from '../../outing/cameraFile.ts';
import type { Cell } from '../csv.ts';
import type { FrameRecord } from '../frameTable.ts';

/*
 * One frame as an XMP packet (ISO 16684-1) for what catalogues pictures: Exif's and TIFF's names for
 * what they have names for, Dublin Core for words, XMP's own for dates, and our namespace for the
 * columns of the frame table. Times and f-numbers are rationals, as Exif has them.
 */

/** Our namespace; its properties are described in `public/schema/evenfall-xmp.1.json`. */
export const NAMESPACE = 'urn:evenfall:xmp:1:';

const SPACES = {
  rdf: 'http://www.w3.org/1999/02/22-rdf-syntax-ns#',
  dc: 'http://purl.org/dc/elements/1.1/',
  xmp: 'http://ns.adobe.com/xap/1.0/',
  exif: 'http://ns.adobe.com/exif/1.0/',
  tiff: 'http://ns.adobe.com/tiff/1.0/',
  evenfall: NAMESPACE,
} as const;

/** What a sidecar is written from. */
export interface SidecarFrame {
  readonly record: FrameRecord;
  readonly file: CameraFile | null;
  /** Whether the name is a matched file's, or what the log expects of the body's counter. */
  readonly namedBy: 'file' | 'log';
}

/** What no text of XML may hold is left out: control characters, lone halves of a pair. */
const FORBIDDEN = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

const escaped = (text: string): string =>
  text
    .replace(FORBIDDEN, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('\r', '&#13;');

/** A figure as a fraction that reads back to six digits: 64 as 64/1, a tenth as 1/10. */
export function rational(value: number): string {
  if (Number.isInteger(value)) return `${value}/1`;
  const below = 1 / value;
  if (value < 1 && Math.abs(below - Math.round(below)) < 1e-6 * below) {
    return `1/${Math.round(below)}`;
  }
  const scale = 10 ** Math.max(0, Math.min(9, 6 - Math.floor(Math.log10(Math.abs(value)))));
  return `${Math.round(value * scale)}/${scale}`;
}

const simple = (name: string, value: string): string => `   <${name}>${escaped(value)}</${name}>`;
const inAlt = (name: string, value: string): string =>
  `   <${name}><rdf:Alt><rdf:li xml:lang="x-default">${escaped(value)}</rdf:li></rdf:Alt></${name}>`;
const inSeq = (name: string, value: string): string =>
  `   <${name}><rdf:Seq><rdf:li>${escaped(value)}</rdf:li></rdf:Seq></${name}>`;

/** As XMP writes simple values: True and False, figures with a point. */
const written = (cell: Exclude<Cell, null>): string =>
  typeof cell === 'boolean' ? (cell ? 'True' : 'False') : String(cell);

const numberIn = ({ record }: SidecarFrame, name: string): number | null => {
  const cell = record[name];
  return typeof cell === 'number' && cell > 0 ? cell : null;
};
const textIn = ({ record }: SidecarFrame, name: string): string | null => {
  const cell = record[name];
  return typeof cell === 'string' && cell !== '' ? cell : null;
};

/** The wall time of the shutter with its own zone: '2027-02-12T18:04:00.000+01:00'. */
function localTime(frame: SidecarFrame): string | null {
  const utc = textIn(frame, 'OpenedUtc');
  const offset = textIn(frame, 'OffsetTimeOriginal');
  if (utc === null || offset === null) return utc;
  const [, sign, hours = '0', minutes = '0'] = /^([+-])(\d+):(\d+)$/.exec(offset) ?? [];
  const ahead = (sign === '-' ? -1 : 1) * (60 * Number(hours) + Number(minutes));
  const local = new Date(Date.parse(utc) + ahead * 60_000).toISOString();
  return local.replace('Z', offset);
}

/**
 * The text of a frame's sidecar.
 *
 * @param written when, ISO 8601; `app` the version that wrote it.
 */
export function xmpOf(
  frame: SidecarFrame,
  stamp: { readonly app: string; readonly written: string },
): string {
  const { record, file, namedBy } = frame;
  const time = numberIn(frame, 'ExposureTime');
  const fNumber = numberIn(frame, 'FNumber');
  const iso = numberIn(frame, 'PhotographicSensitivity');
  const focal = numberIn(frame, 'FocalLength');
  const opened = localTime(frame);
  const title = textIn(frame, 'Set');
  const notes = textIn(frame, 'Notes');
  const lines = [
    ...(title === null ? [] : [inAlt('dc:title', title)]),
    ...(notes === null ? [] : [inAlt('dc:description', notes)]),
    simple('xmp:CreatorTool', `Evenfall ${stamp.app}`),
    simple('xmp:MetadataDate', stamp.written),
    ...(opened === null
      ? []
      : [simple('xmp:CreateDate', opened), simple('exif:DateTimeOriginal', opened)]),
    ...(time === null ? [] : [simple('exif:ExposureTime', rational(time))]),
    ...(fNumber === null ? [] : [simple('exif:FNumber', rational(fNumber))]),
    ...(iso === null ? [] : [inSeq('exif:ISOSpeedRatings', String(Math.round(iso)))]),
    ...(focal === null ? [] : [simple('exif:FocalLength', rational(focal))]),
    ...(file?.make ? [simple('tiff:Make', file.make)] : []),
    ...(file?.model ? [simple('tiff:Model', file.model)] : []),
    simple('evenfall:NamedBy', namedBy),
    ...Object.entries(record).flatMap(([name, cell]) =>
      cell === null || cell === '' ? [] : [simple(`evenfall:${name}`, written(cell))],
    ),
  ];
  const spaces = Object.entries(SPACES)
    .filter(([prefix]) => prefix !== 'rdf')
    .map(([prefix, uri]) => `\n    xmlns:${prefix}="${uri}"`)
    .join('');
  return [
    '<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>',
    '<x:xmpmeta xmlns:x="adobe:ns:meta/">',
    ` <rdf:RDF xmlns:rdf="${SPACES.rdf}">`,
    `  <rdf:Description rdf:about=""${spaces}>`,
    ...lines,
    '  </rdf:Description>',
    ' </rdf:RDF>',
    '</x:xmpmeta>',
    '<?xpacket end="w"?>',
    '',
  ].join('\n');
}
