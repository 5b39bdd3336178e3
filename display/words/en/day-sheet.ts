import type { Standing } from '../../day/sheet-bar.ts';

/** What the day sheet says. */
export const SHEET_WORDS = {
  title: 'The day on one line of time',
  grouping: 'In rows',
  byDough: 'By dough',
  byResource: 'By machine and hands',
  zoom: 'Look at',
  zooms: { fit: 'Whole day', fourHours: '4 hours', hour: '1 hour' },
  toNow: 'To NOW',
  now: 'NOW',
  orders: 'Orders',
  legend: 'What the shapes mean',
  emptyTitle: 'Nothing on this day yet',
  emptyMore: 'Orders, doughs and what is planned show here.',
  noPlan: 'No plan is kept: what is ahead is reckoned from the methods’ target times.',
  tried: 'This day is only tried. Nothing of it is kept yet.',
  keysHint: 'Arrow keys go from step to step and from row to row. Enter opens a step.',
  clashesTitle: 'What does not go together',
  close: 'Close',
  bench: 'Bench',
  standings: { done: 'done', begun: 'under way', planned: 'planned', proposed: 'proposed' } satisfies Record<Standing, string>,
  legends: {
    hands: 'hands work',
    judged: 'ends by a check',
    rest: 'rests',
    bake: 'in the oven',
    slack: 'may wait till here',
    was: 'stood here before',
    pin: 'fixed',
    closed: 'nobody there, out of use',
    clash: 'clash',
    order: 'order wanted',
    late: 'order late',
  },
  with: 'With',
  check: 'Check',
  caution: 'Caution',
  mayWait: 'May wait',
  mayWaitOpen: 'as long as you like: the method sets no end',
  noMore: 'not at all',
  moved: 'Moved',
  pieces: 'Pieces',
  pinTitle: 'When it begins',
  startsAt: 'Starts at',
  fix: 'Fix it',
  letMove: 'Let it move again',
  notAClock: 'A clock time is needed, such as 04:30.',
  isBegun: 'It has begun: it stays where it is.',
  isDone: 'It is done.',
  restFollows: 'A rest follows the step before it. Fix the step that ends it.',
  firstTitle: 'Orders that this dough serves',
  first: 'This order first',
  isFirst: 'comes before all others',
  noOrders: 'No order asks for it.',
  inTime: 'in time as planned',
  nobodyThere: 'nobody there',
  outOfUse: 'out of use',
  rooms: {
    mixer: () => 'one dough at a time',
    station: (hands: number) => (hands === 1 ? '1 pair of hands' : `${hands} pairs of hands`),
    deck: (slots: number) => (slots === 1 ? '1 slot' : `${slots} slots`),
    bench: (room: number) => (room === 1 ? 'room for 1 dough' : `room for ${room} doughs`),
    restPlace: (room: number | null) => (room === null ? 'for rests' : `for rests, ${room} places`),
  },
} as const;

/** "10 pieces". */
export function piecesWords(pieces: number): string {
  return pieces === 1 ? '1 piece' : `${pieces} pieces`;
}

/** A stretch of time with its length: "04:10–04:40, 30 min". */
export function stretchWords(from: string, to: string, length: string): string {
  return `${from}–${to}, ${length}`;
}

/** "till 04:40, 30 min more". */
export function tillWords(clock: string, length: string): string {
  return `till ${clock}, ${length} more`;
}

/** "was 04:10, now 25 min later". */
export function movedWords(from: string, length: string, isLater: boolean): string {
  return `was ${from}, now ${length} ${isLater ? 'later' : 'earlier'}`;
}

/** "fixed at 04:30". */
export function fixedWords(clock: string): string {
  return `fixed at ${clock}`;
}

/** More is wanted of a thing than there is: "Top is wanted by 3 at 06:10–06:35, room for 2: C1a, R1". */
export function busyWords(name: string, wanted: number, room: number, stretch: string, tags: string): string {
  return `${name}: ${wanted} wanted, ${room} there, ${stretch} (${tags})`;
}

/** Who works at a place that is called the same: "Bench, hands". */
export function handsAtWords(station: string): string {
  return `${station}, hands`;
}

