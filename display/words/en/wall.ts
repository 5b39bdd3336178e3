import type { Role } from '../../../shared/floor/role.ts';
import type { EventOf } from '../../../shared/floor/events.ts';

/** Everything else that the wall says. */
export const WALL = {
  pageTitle: 'Wall',
  doughs: 'Doughs',
  ovens: 'Ovens',
  soundOn: 'sound on',
  soundWaiting: 'touch for sound',
  soundNone: 'no device sounds',
  soundPanel: 'touch to turn the sound on',
  soundPanelMore: 'or press any key',
  tooSmallTitle: 'This screen is too small to be read from there',
  tooSmallMore: 'Try a shorter distance.',
  noLink: 'NO LINK',
  loading: 'Reaching the kitchen…',
  emptyTitle: 'No dough on the floor',
  emptyMore: 'What is started on a phone shows here.',
  stationEmpty: 'Nothing for this station now',
  /** After the marks and numbers of what presses at other stations. */
  elsewhere: 'elsewhere',
  setUp: 'Set up this wall',
  stations: 'The stations of this kitchen:',
  wholeWall: 'the whole wall',
  otherVersionTitle: 'This page is older than its kitchen',
  otherVersionMore: 'It loads again by itself. If this stays, load it by hand.',
  join: 'Let this screen in',
  notKept: 'taps are not kept: is the disk full?',
  backupsLate: 'no backup for two hours',
  forbiddenTitle: 'This screen may not be here',
  forbiddenMore: 'Whoever looks after the kitchen’s server can let it in.',
  fullTitle: 'No place left for another screen',
  fullMore: 'Close one that is not needed; this one tries again.',
  free: 'free',
  deckOut: 'OUT',
  heard: 'heard',
  moreDecks: 'more decks',
  goOn: 'go on knowingly',
} as const;

/** Unmistakable: this is not a real day. */
export function paceWords(pace: number): string {
  return `PACE ×${pace} · not a real day`;
}

/** Another device is the one that sounds. */
export function soundOnWords(deviceName: string): string {
  return `sound on ${deviceName}`;
}

/** Calls that have no row of their own. */
export function moreWords(count: number): string {
  return `+${count} more`;
}

export function freeSlotsWords(count: number): string {
  return `${count} free`;
}

export function heldWords(clock: string): string {
  return `held to ${clock}`;
}

export function piecesWords(done: number, of: number): string {
  return `${done} of ${of}`;
}

export function shortWords(short: number, of: number): string {
  return `${short} short of ${of}`;
}

/** The stations that work on one step together. */
export function stationsWords(names: readonly string[]): string {
  return names.join(' + ');
}

/** A tag of another day in one word, where "Fri C1" is too wide: "FrC1". */
export function compactDayWords(weekday: string, tag: string): string {
  return `${weekday.slice(0, 2)}${tag}`;
}

/** The address asks for a station that this kitchen does not have. */
export function unknownStationWords(stationId: string): string {
  return `No station “${stationId}” here`;
}

/** What presses at other stations. */
export function elsewhereWords(lost: number, late: number): string {
  const parts = [lost > 0 ? `${lost} being lost` : '', late > 0 ? `${late} late` : ''].filter((part) => part !== '');
  return parts.length === 0 ? 'nothing late elsewhere' : `${parts.join(', ')} elsewhere`;
}

/** From when to when a ferment is ripe. */
export function ripeWords(from: string, to: string): string {
  return `ripe ${from}–${to}`;
}

/** How a rest follows the warmth of its dough, in few words. */
export const RIPENING = {
  /** Clock or minutes, and why. */
  why: (moved: string, dough: string): string => `${moved}, ${dough}`,
  dough: (temperature: string): string => `dough ${temperature}`,
  read: (temperature: string, clock: string): string => `dough read ${temperature} ${clock}`,
  /** Reckoned, not read. */
  about: (temperature: string): string => `dough about ${temperature}`,
  ripe: (clock: string): string => `ripe ${clock}`,
  ripeBetween: (from: string, to: string): string => `ripe ${from}–${to}`,
} as const;

/** Why a deck cannot be used. */
export const BLOCKED: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'cleaning',
  allergenChangeOver: 'change-over',
  outOfOrder: 'out of order',
};

/** Why something cannot be used, and until when where somebody said. */
export function blockedWords(why: EventOf<'resourceBlocked'>['why'], until: string | null): string {
  return until === null ? BLOCKED[why] : `${BLOCKED[why]} till ${until}`;
}

/** What stands in the way of a step, in few words; names are the house's. */
export const IN_THE_WAY = {
  ovenFull: 'oven full',
  other: 'cannot go on yet',
  /** Where there is no room to say what. */
  unsaid: 'blocked',
  slotTaken: (slot: string, tag: string): string => `${slot} has ${tag}`,
  mixerBusy: (mixer: string, tag: string): string => `${mixer} has ${tag}`,
  blocked: (name: string, why: string): string => `${name} ${why}`,
  changeOver: (mixer: string): string => `${mixer} wants change-over`,
  none: (name: string): string => `no ${lowered(name)}`,
  tooFew: (free: number, needed: number, name: string): string => `${free} of ${needed} ${lowered(name)}`,
  tooLittle: (name: string): string => `too little ${lowered(name)}`,
  lastOf: (tag: string): string => `last of ${tag}`,
  hot: (tag: string): string => `${tag} is still hot`,
} as const;

/** The mildest way out, in few words. */
export const WAY_OUT = {
  wait: (clock: string, over: number): string => (over > 0 ? `free ${clock} (+${over})` : `free ${clock}`),
  otherSlot: (deck: string, temperature: string | null): string => (temperature === null ? `${deck} free` : `${deck} free, ${temperature}`),
  otherMixer: (mixer: string): string => `${mixer} free`,
  otherSource: (tag: string): string => `take ${tag}`,
  part: (pieces: number): string => `${pieces} now`,
  chill: (place: string, temperature: string | null): string => (temperature === null ? `into ${place}` : `into ${place}, ${temperature}`),
  clean: (minutes: number): string => `clean, ${minutes} min`,
} as const;

/** A name of the house within a line: "Loaf tins" reads "loaf tins". */
function lowered(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}

const ANNOUNCED: Readonly<Record<Role, string>> = { running: '', call: 'Call', late: 'Late', lost: 'Being lost' };

/** Calls of one role as one sentence, for a screen reader. */
export function announcement(role: Role, calls: readonly string[]): string {
  return `${ANNOUNCED[role]}: ${calls.join(', ')}.`;
}

/** Food has to be used or discarded by then. */
export function limitWords(clock: string): string {
  return `limit ${clock}`;
}
