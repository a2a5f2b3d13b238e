import { cues } from './cues.de.ts';
import { figures } from './figures.de.ts';
import { log } from './log.de.ts';
import { outing } from './outing.de.ts';
import { parts } from './parts.de.ts';
import { safety } from './safety.de.ts';
import { shell } from './shell.de.ts';
import { spoken } from './spoken.de.ts';
import type { Words } from './words.ts';

/*
 * Glossary: our own words, in every German file the same. Short sentences, no form of address where
 * one can be left out, no exclamation mark; words of the trade as German photographers use them
 * (Gehäuse, Objektiv, Stativ, Auslöser, Blende, Belichtungszeit, Blendenstufe, Dunkelbild).
 *
 *   gear            Technik          as the name of the place; the bar has room for eight letters
 *   rig             Gespann          a body with the lens on it
 *   set             Satz, Sätze      the frames of one intent
 *   visit, turn     Einsatz          a rig's frames in one go
 *   pass            Durchgang        once through the rigs
 *   repeat          Wiederholung     the same frame without touching the rig
 *   retake          neuer Versuch    the same frame made again
 *   frame           Aufnahme
 *   hold            Vorgabe          what a set keeps equal
 *   difference      Unterschied
 *   target          Soll
 *   residual        Rest             never for resting
 *   even-up         Ausgleich
 *   offset          Versatz          of a rig against its marks
 *   fade            Schwund          of the light
 *   rest            Pause            of a sensor
 *   pause           Unterbrechung    of an outing
 *   warm-up         Aufwärmen
 *   swap            Wechsel          of rigs on the tripod
 *   outing          Tour
 *   journal         Journal
 *   log             Logbuch
 *   ledger          Bilanz
 *   practice outing Übungstour
 *   shot list       Aufnahmeliste
 *   dark frame      Dunkelbild       by the camera itself
 *   clock frame     Uhrbild          of the phone's clock
 *   capped dark     Dunkelaufnahme   with the cap on
 *   capped series   Dunkelreihe
 *   allowances      Zeitbedarf
 *   stop            Stufe            in full Blendenstufe
 *   EV              EV               as cameras and meters show it
 */

/** German. A part of its own: it comes when German is chosen, before the first screen is drawn. */
export const de: Words = {
  language: 'de',
  format: figures,
  cues,
  log,
  outing,
  parts,
  safety,
  shell,
  spoken,
};