/** "Bench: nobody there 14:30–14:50, and yet C1 fold". */
export function awayWords(name: string, why: string, stretch: string, tags: readonly string[]): string {
  return `${name}: ${why} ${stretch}, and yet ${tags.join(', ')} ${tags.length > 1 ? 'are' : 'is'} planned then`;
}

/** "C1 fold begins 12 min later than the dough bears". */
export function waitsWords(tag: string, verb: string, length: string): string {
  return `${tag} ${verb}: begins ${length} later than the dough bears`;
}

/** "C1 fold is fixed at 04:30 and stands at 04:50". */
export function pinMissedWords(tag: string, verb: string, fixed: string, stands: string): string {
  return `${tag} ${verb}: fixed at ${fixed}, but stands at ${stands}`;
}

/** Short, beside the sign in a row. */
export function clashAtWords(clock: string): string {
  return `clash ${clock}`;
}

/** "3 orders, 1 late". */
export function ordersAtWords(count: number, late: number): string {
  const orders = count === 1 ? '1 order' : `${count} orders`;
  return late === 0 ? orders : `${orders}, ${late} late`;
}

/** "12 × Country loaf". */
export function orderWords(pieces: number, name: string): string {
  return `${pieces} × ${name}`;
}

export function lateByWords(length: string): string {
  return `${length} late`;
}

export function shortOfWords(pieces: number): string {
  return `${piecesWords(pieces)} short`;
}

/** "1 h 20 min". */
export function lengthWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return whole % 60 === 0 ? `${whole / 60} h` : `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`;
}

/** A row's heading, for a screen reader: what it is and how much is in it. */
export function rowWords(head: string, count: number): string {
  return `${head}, ${count === 1 ? '1 step' : `${count} steps`}`;
}

/** One station's hands, on the screen and on paper. */
export const STATION_LIST = {
  title: 'By station',
  choose: 'Station',
  all: 'All stations',
  print: 'Print this list',
  printAll: 'Print all, one station a page',
  calendar: 'For the staff’s calendars (iCalendar)',
  clock: 'Clock',
  tag: 'Tag',
  what: 'Step',
  pieces: 'Pieces',
  length: 'Takes',
  check: 'Look for',
  none: 'No hands are wanted here on this day.',
  asOf: (clock: string): string => `as of ${clock}`,
  fixed: 'fixed',
} as const;

/** Playing the day many times. */
export const TRY = {
  title: 'Try the day',
  lead: 'Plays this day many times over, each time with doughs, hands and ovens a little quicker or slower, to see which orders hold.',
  start: 'Try this day',
  again: 'Try it again',
  running: (done: number, of: number): string => `${done} of ${of} days played`,
  runs: (runs: number): string => `Played ${runs} times.`,
  orders: 'How often each order is late',
  order: 'Order',
  wanted: 'Wanted',
  late: 'Late',
  typical: 'Half of the late days',
  nineInTen: 'Nine days in ten',
  lateOf: (percent: string, times: number, runs: number): string => `${percent} %, ${times} of ${runs}`,
  never: 'never',
  inTime: 'in time',
  upTo: (length: string): string => `up to ${length}`,
  holds: 'What holds the day back',
  holdsMore: 'Share of all lateness that came from waiting for it.',
  holdsNothing: 'No order was late for want of a machine, hands or room.',
  share: (percent: string): string => `${percent} %`,
  doughItself: 'the doughs themselves',
  spoils: (percent: string): string => `On ${percent} % of the days some dough waited longer than it bears.`,
  spoilsNever: 'On no day did a dough wait longer than it bears.',
  assumed: 'What was assumed',
  spread: (kind: string, percent: string): string => `${kind}: ${percent} % quicker or slower, as a rule`,
  kinds: { hands: 'work of hands', judged: 'steps that end by a check', rest: 'rests', bake: 'bakes' },
  learned: (steps: number): string => `learned from ${steps} steps of this house`,
  average: (percent: string): string => `on average ${percent} % of the planned length`,
  customary: 'customary, not learned here yet',
  failed: 'It could not be played:',
  noOrders: 'This day has no orders that could be late.',
  caution: 'It is as good as its assumptions. It says nothing of what nobody can foresee: a machine that fails, somebody who falls ill.',
} as const;
