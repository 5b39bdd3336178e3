import type { OrderForm } from '../../../shared/documents/order.ts';
import type { MovedStep } from '../../../shared/floor/events.ts';
import type { OrderField } from '../../../shared/plan/orders/order-columns.ts';
import type { LineFault } from '../../../shared/plan/orders/read-orders.ts';

/** What the page of a day says around its parts. */
export const DAY = {
  title: 'The day',
  date: 'Date',
  today: 'Today',
  tomorrow: 'Tomorrow',
  dayBefore: 'The day before',
  dayAfter: 'The day after',
  sections: 'Parts of the day',
  loading: 'Reaching the kitchen…',
  loadingBook: 'Opening the formula book…',
  emptyTitle: 'No kitchen yet',
  emptyMore: 'A day is planned for a kitchen. It comes with the bakehouse file that the server is started with.',
  failedTitle: 'The formula book cannot be reached',
  failedMore: 'Without it nobody knows what can be ordered. What stands below is as it last was.',
  tryAgain: 'Try again',
  noLinkMore: 'What you see is as it last was. Nothing is ordered or planned until the link is back.',
  closed: 'This day is over: nothing more is ordered for it.',
  refused: 'Not done:',
  forbidden: 'This device may not plan the day.',
  unsent: 'Not done: the server could not be reached. Try again; nothing is done twice.',
  held: (ruleSet: string): string =>
    `Fillings and held food are planned. Figures for holding and cooling are those of ${ruleSet}; local codes and your own licensed advice come first. The plan keeps nothing cold: measure.`,
} as const;

export const DAY_SECTIONS = {
  orders: 'Orders',
  plan: 'Plan',
  stations: 'By station',
  try: 'Try the day',
} as const;

/** Columns of orders: on the page, and as headings of what is pasted. */
export const ORDER_COLUMNS: Readonly<Record<OrderField, string>> = {
  product: 'Product',
  pieces: 'Pieces',
  readyAt: 'Ready by',
  form: 'Cooled or hot',
  freshMin: 'Fresh',
  loadingMin: 'Loading',
  label: 'For whom',
  weight: 'Importance',
  date: 'Date',
};

export const ORDER_FORMS: Readonly<Record<OrderForm, string>> = { cooled: 'cooled', hot: 'hot' };

/** Orders of the day, and one of them as it is typed. */
export const ORDERS = {
  none: 'Nothing is ordered for this day.',
  noneMore: 'Type an order, paste them from a spreadsheet, or take over the standing orders.',
  table: 'Orders of the day',
  sum: (orders: number, pieces: number): string => `${orders === 1 ? '1 order' : `${orders} orders`}, ${pieces} pieces`,
  named: (pieces: number, product: string, clock: string): string => `${pieces} ${product}, ${clock}`,
  actions: 'Change or withdraw',
  plan: 'By the plan',
  onTime: 'on time',
  late: (min: number): string => `${min} min late`,
  short: (pieces: number): string => `${pieces} too few`,
  notPlanned: 'not planned yet',
  fromStanding: 'standing',
  change: 'Change',
  changeOne: (order: string): string => `Change the order ${order}`,
  withdraw: 'Withdraw',
  withdrawOne: (order: string): string => `Withdraw the order ${order}`,
  withdrawn: (order: string): string => `Withdrawn: ${order}.`,
  putBack: 'Put it back',
  placed: (orders: number): string => (orders === 1 ? 'One order is taken.' : `${orders} orders are taken.`),
  changed: 'Changed.',
  // The form.
  add: 'Type an order',
  more: 'More of it',
  take: 'Take the order',
  keep: 'Keep the change',
  cancel: 'Leave it',
  readyHint: 'by the house’s clocks: 6:30',
  freshHint: 'at most so long out of the oven',
  loadingHint: 'before it is wanted',
  labelHint: 'the shop, the market stall; never a person’s name',
  weightHint: '1 as usual; a minute late counts so many times',
  needProduct: 'choose a product of the book',
  needClock: 'a clock time, such as 6:30',
} as const;

