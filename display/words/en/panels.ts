import type { Despite } from '../../../shared/floor/events.ts';
import type { Correction } from '../../../shared/floor/state.ts';

/** What the panels behind a dough's card say. */
export const PANELS = {
  more: 'More…',
  moreTitle: (tag: string): string => `${tag}: more`,
  // Where it really is.
  where: 'It is already…',
  whereTitle: (tag: string): string => `${tag} is already at…`,
  notSoFar: 'It is not so far: back at…',
  sinceTitle: (tag: string, step: string): string => `${tag} ${step}: for how long?`,
  since: (minutes: number): string => (minutes === 0 ? 'just now' : `${minutes} min`),
  // Work under way.
  howFar: 'How far…',
  howFarTitle: (tag: string, step: string): string => `${tag} ${step}: pieces done`,
  sayDone: (count: number, of: number): string => `${count} of ${of} done`,
  goOn: (count: number): string => (count === 1 ? 'This 1 goes on' : `These ${count} go on`),
  goOnMore: 'as a load of their own',
  onItToo: 'I’m on it too',
  handOver: 'Hand over…',
  handOverTitle: (tag: string): string => `Hand ${tag} over to`,
  // Counting at the divide.
  count: 'Count…',
  countTitle: (tag: string): string => `${tag}: what it really became`,
  countWeight: (needed: string, has: string): string => `needs ${needed} of ${has}`,
  countDone: (tag: string, done: string): string => `${tag} ${done}, as counted`,
  // What goes in.
  inputs: 'What goes in…',
  inputsTitle: (tag: string): string => `What goes into ${tag}`,
  heldBack: (weight: string): string => `Water held back, ${weight}: how much went in?`,
  heldShares: [
    { share: 1, text: 'all' },
    { share: 0.75, text: '¾' },
    { share: 0.5, text: 'half' },
    { share: 0.25, text: '¼' },
    { share: 0, text: 'none' },
  ],
  noSource: 'nothing of it stands on the floor',
  inputsDone: (tag: string, done: string): string => `${tag} ${done} with this`,
  takes: 'Takes',
  extra: 'Draw more…',
  extraTitle: (tag: string): string => `More into ${tag}, on top of its formula`,
  extraDo: (weight: string, from: string): string => `Draw ${weight} from ${from}`,
  // Pots.
  pot: 'In the pot',
  seedKept: (weight: string): string => `${weight} kept back as seed`,
  ripe: (from: string, to: string): string => `ripe ${from}–${to}`,
  feedPlanned: (clock: string, weight: string): string => `next feed ${clock}, up to ${weight}`,
  feed: 'Amounts…',
  feedTitle: (tag: string): string => `${tag}: what goes into the pot`,
  feedSeed: 'Seed left in',
  feedFlour: 'Flour',
  feedWater: 'Water',
  feedMakes: (weight: string): string => `makes ${weight}`,
  feedDone: (tag: string): string => `${tag} FED with this`,
  planFeed: 'Plan a feed…',
  planFeedTitle: (tag: string): string => `When is ${tag} to be fed?`,
  planFeedUpTo: 'Up to',
  today: 'today',
  tonight: 'tonight',
  tomorrow: 'tomorrow',
  // Corrections.
  putRight: 'Put right…',
  putRightTitle: (tag: string): string => `${tag}: what was said`,
  times: 'Times',
  began: (step: string): string => `${step} began`,
  ended: (step: string): string => `${step} done`,
  pieces: 'Pieces',
  tag: 'Tag',
  setCount: (count: number): string => `It is ${count}`,
  setTag: (tag: string): string => `It is ${tag}`,
  countReasons: ['Miscounted', 'Spoilt', 'Fell', 'Taken out'],
  history: 'So far',
  notTapped: 'not tapped',
  skipped: 'skipped',
  corrections: 'Put right before',
  noHistory: 'Nothing yet.',
  // Elsewhere, loads, tubs.
  move: 'Move…',
  moveTitle: (tag: string): string => `Where does ${tag} stand now?`,
  loads: 'Loads…',
  loadsTitle: (tag: string): string => `${tag} goes on in loads of`,
  join: 'One tub…',
  joinTitle: (tag: string): string => `In one tub with ${tag}`,
  joinDo: (tags: string): string => `Join ${tags}`,
  // Less and gone.
  putBack: 'Put back…',
  putBackTitle: 'What goes back into which dough',
  putBackPair: (from: string, to: string): string => `${from} into ${to}`,
  putBackDo: (weight: string): string => `Put back ${weight}`,
  loss: 'Name a loss…',
  lossTitle: (tag: string): string => `What is gone of ${tag}`,
  lossDo: (weight: string): string => `${weight} gone`,
  weight: 'Weight',
  decideHolding: 'Past its limit: decide…',
  discard: 'Discard…',
  discardTitle: (tag: string): string => `Discard ${tag}: why?`,
  discardReasons: ['Gone over', 'Burnt', 'Fell', 'Past its limit'],
  discardDo: (tag: string): string => `Discard all of ${tag}`,
  discardMore: 'It leaves the floor; the reason stays in the record.',
  // The way is blocked.
  inTheWay: 'In the way',
  // The end of the day.
  dayEnd: 'End of the day…',
  dayEndTitle: (day: string): string => `End ${day}`,
  dayEndNone: 'Nothing is left on the floor.',
  dayEndCarries: 'Goes over into the next day',
  dayEndDo: (day: string): string => `End ${day} now`,
  dayEndMore: 'This cannot be undone. What stands on the floor stays there, with its weekday.',
  noDay: 'No day is open.',
  // The stepper.
  less: (label: string, by: number): string => `${label}: ${by} less`,
  moreBy: (label: string, by: number): string => `${label}: ${by} more`,
} as const;

export const DESPITE: Readonly<Record<Despite, string>> = {
  changeOver: 'mixer not cleaned between',
  lastOfFerment: 'last of the ferment',
  vesselsShort: 'vessels short',
  withoutSource: 'drawn of nothing',
  notCooled: 'taken before it had cooled by the clock',
  wildReading: 'reading far from what was expected',
};

export const CORRECTED: Readonly<Record<Correction['what'], string>> = {
  start: 'began',
  end: 'done',
  count: 'pieces',
  tag: 'tag',
  where: 'where it is',
};

/** How a step is told from the others of its verb: "fold 2". */
export function nthWords(verb: string, nth: number | null): string {
  return nth === null ? verb : `${verb} ${nth}`;
}

export function shortWords(pieces: number): string {
  return `${pieces} short`;
}

export function joinsWords(tag: string, clock: string | null): string {
  return clock === null ? `joins ${tag}` : `joins ${tag} ${clock}`;
}

export function notBeforeWords(clock: string): string {
  return `not before ${clock}`;
}

/** "1 500 g levain from L1, ripe since 04:20". */
export function takeWords(weight: string, name: string, from: string | null, ripe: string | null): string {
  const what = `${weight} ${name}`;
  if (from === null) return `${what}: ${PANELS.noSource}`;
  return `${what} from ${from}${ripe === null ? ', not ready yet' : `, ${ripe}`}`;
}

export function ripeSinceWords(clock: string, isSince: boolean): string {
  return isSince ? `ready since ${clock}` : `ready ${clock}`;
}
