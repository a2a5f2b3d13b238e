import type { Degrees, Metres } from '../science/units.ts';

/** Where the phone is, or why it does not say. */
export type PositionAnswer =
  | {
      readonly kind: 'here';
      readonly latDeg: Degrees;
      readonly lonDeg: Degrees;
      /** Null where the phone does not know its height. */
      readonly heightM: Metres | null;
      /** Nineteen times in twenty it is no farther off than this. */
      readonly withinM: Metres;
    }
  /** The user, the system or the page's address forbids it. */
  | { readonly kind: 'refused' }
  /** This browser has no such service. */
  | { readonly kind: 'absent' }
  /** The phone looked and found nothing: no satellites, no network. */
  | { readonly kind: 'not-found' }
  /** No answer in time: it still looks, or its question still stands on the screen. */
  | { readonly kind: 'timeout' };

export interface Position {
  /** Asks once. The browser may ask the user in turn: say why before. */
  ask(): Promise<PositionAnswer>;
}

/** The sky of a site is the same a mile off, so a coarse and recent position will do (our choice). */
const COARSE: PositionOptions = {
  enableHighAccuracy: false,
  maximumAge: 600_000,
  timeout: 20_000,
};
/** The browser's own limit does not count while its question to the user is open (our choice). */
const LIMIT_MS = 60_000;

/** The browser's service, as far as it is used. */
export type Geolocating = Pick<Geolocation, 'getCurrentPosition'>;

/** @param geolocation undefined where the browser has none. */
export const browserPosition = (geolocation: Geolocating | undefined): Position => ({
  ask: () =>
    new Promise((answer) => {
      if (geolocation === undefined) {
        answer({ kind: 'absent' });
        return;
      }
      const timer = setTimeout(answer, LIMIT_MS, { kind: 'timeout' });
      const end = (given: PositionAnswer): void => {
        clearTimeout(timer);
        answer(given);
      };
      geolocation.getCurrentPosition(
        ({ coords }) =>
          end({
            kind: 'here',
            latDeg: coords.latitude as Degrees,
            lonDeg: coords.longitude as Degrees,
            heightM: coords.altitude as Metres | null,
            withinM: coords.accuracy as Metres,
          }),
        ({ code }) => end({ kind: FAULTS[code] ?? 'not-found' }),
        COARSE,
      );
    }),
});

/** By the codes of the W3C's GeolocationPositionError. */
const FAULTS: Readonly<Record<number, 'refused' | 'not-found' | 'timeout'>> = {
  1: 'refused',
  2: 'not-found',
  3: 'timeout',
};
