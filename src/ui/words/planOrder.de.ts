import type { Alike } from './alike.ts';
import type { planOrder as en } from './planOrder.en.ts';

const count = (number: number, one: string, more: string): string =>
  `${number} ${number === 1 ? one : more}`;

/** Words for the order of frames. Stops, durations and clock times come in as they are written. */
export const planOrder: Alike<typeof en> = {
  mounting: 'Wie die Gespanne stehen',
  mountings: {
    swaps: {
      label: 'Ein Stativ, im Wechsel',
      note: 'Ein Gespann darf so oft wiederkommen, wie die Reihenfolge es will.',
    },
    'side-by-side': {
      label: 'Nebeneinander',
      note: 'Alle Gespanne stehen und starten zugleich. Auf die Parallaxe achten.',
    },
    'one-rig-at-a-time': {
      label: 'Eines nach dem anderen',
      note: 'Ein Gespann, das vom Stativ ist, kommt nicht wieder.',
    },
  },
  allowancesInShort: (swap: string, reframe: string, dial: string, settle: string, write: string) =>
    `Wechsel ${swap}, neu ausrichten ${reframe}, einstellen ${dial}, beruhigen ${settle}, schreiben ${write}`,
  reframe: 'Neu ausrichten',
  reframeHint: 'Den Ausschnitt nach einem Wechsel wiederfinden.',

  orders: 'Reihenfolgen',
  choose: 'Reihenfolge wählen',
  figuresAre: 'Schwund und Wärme, in Stufen, bleiben so im Paar mit dem größten Fehler.',
  passes: (passes: string) => `${passes} ${passes === '1' ? 'Durchgang' : 'Durchgänge'}`,
  ownPasses: 'eigene Durchgänge',
  fade: 'Schwund',
  heat: 'Wärme',
  swaps: () => 'Wechsel',
  time: 'Zeit',
  unknown: 'unbekannt',
  ownOrder: 'Eigene Reihenfolge',
  ownNote: 'Wie von Hand geordnet.',
  computed: 'Berechnete Reihenfolge',
  proven: 'Keine Reihenfolge dieser Aufnahmen ist billiger.',
  nearest: (least: string) =>
    `Durch Suche gefunden. Kein Tausch und kein Verschieben von Einsätzen macht sie billiger; keine Reihenfolge kostet weniger als ${least}.`,
  startsAt: (clock: string) => `Gerechnet für einen Beginn um ${clock}.`,
  lightUnknown:
    'Das Licht ist nicht bekannt, der Schwund bleibt unbekannt. Wärme, Wechsel und Zeit entscheiden allein.',
  lightComputing: 'Das Licht wird berechnet.',

  look: 'Billigste Reihenfolge suchen',
  lookAgain: 'Noch einmal suchen',
  lookHint: (turns: number) =>
    `Geht die Reihenfolgen von ${count(turns, 'Einsatz', 'Einsätzen')} durch. Nichts ändert sich, bevor eine gewählt ist.`,
  looking: (percent: string) => `Die billigste Reihenfolge wird gesucht, ${percent} % fertig`,
  cancel: 'Abbrechen',
  ended: 'Vorzeitig beendet. Hier steht, was bis dahin gefunden war.',
  outdated: 'Die Liste hat sich geändert, seit eine Reihenfolge gesucht wurde.',
  failed:
    'Der Teil, der Reihenfolgen sucht, ist nicht angelaufen. Die benannten Reihenfolgen stehen, wie sie sind. Die App einmal mit Netz öffnen, dann noch einmal suchen.',
  refusals: {
    'locked-against-mounting':
      'Was festgehalten ist, bringt ein Gespann auf das Stativ zurück. Einen Satz freigeben oder die Gespanne wechseln lassen.',
    'no-frames': 'Noch gibt es keinen Einsatz zu ordnen.',
  },
  refused: 'Diese Aufnahmen lassen sich nicht ordnen. Erst richten, was am Plan nicht stimmt.',
  anotherList:
    'Die Liste hat sich geändert, seit ihre Reihenfolge gemacht wurde. Einsätze, die fehlen, werden übergangen, neue kommen zuletzt.',
  keepIt: 'So behalten',

  costs: 'Was eine Reihenfolge kostet',
  costsInShort: (own: string) => `Diese Reihenfolge ${own} Stufen`,
  costsAgainst: (own: string, computed: string) =>
    `Diese Reihenfolge ${own}, die berechnete ${computed} Stufen`,
  costsAre:
    'Alles zählt als so viele Stufen, um die ein Paar unfair ist. Die Gewichte sind unsere Wahl.',
  part: 'Teil',
  thisOrder: 'Diese',
  computedShort: 'Be\u00adrechnet',
  parts: {
    fade: (worth: string) => `Schwund, ${worth} je Stufe in jedem Paar`,
    heat: (worth: string) => `Wärme, ${worth} je Stufe Dunkelstrom in jedem Paar`,
    outside: (worth: string) => `Außerhalb seiner Minuten, ${worth} je Minute`,
    swaps: (worth: string) => `Wechsel, je ${worth}`,
    wall: (worth: string) => `Zeit, ${worth} je Minute`,
  },
  sum: 'Summe',
  outsideBy: (set: string, minutes: string) =>
    `${set} liegt ${minutes} min außerhalb seines Lichts.`,

  trade: 'Wenige Wechsel oder fair',
  tradeAxis: 'Unfair, Stufen',
  tradeIs: 'Unfair: Schwund, Wärme und Minuten außerhalb, wie die Kosten sie gewichten.',
  nothingToTrade: (swaps: string) =>
    `Die fairste Reihenfolge hat auch die wenigsten Wechsel: ${swaps}.`,
  swapsOf: (swaps: number) => (swaps === 0 ? 'kein Wechsel' : `${swaps} Wechsel`),
  point: (swaps: string, unfair: string) => `${swaps}, ${unfair} Stufen unfair`,
  fewest: 'Wenigste Wechsel',
  fairest: 'Fairste',
  between: 'Dazwischen',
  fewer: 'Weniger Wechsel',
  fairer: 'Fairer',
  tradeOf: (swaps: string, unfair: string, time: string) =>
    `: ${swaps}, ${time}, ${unfair} Stufen unfair.`,
  againstFairest: (fewer: string, more: string) =>
    `Gegen die fairste: ${fewer} weniger, ${more} Stufen unfairer.`,
  takeIt: 'Diese Reihenfolge nehmen',
  taken: 'Diese Reihenfolge gilt.',
  tradeTable: 'Die Abwägung als Tabelle',
  tradeTableInShort: (points: number) => count(points, 'Reihenfolge', 'Reihenfolgen'),
  columns: { swaps: 'Wechsel', unfair: 'Unfair', time: 'Zeit' },

  left: 'Was in jedem Paar bleibt',
  leftIs:
    'Schwund: Licht, das die Reihenfolge nicht aufhebt. Ein Spiegel hebt den gleichmäßigen Teil auf, ein längerer auch die Krümmung. Wärme: Dunkelstrom nach dem, was jedes Gespann hinter sich hat. Ein Spiegel hebt sie nicht auf; abwechselnd aufnehmen gleicht sie aus.',
  noPair: 'Noch gibt es kein Paar zu vergleichen.',
  fadeLeft: (fade: string, linear: string, curved: string) =>
    `Schwund ${fade}: gleichmäßiger Teil ${linear}, gekrümmter Teil ${curved}.`,
  fadeUnknown: 'Schwund unbekannt.',
  heatLeft: (heat: string) => `Wärme ${heat}.`,
  means: (other: string, fade: string | null, heat: string) =>
    `${other} bekommt ${fade === null ? '' : `${fade} und `}${heat}.`,
  light: (stops: string, more: boolean) => `${stops} Stufen ${more ? 'mehr' : 'weniger'} Licht`,
  sameLight: 'gleich viel Licht',
  dark: (stops: string, more: boolean) =>
    `${stops} Stufen ${more ? 'mehr' : 'weniger'} Dunkelstrom`,
  sameDark: 'gleich viel Dunkelstrom',

  turns: 'Einsätze',
  byHand: 'Von Hand umordnen',
  done: 'Fertig',
  turnOf: (rig: string, set: string, turn: number) => `${rig}, ${set}, Durchgang ${turn}`,
  allRigs: 'Alle Gespanne',
  turnNumber: (turn: number) => `Durchgang ${turn}`,
  held: 'fest',
  isHeld: (set: string) => `${set} ist festgehalten. Erst freigeben.`,
  wouldComeBack:
    'Das brächte ein Gespann auf das Stativ zurück. Den Einsatz unter denen seines Gespanns verschieben.',
  holdSets: 'Festgehaltene Sätze',
  holdHint:
    'Ihre Einsätze behalten ihre Plätze, wenn eine Reihenfolge gesucht wird und wenn andere verschoben werden.',
  noneHeld: 'keine',
  handCost: (cost: string, swaps: string, time: string) =>
    `Diese Reihenfolge kostet ${cost} Stufen: ${swaps}, ${time}.`,
  handAgainst: (difference: string) => `${difference} Stufen gegen die berechnete Reihenfolge.`,
  handSame: 'So billig wie die berechnete Reihenfolge.',
  handAlone: 'Die billigste Reihenfolge suchen, um zu vergleichen.',
};
