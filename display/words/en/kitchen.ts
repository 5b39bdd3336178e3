import type { Kitchen } from '../../../shared/documents/kitchen.ts';
import type { House } from '../../../shared/documents/house.ts';
import type { EventOf } from '../../../shared/floor/events.ts';

/** Everything that the kitchen page says. */
export const KITCHEN = {
  title: 'Kitchen',
  note: 'Formulas and methods stand in the formula book; they name the things here by their keys.',
  loading: 'Reaching the kitchen…',
  noLinkMore: 'What you see is as it last was. Changes are kept on this device and sent when the link is back.',
  emptyTitle: 'No kitchen yet',
  emptyMore: 'It comes with the bakehouse file that the server is started with.',
  emptyList: 'none',
  settings: 'House and settings',
  panelHint: 'Choose a mixer, a place, a deck … to see it closely and to change it.',
  close: 'Close',
  free: 'free',
  empty: 'empty',
  keep: 'Keep changes',
  putBack: 'Put back as it was',
  changed: 'Changed here, not kept yet',
  keeping: 'Being kept…',
  keepingLater: 'Kept on this device, sent when the link is back',
  faulty: 'Not kept. Put these right first:',
  overtaken: 'Somebody else has changed this meanwhile.',
  takeNewer: 'Take theirs, with my changes on it',
  asTheirs: 'Take theirs as it is',
  refused: 'Not done:',
  mixers: 'Mixers',
  restPlaces: 'Rest places',
  vessels: 'Vessels',
  ovens: 'Ovens',
  stations: 'Stations',
  sinceCleaned: 'since cleaned:',
  isNew: 'new',
  onTheSpot: 'On the spot',
  details: 'Details',
  panel: 'What is chosen',
  faultMark: 'something is wrong here',
  remove: 'Take out of the kitchen',
  earlier: 'One place earlier',
  later: 'One place later',
  block: 'Block it',
  blockMore: 'Nobody can have it until the time is over or it is freed.',
  minutes: 'For',
  untilFreed: 'until freed',
  freeIt: 'Free it',
  setDeck: 'Set it',
  setTo: 'Set to',
  ruleNote:
    'Local codes and licensed advice come before any of these. They choose the figures that are shown for holding and cooling; they replace nobody’s judgement.',
  riseHint: 'A first figure: what doughs teach of it comes before this.',
  mayContainTitle: 'May contain',
  mayContainMore:
    'Shown with every formula, product and batch, beside what their ingredients bring. When it has to be said, and when it must not be, is for local codes and your own licensed advice.',
  mixerCaution: 'Out of order or being cleaned: pull the plug or lock it off before a hand goes in.',
  ovenCaution: 'A deck that was hot stays hot long after it is switched off.',
  keyHint: 'lower case letters, digits, hyphens',
  tasks: 'Bench and cleaning',
  benchWork: 'Work on the bench',
  benchUncounted: 'nobody counts',
  benchHint: 'Where nobody counts, the bench is in no plan’s way.',
  noCleanings: 'No cleaning has its time.',
  hours: 'Hours',
  alwaysThere: 'Somebody is always there.',
  neverThere: 'Nobody is ever there.',
  addHours: 'Add hours',
  breaks: 'Breaks',
  noBreaks: 'No breaks.',
  addBreak: 'Add a break',
  daily: 'every day',
  someDays: 'on some days',
  removeHours: 'Take away',
  overMidnight: 'Hours that end earlier than they begin last into the next day.',
  rateUnsaid: 'at once',
  speedsUnsaid: 'as many as are asked for',
  cleaningHint: 'Once a day, within its time; while it lasts nobody can have what is cleaned.',
  nobody: 'nobody’s',
  kinds: {
    mixer: 'Mixer',
    bowl: 'Bowl',
    restPlace: 'Place',
    vessel: 'Vessel',
    oven: 'Oven',
    deck: 'Deck',
    slot: 'Slot',
    station: 'Station',
    cleaning: 'Cleaning',
  },
} as const;