/** Orders that are pasted or read from a file. */
export const READING = {
  title: 'Paste, or read a file',
  more: 'Copied from a spreadsheet, or CSV with commas or semicolons. Columns in this order, or with these headings in any order:',
  box: 'Orders, one a line',
  file: 'Choose a file',
  tooLarge: (kibibytes: number): string => `That file is too large: at most ${kibibytes} KiB.`,
  notReadable: 'That file could not be read.',
  read: (orders: number): string => (orders === 1 ? '1 order is read.' : `${orders} orders are read.`),
  alsoDates: (dates: string): string => `Some are for other days: ${dates}.`,
  unread: (headings: string): string => `Not read, since nobody needs them: ${headings}.`,
  known: (orders: number): string =>
    orders === 1
      ? 'One of them stands already just so: taken again, it is made twice.'
      : `${orders} of them stand already just so: taken again, they are made twice.`,
  faults: (lines: number): string =>
    lines === 1 ? 'One line is not right yet. It stays here:' : `${lines} lines are not right yet. They stay here:`,
  at: (line: number, column: number | null): string => (column === null ? `Line ${line}` : `Line ${line}, column ${column}`),
  moreFaults: (faults: number): string => `and ${faults} more`,
  take: (orders: number): string => (orders === 1 ? 'Take 1 order' : `Take ${orders} orders`),
  clear: 'Empty the box',
} as const;

/** A fault in a text of orders. `text` is what stands there, `field` the column's heading. */
export function orderFaultWords(code: LineFault['code'], text: string, field: string, near: string | null): string {
  const said = text === '' ? '' : `“${text}”`;
  switch (code) {
    case 'quote':
      return 'the quotation marks do not end with the cell';
    case 'columnMissing':
      return `there is no column “${field}”`;
    case 'columnTwice':
      return `the column “${field}” stands twice`;
    case 'extraCell':
      return `${said} stands beyond the last column`;
    case 'missing':
      return `“${field}” is missing`;
    case 'productUnknown':
      return near === null ? `${said} is no product of the book` : `${said} is no product of the book; “${near}”?`;
    case 'productTwice':
      return `several products are called ${said}: write the key`;
    case 'notPieces':
      return `${said} is no number of pieces`;
    case 'notClockTime':
      return `${said} is no clock time, such as 6:30`;
    case 'notForm':
      return `${said} is neither cooled nor hot`;
    case 'notMinutes':
      return `${said} is no length of time, such as 90 or 1:30`;
    case 'notWeight':
      return `${said} is not between 1 and 9`;
    case 'labelTooLong':
      return 'too long: at most 60 characters';
    case 'notDate':
      return `${said} is no date, such as 2026-03-07`;
    case 'dateOver':
      return `${said} is over`;
    case 'tooMany':
      return `a day takes at most ${text} orders`;
  }
}

/** Orders that come every week. */
export const STANDING = {
  title: 'Standing orders',
  none: 'No order stands yet.',
  more: 'They come every week on their days, and are taken over for a date by somebody.',
  weekdays: 'On',
  daily: 'every day',
  add: 'Add a standing order',
  take: 'Keep the standing order',
  takeOver: (orders: number, date: string): string =>
    orders === 1 ? `Take over 1 order for ${date}` : `Take over ${orders} orders for ${date}`,
  allTaken: (date: string): string => `All that stands for ${date} is taken over.`,
  tooLate: (date: string): string => `The time of what still stands for ${date} is past.`,
  noneOn: (date: string): string => `Nothing stands for ${date}.`,
  change: 'Change',
  changeOne: (order: string): string => `Change the standing order ${order}`,
  remove: 'Take away',
  removeOne: (order: string): string => `Take away the standing order ${order}`,
  needDays: 'choose one day at least',
  overtaken: 'Somebody else has changed the standing orders meanwhile: look again.',
  kept: 'Standing orders are kept.',
} as const;

