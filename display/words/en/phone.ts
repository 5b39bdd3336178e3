/** What the phone says, apart from verbs, roles and refusals. */
export const PHONE = {
  pageTitle: 'Phone',
  doughs: 'Doughs',
  backToDoughs: 'Doughs',
  back: 'Back',
  thisPhone: 'This phone',
  loading: 'Reaching the kitchen…',
  loadingMore: 'This phone shows the floor as soon as it is there.',
  emptyTitle: 'No dough on the floor',
  emptyMore: 'The day’s batches show here when they are planned.',
  otherVersionTitle: 'This page is older than its kitchen',
  otherVersionMore: 'It has loaded itself again. If this stays, close the page and open it anew.',
  forbiddenTitle: 'This phone may not be here',
  forbiddenMore: 'Whoever looks after the kitchen’s server can let it in.',
  fullTitle: 'No place left for another screen',
  fullMore: 'Close one that is not needed; this one tries again by itself.',
  inTouch: 'in touch',
  catchingUp: 'catching up…',
  notSentYet: 'Not sent yet. Kept on this phone.',
  notSentShort: 'not sent yet',
  tooManyKept: 'Not taken: this phone keeps as many taps as it can. Find the link again, then tap once more.',
  weighOut: 'Weigh out',
  lookFor: 'Look for',
  caution: 'Caution',
  earliest: 'earliest',
  target: 'target',
  latest: 'latest',
  late: 'late',
  comesAfter: 'What comes after',
  nothingAfter: 'Nothing: it is finished then.',
  now: 'now',
  becomes: 'Becomes',
  whereItStands: 'Stands',
  inOven: 'In the oven',
  slotsTitle: 'Goes into',
  slotFree: 'free',
  slotChosen: 'here',
  passes: 'PASSES',
  started: 'Started',
  heard: 'Heard',
  moreTime: 'More time',
  hold: 'Hold the call',
  release: 'Call again',
  other: 'Other…',
  skip: 'Skip…',
  skipOwnReason: 'Another reason',
  skipDo: 'Skip for this reason',
  undo: 'Undo',
  everything: 'everything heard',
  name: 'Name of this phone',
  station: 'Where it is',
  noStation: 'nowhere fixed',
  save: 'Save',
  house: 'House',
} as const;

export function skipTitleWords(tag: string, verb: string): string {
  return `Skip ${tag} ${verb}: why?`;
}

/** Reasons that need no typing. They go into the record as they stand. */
export const SKIP_REASONS = ['The dough does not need it', 'Done another way', 'No time left', 'Not for this batch'] as const;

export function noLinkWords(sinceClock: string): string {
  return `No link since ${sinceClock} · taps are kept`;
}

export function keptWords(count: number, isLinked: boolean): string {
  const taps = count === 1 ? '1 tap' : `${count} taps`;
  return isLinked ? `${taps} kept, sent again shortly` : `${taps} kept, sent when the link is back`;
}

/** Unmistakable: this is not a real day. */
export function phonePaceWords(pace: number): string {
  return `×${pace} · not a real day`;
}

export function minutesMoreWords(minutes: number): string {
  return `+${minutes}`;
}

export function holdMinutesWords(minutes: number): string {
  return `${minutes} min`;
}

/** The unit under a number that stands large. */
export const MINUTES_UNIT = 'min';

export function piecesCountWords(pieces: number): string {
  return pieces === 1 ? '1 piece' : `${pieces} pieces`;
}

export function piecesDoneWords(done: number, of: number): string {
  return `${done} of ${of} done`;
}

export function slotsChosenWords(chosen: number, needed: number): string {
  return `${chosen} of ${needed}`;
}

export function heardAtWords(clock: string): string {
  return `heard ${clock}`;
}

export function heldToWords(clock: string): string {
  return `held to ${clock}`;
}

export function startedAtWords(clock: string): string {
  return `since ${clock}`;
}

/** What a tap did, as the undo bar names it. */
export const DID = {
  finished: (tag: string, done: string): string => `${tag} ${done.toLowerCase()}`,
  started: (tag: string, verb: string): string => `${tag} ${verb} started`,
  testPiece: 'test piece',
  prompt: (tag: string): string => `${tag}: done, as the bake asks`,
  moreTime: (tag: string, minutes: number): string => `${tag} +${minutes} min`,
  heard: (tag: string): string => `${tag} heard`,
  held: (tag: string, minutes: number): string => `${tag} held for ${minutes} min`,
  released: (tag: string): string => `${tag} calls again`,
  skipped: (tag: string, verb: string): string => `${tag} ${verb} skipped`,
  discarded: (tag: string): string => `${tag} discarded`,
  holdingDecided: (tag: string, minutes: number): string => `${tag} used ${minutes} min beyond its limit`,
  read: (tag: string, celsius: string): string => `${tag} ${celsius}`,
  progressed: (tag: string, done: number): string => `${tag} ${done} done`,
  helped: (tag: string): string => `${tag} helped with`,
  handedOver: (tag: string, station: string): string => `${tag} handed to ${station}`,
  where: (tag: string, verb: string): string => `${tag} at ${verb}`,
  moved: (tag: string): string => `${tag} moved`,
  time: (tag: string): string => `${tag} time put right`,
  count: (tag: string, pieces: number): string => `${tag} counts ${pieces}`,
  tag: (tag: string): string => `tag ${tag}`,
  loads: (tag: string, count: number): string => `${tag} in ${count} loads`,
  joined: (tags: string): string => `${tags} joined`,
  drawn: (from: string, tag: string): string => `${from} into ${tag}`,
  putBack: (from: string, tag: string): string => `${from} back into ${tag}`,
  feedPlanned: (tag: string, clock: string): string => `${tag} feed at ${clock}`,
  added: (tag: string): string => `${tag} added to`,
  lost: (tag: string, grams: string): string => `${tag} ${grams} gone`,
  dayEnded: 'day ended',
  kitchen: 'kitchen changed',
  house: 'settings changed',
  book: 'formula book changed',
  orders: 'Orders kept',
  pinned: 'Plan told',
  planned: 'put on the day’s list',
  riseForgotten: 'mixer’s warming forgotten',
  weighed: (tag: string): string => `${tag} weighed into`,
  unweighed: (tag: string): string => `${tag} taken out of the bowl`,
  rescaled: (tag: string): string => `${tag} scaled`,
  watered: (tag: string): string => `${tag} water in`,
  deck: 'deck set',
  air: 'air noted',
  blocked: 'blocked',
  freed: 'freed',
  undone: 'undo',
} as const;
