import type { Mounting } from '../../plan/plan.ts';

const count = (number: number, one: string, more: string): string =>
  `${number} ${number === 1 ? one : more}`;

/** Words for the order of frames. Stops, durations and clock times come in as they are written. */
export const planOrder = {
  /* How the rigs stand, and what hands take. */
  mounting: 'How the rigs stand',
  mountings: {
    swaps: {
      label: 'One tripod, swapped',
      note: 'A rig may come back as often as the order asks.',
    },
    'side-by-side': {
      label: 'Side by side',
      note: 'All rigs stand and start together. Watch the parallax.',
    },
    'one-rig-at-a-time': {
      label: 'One rig at a time',
      note: 'A rig that has left the tripod does not come back.',
    },
  } satisfies Record<Mounting, { label: string; note: string }>,
  allowancesInShort: (swap: string, reframe: string, dial: string, settle: string, write: string) =>
    `Swap ${swap}, re-framing ${reframe}, dials ${dial}, settle ${settle}, write ${write}`,
  reframe: 'Re-framing',
  reframeHint: 'Finding the framing again after a swap.',

  /* The orders. */
  orders: 'Orders',
  choose: 'Choose an order',
  figuresAre: 'Fade and heat, in stops, are those left in the pair that is off most.',
  passes: (passes: string) => `${passes} ${passes === '1' ? 'pass' : 'passes'}`,
  ownPasses: 'own passes',
  fade: 'fade',
  heat: 'heat',
  swaps: (swaps: number) => (swaps === 1 ? 'swap' : 'swaps'),
  time: 'time',
  unknown: 'unknown',
  ownOrder: 'Own order',
  ownNote: 'As you arranged it.',
  computed: 'Computed order',
  proven: 'No order of these frames is cheaper.',
  nearest: (least: string) =>
    `Found by search. No exchange or move of turns makes it cheaper; no order costs less than ${least}.`,
  startsAt: (clock: string) => `Reckoned for a start at ${clock}.`,
  lightUnknown:
    'The light is not known, so the fade stays unknown. Heat, swaps and time alone decide.',
  lightComputing: 'Working out the light.',

  /* The search. */
  look: 'Look for the cheapest order',
  lookAgain: 'Look again',
  lookHint: (turns: number) =>
    `Goes through the orders of ${count(turns, 'turn', 'turns')}. Nothing changes until you take one.`,
  looking: (percent: string) => `Looking for the cheapest order, ${percent} % done`,
  cancel: 'Cancel',
  ended: 'Ended early. What was found by then stands here.',
  outdated: 'The list has changed since an order was looked for.',
  failed:
    'The part that looks for orders did not start. The named orders stand as they are. Open the app once online, then look again.',
  refusals: {
    'locked-against-mounting':
      'What is held in place brings a rig back to the tripod. Let a set go, or let the rigs be swapped.',
    'no-frames': 'There is no turn to put in order yet.',
  } as Readonly<Record<string, string>>,
  refused: 'These frames cannot be put in order. Put right what the plan says is wrong.',
  anotherList:
    'The list has changed since its order was made. Turns that are gone are passed over, new ones come last.',
  keepIt: 'Keep it as it stands',

  /* The cost. */
  costs: 'What an order costs',
  costsInShort: (own: string) => `This order ${own} stop`,
  costsAgainst: (own: string, computed: string) =>
    `This order ${own}, the computed ${computed} stop`,
  costsAre:
    'Each thing counts as so many stops by which a pair is unfair. The worths are our choice.',
  part: 'Part',
  thisOrder: 'This order',
  computedShort: 'Com\u00adputed',
  parts: {
    fade: (worth: string) => `Fade, ${worth} a stop in each pair`,
    heat: (worth: string) => `Heat, ${worth} a stop of dark current in each pair`,
    outside: (worth: string) => `Outside its minutes, ${worth} a minute`,
    swaps: (worth: string) => `Swaps, ${worth} each`,
    wall: (worth: string) => `Time, ${worth} a minute`,
  },
  sum: 'Sum',
  outsideBy: (set: string, minutes: string) => `${set} lies ${minutes} min outside its light.`,

  /* Between few swaps and fairness. */
  trade: 'Few swaps or fair',
  tradeAxis: 'Unfair, stops',
  tradeIs: 'Unfair: fade, heat and minutes outside, as the cost weighs them.',
  nothingToTrade: (swaps: string) => `The fairest order has the fewest swaps as well: ${swaps}.`,
  swapsOf: (swaps: number) => (swaps === 0 ? 'no swap' : count(swaps, 'swap', 'swaps')),
  point: (swaps: string, unfair: string) => `${swaps}, ${unfair} stop unfair`,
  fewest: 'Fewest swaps',
  fairest: 'Fairest',
  between: 'In between',
  fewer: 'Fewer swaps',
  fairer: 'Fairer',
  tradeOf: (swaps: string, unfair: string, time: string) =>
    `: ${swaps}, ${time}, ${unfair} stop unfair.`,
  againstFairest: (fewer: string, more: string) =>
    `Against the fairest: ${fewer} fewer, ${more} stop more unfair.`,
  takeIt: 'Take this order',
  taken: 'This order is taken.',
  tradeTable: 'The trade as a table',
  tradeTableInShort: (points: number) => count(points, 'order', 'orders'),
  columns: { swaps: 'Swaps', unfair: 'Unfair', time: 'Time' },

  /* What is left. */
  left: 'What is left in each pair',
  leftIs:
    'Fade: light that the order does not cancel. A mirror cancels its steady part, a longer mirror its curve as well. Heat: dark current, by what each rig has behind it. A mirror does not cancel it; turn and turn about evens it.',
  noPair: 'There is no pair to compare yet.',
  fadeLeft: (fade: string, linear: string, curved: string) =>
    `Fade ${fade}: steady part ${linear}, curved part ${curved}.`,
  fadeUnknown: 'Fade unknown.',
  heatLeft: (heat: string) => `Heat ${heat}.`,
  means: (other: string, fade: string | null, heat: string) =>
    `${other} gets ${fade === null ? '' : `${fade} and `}${heat}.`,
  light: (stops: string, more: boolean) => `${stops} stop ${more ? 'more' : 'less'} light`,
  sameLight: 'the same light',
  dark: (stops: string, more: boolean) => `${stops} stop ${more ? 'more' : 'less'} dark current`,
  sameDark: 'the same dark current',

  /* By hand. */
  turns: 'Turns',
  byHand: 'Rearrange by hand',
  done: 'Done',
  turnOf: (rig: string, set: string, turn: number) => `${rig}, ${set}, pass ${turn}`,
  allRigs: 'All rigs',
  turnNumber: (turn: number) => `pass ${turn}`,
  held: 'held',
  isHeld: (set: string) => `${set} is held in place. Let it go first.`,
  wouldComeBack: 'That would bring a rig back to the tripod. Move the turn among its rig’s own.',
  holdSets: 'Sets held in place',
  holdHint: 'Their turns keep their places when an order is looked for and when others are moved.',
  noneHeld: 'none',
  handCost: (cost: string, swaps: string, time: string) =>
    `This order costs ${cost} stop: ${swaps}, ${time}.`,
  handAgainst: (difference: string) => `${difference} stop against the computed order.`,
  handSame: 'As cheap as the computed order.',
  handAlone: 'Look for the cheapest order to compare it.',
};