/** A plan that is sought, compared, kept. */
export const PLANNING = {
  plan: 'Plan the day',
  again: 'Plan it so',
  more: 'From these orders: batches, and when each step is to begin. Nothing is changed before it is kept.',
  noOrders: 'Nothing is ordered for this day, so there is nothing to plan.',
  running: 'Planning the day',
  stop: 'Stop',
  progress: (done: string, all: string): string => `${done} of ${all} ways tried`,
  bestSoFar: (onTime: number, orders: number): string => `best so far: ${onTime} of ${orders} orders on time`,
  nothingYet: 'no day found yet',
  failedTitle: 'This day cannot be planned',
  // Compared.
  compare: 'Proposals compared',
  inForce: 'in force',
  proposal: (letter: string): string => `Proposal ${letter}`,
  show: 'Show',
  showOne: (name: string): string => `Show ${name} on the day sheet`,
  keep: 'Keep',
  keepOne: (name: string): string => `Keep ${name}`,
  drop: 'Drop',
  dropOne: (name: string): string => `Drop ${name}`,
  outdated: 'Orders or kitchen have changed since: plan again.',
  asOrdered: 'as ordered',
  kept: 'Kept. The floor follows this plan.',
  unknown: '–',
  // Tentative changes.
  tryTitle: 'Try it otherwise',
  tryMore: 'Tried in a proposal; the order changes only when that is kept.',
  order: 'Order',
  laterMin: 'Minutes later',
  fewerTo: 'Pieces',
  tryLater: 'Ready later',
  tryFewer: 'Fewer pieces',
  tryLeaveOut: 'Leave it out',
  tryFirst: 'Before all others',
  changes: 'To be tried',
  later: (order: string, min: number): string => `${order}: ${lengthWords(min)} later`,
  fewer: (order: string, pieces: number): string => `${order}: only ${pieces} pieces`,
  leftOut: (order: string): string => `${order}: left out`,
  first: (order: string): string => `${order}: before all others`,
  pinned: (step: string, clock: string): string => `${step}: at ${clock}`,
  takeBack: (change: string): string => `Not so: ${change}`,
  // Why it does not fit.
  whyTitle: 'Why it does not fit',
  whyMore: 'Found by planning again; each button plans the day with that change.',
  try: 'Try it',
  // What the plan says by itself.
  movedTitle: (clock: string): string => `Moved at ${clock}`,
  nothingMoved: 'Nothing has moved.',
  notBegun: 'its time came, and nobody has begun it',
  goesWith: (step: string): string => `goes with ${step}`,
  warningsTitle: 'Ahead',
  noWarnings: 'Nothing is foreseen to be late or to spoil.',
  offersTitle: 'Better ways, on offer',
  offer: (clock: string): string => `Found at ${clock}`,
  offerGain: (before: string, after: string): string => `on time: ${before} → ${after}`,
  offerLate: (before: number, after: number): string => `late in all: ${before} → ${after} min`,
  offerMoves: (steps: number): string => (steps === 1 ? '1 step moves' : `${steps} steps move`),
  noPlan: 'The floor follows no plan yet.',
  madeAt: (clock: string): string => `The plan in force is of ${clock}.`,
  replanning: 'Planning anew…',
  replanFailed: 'The last planning anew came to nothing:',
  statusFailed: 'What the planner says cannot be reached.',
  movedMore: (steps: number): string => `and ${steps} more`,
} as const;

/** Rows of the comparison, by the figures’ names. */
export const FIGURES = {
  ordersOnTime: 'Orders on time',
  latestMin: 'Latest order',
  spoilMin: 'Waiting too long',
  pinsBroken: 'Pins not kept',
  ripenessMin: 'Away from ripe',
  staleMin: 'Older than wanted',
  beginsMs: 'Begins',
  endsMs: 'Ends',
  handsMin: 'Hands',
  movedMin: 'Moved',
  batches: 'Batches',
  changes: 'Tried otherwise',
} as const;

export function ofAllWords(some: number, all: number): string {
  return `${some} of ${all}`;
}