/** Labels of the fields, by their keys in the documents. */
export const FIELDS = {
  name: 'Name',
  id: 'Key in the bakehouse file',
  kind: 'Kind',
  leastG: 'Least dough',
  mostG: 'Most dough',
  bowlComesOff: 'The bowl comes off and can stand elsewhere',
  changeOverMin: 'Cleaning at an allergen change-over',
  station: 'Station',
  litres: 'Volume',
  fits: 'Fits',
  temperatureC: 'Temperature',
  deckC: 'Usual temperature',
  humidityPct: 'Humidity',
  room: 'Room for tubs or racks',
  count: 'How many there are',
  turnRoundMin: 'Turn-round (washed, floured, cooled)',
  hands: 'Hands',
  zone: 'Time zone',
  unitOfTemperature: 'Temperatures in',
  unitOfWeight: 'Weights in',
  altitudeM: 'Altitude',
  ruleSet: 'Rule set for holding and cooling',
  benchScaleG: 'Bench scale shows steps of',
  fineScaleG: 'Fine scale shows steps of',
  riseK: 'Warms a dough while mixing by',
  waterForm: 'The mixer’s warming is spoken of as',
  iceC: 'Ice goes in at',
  mayContain: 'May get into anything made here',
  mayContainNote: 'In your own words',
  from: 'From',
  to: 'To',
  days: 'Days',
  speeds: 'Speeds',
  benchRoom: 'Doughs worked at once',
  heatKPerMin: 'Heats up by',
  coolKPerMin: 'Cools down by',
  cleaned: 'What is cleaned',
  cleaningMin: 'Takes',
  cleaningStation: 'Whose hands',
  cleaningFrom: 'Not before',
  cleaningTo: 'Done by',
} as const;

type Mixer = Kitchen['mixers'][number];
type Place = Kitchen['restPlaces'][number];
type Vessel = Kitchen['vessels'][number];

export const MIXER_KINDS: Readonly<Record<Mixer['kind'], string>> = {
  spiral: 'spiral',
  planetary: 'planetary',
  fork: 'fork',
  'twin-arm': 'twin arm',
};
export const PLACE_KINDS: Readonly<Record<Place['kind'], string>> = {
  bench: 'bench',
  'warm-shelf': 'warm shelf',
  prover: 'prover',
  retarder: 'retarder',
  'cold-room': 'cold room',
  freezer: 'freezer',
};
export const VESSEL_KINDS: Readonly<Record<Vessel['kind'], string>> = {
  tub: 'tub',
  tin: 'tin',
  banneton: 'banneton',
  board: 'board',
  tray: 'tray',
  rack: 'rack',
};
export const WEIGHT_UNITS: Readonly<Record<House['units']['weight'], string>> = { g: 'grams and kilograms', lb: 'pounds and ounces' };

/** By which custom the house reckons its water. */
export const WATER_FORMS: Readonly<Record<House['water']['form'], string>> = {
  rise: 'rise of the dough',
  friction: 'friction factor',
  base: 'base temperature',
};

/** Why a thing cannot be had. */
export const BLOCK_REASONS: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'cleaning',
  allergenChangeOver: 'allergen change-over',
  outOfOrder: 'out of order',
};

export function addWords(kind: keyof typeof KITCHEN.kinds): string {
  return `Add a${/^[aeiou]/i.test(KITCHEN.kinds[kind]) ? 'n' : ''} ${KITCHEN.kinds[kind].toLowerCase()}`;
}

export function addWithinWords(kind: 'deck' | 'slot' | 'bowl', name: string): string {
  return `Add a ${kind} ${kind === 'bowl' ? 'for' : 'to'} ${name}`;
}

export function blockedWords(why: string, untilClock: string | null): string {
  return untilClock === null ? why : `${why} till ${untilClock}`;
}

export function handsWords(hands: number): string {
  return hands === 1 ? '1 hand' : `${hands} hands`;
}

/** How many doughs can be worked on the bench at once. */
export function doughsAtOnceWords(count: number): string {
  return count === 1 ? '1 dough at a time' : `${count} doughs at once`;
}

export function roomWords(taken: number, room: number): string {
  return `${taken} of ${room}`;
}

export function rangeOfLoadWords(least: string, most: string): string {
  return `${least}–${most}`;
}

export function litresWords(litres: number): string {
  return `${litres} l`;
}

export function countWords(count: number): string {
  return `${count} in all`;
}

export function heldCountWords(count: number): string {
  return `${count} held`;
}

export function returningWords(count: number, clock: string): string {
  return `${count} back by ${clock}`;
}

export function freeCountWords(count: number): string {
  return `${count} free`;
}

/** Beside what a deck is set to. */
export function usuallyWords(temperature: string): string {
  return `usually ${temperature}`;
}

/** What a document's shape asks for, where a field does not say it in the reader's unit. */
export function atLeastWords(least: number): string {
  return `at least ${least}`;
}

export function atMostWords(most: number): string {
  return `at most ${most}`;
}

/** For figures whose bound is itself too little. */
export function moreThanWords(least: number): string {
  return `more than ${least}`;
}

/** A fault with the thing that has it. */
export function faultOfWords(name: string, message: string): string {
  return name === '' ? message : `${name}: ${message}`;
}
