/** A picture made small, with its own size. */
export interface Small {
  readonly url: string;
  readonly wide: number;
  readonly high: number;
}

/** Which part of a frame both rigs show, of its width and its height. */
export interface Crop {
  readonly across: number;
  readonly up: number;
}

/**
 * A small picture with the common crop drawn in, both in one frame of reference, so that neither is
 * stretched. The crop is centred: the rigs point at one landmark. A picture that stands upright was
 * made with the frame turned.
 */
export function SmallPicture({
  small: { url, wide, high },
  crop,
  text,
}: {
  readonly small: Small;
  readonly crop: Crop | null;
  readonly text: string;
}) {
  const turned = high > wide;
  const across = (turned ? crop?.up : crop?.across) ?? 1;
  const up = (turned ? crop?.across : crop?.up) ?? 1;
  return (
    <figure>
      <svg
        class="rep-picture"
        viewBox={`0 0 ${wide} ${high}`}
        preserveAspectRatio="xMidYMid meet"
        role="img"
        aria-label={text}
      >
        <image href={url} width={wide} height={high} preserveAspectRatio="xMidYMid meet" />
        {crop !== null && (
          <rect
            class="rep-crop"
            x={(wide * (1 - across)) / 2}
            y={(high * (1 - up)) / 2}
            width={wide * across}
            height={high * up}
          />
        )}
      </svg>
      <figcaption>{text}</figcaption>
    </figure>
  );
}

const SMALL_PX = 480;

/** Makes a picture small, as JPEG in a data URL; null where the browser cannot decode it. */
export async function madeSmall(file: Blob): Promise<Small | null> {
  try {
    // The browser turns it as its Exif says.
    const whole = await createImageBitmap(file);
    const scale = Math.min(1, SMALL_PX / Math.max(whole.width, whole.height));
    const [wide, high] = [Math.round(whole.width * scale), Math.round(whole.height * scale)];
    const canvas = document.createElement('canvas');
    canvas.width = wide;
    canvas.height = high;
    canvas.getContext('2d')?.drawImage(whole, 0, 0, wide, high);
    whole.close();
    return { url: canvas.toDataURL('image/jpeg', 0.8), wide, high };
  } catch {
    return null;
  }
}