/** A length of time to be read at a glance: "45 min", "3 h 10". */
export function lengthWords(min: number): string {
  const whole = Math.round(min);
  if (whole < 60) return `${whole} min`;
  const rest = whole % 60;
  return rest === 0 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${String(rest).padStart(2, '0')}`;
}

export function inWords(length: string): string {
  return `in ${length}`;
}

/** A batch before it has its tag: the formula, and which of them. */
export function batchWords(formula: string, number: string): string {
  return `${formula} ${number}`;
}

/** A step of a dough in one line: "C1 fold". */
export function stepWords(tag: string, verb: string): string {
  return `${tag} ${verb}`;
}

/** Warnings of a plan. `step` is tag and verb, `order` pieces, product and time. */
export const WARNINGS = {
  spoils: (step: string, clock: string, length: string): string => `${step}: too long from ${clock} on, by ${length}`,
  late: (order: string, clock: string, length: string): string => `${order}: ready at ${clock}, ${length} late`,
  short: (order: string, pieces: number): string => `${order}: ${pieces} pieces too few`,
  pinBroken: (step: string, clock: string): string => `${step}: cannot begin as pinned; ${clock}`,
  firstBroken: (order: string): string => `${order}: cannot come before all others`,
} as const;

/** Why a step moved. `thing` is a resource, a step or an order, where one is known. */
export function movedWhyWords(what: NonNullable<MovedStep['because']>['what'], thing: string | null): string {
  switch (what) {
    case 'resource':
      return thing === null ? 'what it needs is taken' : `${thing} is taken`;
    case 'dough':
      return thing === null ? 'its own dough' : `waits for ${thing}`;
    case 'order':
      return 'its order';
    case 'pin':
      return 'a pin';
    case 'search':
      return 'a better way was found';
  }
}

/** What is not right with a day that was planned. */
export const TROUBLES = {
  late: (order: string, length: string): string => `${order}: ${length} late`,
  spoils: (step: string, length: string): string => `${step}: waits ${length} too long`,
  pinBroken: (step: string, clock: string): string => `${step}: cannot begin as pinned; ${clock}`,
} as const;

/** What holds it back. `at` and `by` are steps, `thing` a mixer, a deck, a station. */
export const CAUSES = {
  busy: (at: string, thing: string, by: string, clock: string): string => `${at} waits until ${clock}: ${thing} is taken by ${by}.`,
  atWork: (at: string, station: string, by: string, clock: string): string => `${at} waits until ${clock}: ${station} is at ${by}.`,
  nobody: (at: string, station: string, clock: string): string => `${at} waits until ${clock}: nobody is at ${station} before.`,
  closed: (at: string, thing: string, clock: string): string => `${at} waits until ${clock}: ${thing} is not to be had before.`,
  tooShort: (at: string, clock: string): string =>
    `Nothing holds it back but time: ${at} begins at ${clock}, and from there it takes too long.`,
  pinned: (at: string, clock: string): string => `${at} is pinned to ${clock}.`,
  begun: (at: string): string => `${at} is under way, and takes as long as it takes.`,
} as const;

/** Changes that were tried, and what came of each. */
export const REMEDIES = {
  fits: '– then it fits',
  /** What came of it, after what is changed. */
  inTime: '– then it is in time',
  lateStill: (length: string, before: string): string => `– then ${length} late instead of ${before}`,
  inAll: (length: string, before: string): string => `all orders together ${length} late instead of ${before}`,
  noneSpoils: '– then nothing waits too long',
  spoilsStill: (length: string): string => `– then still ${length} too long in all`,
  asPinned: '– then it begins as pinned',
  offPin: (length: string): string => `– then ${length} off its pin`,
  openEarlier: (station: string, length: string): string => `Somebody at ${station} ${length} earlier`,
  openLonger: (station: string, length: string): string => `Somebody at ${station} ${length} longer`,
  allEarlier: (length: string): string => `Everybody ${length} earlier`,
  allLonger: (length: string): string => `Everybody ${length} longer`,
  oneMoreHand: (station: string): string => `One more pair of hands at ${station}`,
  oneMoreHandFor: (station: string, from: string, to: string): string => `One more pair of hands at ${station}, ${from} to ${to}`,
  moreVessels: (vessel: string, count: number): string => `${count} more of ${vessel}`,
  beginEarlier: (step: string, length: string, clock: string): string => `${step}: ${length} earlier, at ${clock}`,
  beginLater: (step: string, length: string, clock: string): string => `${step}: ${length} later, at ${clock}`,
  inKitchen: 'Hours and hands stand in the kitchen',
  none: 'Nothing that was tried makes it fit.',
  also: 'For the same reason:',
} as const;

/** Why a day cannot be planned at all. `batch` is what it is about, where it is about one. */
export const PLAN_FAULTS = {
  documentMissing: (batch: string, missing: string): string => `${batch}: the book has no ${missing} any more`,
  noMixer: (batch: string, weight: string): string => `${batch}: no mixer takes ${weight}`,
  noDeck: (batch: string, needed: number, most: number): string =>
    `${batch}: needs ${needed} slots at once, and no deck has more than ${most}`,
  noDeckForPieces: (batch: string, pieces: number, most: number): string =>
    `${batch}: ${pieces} pieces go into the oven at once, and no deck takes more than ${most}`,
  tooMany: (batch: string, batches: number): string => `${batch}: ${batches} batches are more than a day can have`,
  tooFewVessels: (batch: string, needed: number, most: number): string =>
    `${batch}: needs ${needed} vessels at once, and there are ${most}`,
  tooFewHands: (batch: string, needed: number, most: number): string => `${batch}: needs ${needed} hands at once, and there are ${most}`,
  orderUnknown: 'An order that was to be tried otherwise is no longer there.',
  noKitchen: 'There is no kitchen yet.',
  nothingPlanned: 'There is no plan that could be played.',
  givenUp: 'It was given up before it was done.',
  crashed: 'The planner broke down. It is in the server’s log; try again.',
} as const;
