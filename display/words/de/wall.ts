import type { Role } from '../../../shared/floor/role.ts';
import type { EventOf } from '../../../shared/floor/events.ts';

/** Everything else that the wall says. */
export const WALL = {
  pageTitle: 'Wand',
  doughs: 'Teige',
  ovens: 'Öfen',
  soundOn: 'Ton an',
  soundWaiting: 'antippen für Ton',
  soundNone: 'nirgends Ton',
  soundPanel: 'antippen, dann ist der Ton an',
  soundPanelMore: 'oder eine Taste drücken',
  tooSmallTitle: 'Dieser Bildschirm ist von dort aus zu klein zum Lesen',
  tooSmallMore: 'Kürzeren Abstand versuchen.',
  noLink: 'OFFLINE',
  loading: 'Verbindung zur Backstube…',
  emptyTitle: 'Kein Teig in Arbeit',
  emptyMore: 'Was am Handy begonnen wird, erscheint hier.',
  stationEmpty: 'Nichts für diesen Posten im Moment',
  /** After the marks and numbers of what presses at other stations. */
  elsewhere: 'anderswo',
  setUp: 'Diese Wand einrichten',
  stations: 'Die Posten dieser Backstube:',
  wholeWall: 'die ganze Wand',
  otherVersionTitle: 'Diese Seite ist nicht mehr aktuell',
  otherVersionMore: 'Sie lädt von selbst neu. Bleibt das stehen, von Hand neu laden.',
  join: 'Diesen Bildschirm einlassen',
  notKept: 'Getipptes wird nicht behalten: Platte voll?',
  backupsLate: 'seit zwei Stunden keine Sicherung',
  forbiddenTitle: 'Dieser Bildschirm hat hier keinen Zugang',
  forbiddenMore: 'Wer den Server der Backstube betreut, kann ihn zulassen.',
  fullTitle: 'Kein Platz für noch einen Bildschirm',
  fullMore: 'Einen schließen, der nicht gebraucht wird; dieser versucht es wieder.',
  free: 'frei',
  deckOut: 'RAUS',
  heard: 'gehört',
  moreDecks: 'weitere Herde',
  goOn: 'wissentlich weiter',
} as const;

/** Unmistakable: this is not a real day. */
export function paceWords(pace: number): string {
  return `TEMPO ×${pace} · kein echter Tag`;
}

/** Another device is the one that sounds. */
export function soundOnWords(deviceName: string): string {
  return `Ton: ${deviceName}`;
}

/** Calls that have no row of their own. */
export function moreWords(count: number): string {
  return `+${count} weitere`;
}

export function freeSlotsWords(count: number): string {
  return `${count} frei`;
}

export function heldWords(clock: string): string {
  return `Halt bis ${clock}`;
}

export function piecesWords(done: number, of: number): string {
  return `${done} von ${of}`;
}

export function shortWords(short: number, of: number): string {
  return `${short} von ${of} ${short === 1 ? 'fehlt' : 'fehlen'}`;
}

/** The stations that work on one step together. */
export function stationsWords(names: readonly string[]): string {
  return names.join(' + ');
}

/** A tag of another day in one word, where "Fr C1" is too wide: "FrC1". */
export function compactDayWords(weekday: string, tag: string): string {
  return `${weekday.slice(0, 2)}${tag}`;
}

/** The address asks for a station that this kitchen does not have. */
export function unknownStationWords(stationId: string): string {
  return `Kein Posten „${stationId}“ hier`;
}

/** What presses at other stations. */
export function elsewhereWords(lost: number, late: number): string {
  const parts = [lost > 0 ? `${lost} ${lost === 1 ? 'geht' : 'gehen'} verloren` : '', late > 0 ? `${late} verspätet` : ''].filter(
    (part) => part !== '',
  );
  return parts.length === 0 ? 'anderswo nichts verspätet' : `anderswo ${parts.join(', ')}`;
}

/** From when to when a ferment is ripe. */
export function ripeWords(from: string, to: string): string {
  return `reif ${from}–${to}`;
}

/** How a rest follows the warmth of its dough, in few words. */
export const RIPENING = {
  /** Clock or minutes, and why. */
  why: (moved: string, dough: string): string => `${moved}, ${dough}`,
  dough: (temperature: string): string => `Teig ${temperature}`,
  read: (temperature: string, clock: string): string => `Teig gemessen ${temperature} ${clock}`,
  /** Reckoned, not read. */
  about: (temperature: string): string => `Teig etwa ${temperature}`,
  ripe: (clock: string): string => `reif ${clock}`,
  ripeBetween: (from: string, to: string): string => `reif ${from}–${to}`,
} as const;

/** Why a deck cannot be used. */
export const BLOCKED: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'Reinigung',
  allergenChangeOver: 'Allergene',
  outOfOrder: 'defekt',
};

/** Why something cannot be used, and until when where somebody said. */
export function blockedWords(why: EventOf<'resourceBlocked'>['why'], until: string | null): string {
  return until === null ? BLOCKED[why] : `${BLOCKED[why]} bis ${until}`;
}

/** What stands in the way of a step, in few words; names are the house's, so that nothing here may hang on their gender or number. */
export const IN_THE_WAY = {
  ovenFull: 'Ofen voll',
  other: 'geht noch nicht',
  /** Where there is no room to say what. */
  unsaid: 'blockiert',
  slotTaken: (slot: string, tag: string): string => `${slot} hat ${tag}`,
  mixerBusy: (mixer: string, tag: string): string => `${mixer} hat ${tag}`,
  blocked: (name: string, why: string): string => `${name}: ${why}`,
  changeOver: (mixer: string): string => `${mixer}: Allergenwechsel`,
  none: (name: string): string => `fehlt: ${name}`,
  tooFew: (free: number, needed: number, name: string): string => `${free} von ${needed} ${name}`,
  tooLittle: (name: string): string => `zu wenig ${name}`,
  lastOf: (tag: string): string => `Rest von ${tag}`,
  hot: (tag: string): string => `${tag} noch heiß`,
} as const;

/** The mildest way out, in few words. */
export const WAY_OUT = {
  wait: (clock: string, over: number): string => (over > 0 ? `frei ${clock} (+${over})` : `frei ${clock}`),
  otherSlot: (deck: string, temperature: string | null): string => (temperature === null ? `${deck} frei` : `${deck} frei, ${temperature}`),
  otherMixer: (mixer: string): string => `${mixer} frei`,
  otherSource: (tag: string): string => `${tag} nehmen`,
  part: (pieces: number): string => `${pieces} jetzt`,
  chill: (place: string, temperature: string | null): string =>
    temperature === null ? `kalt: ${place}` : `kalt: ${place}, ${temperature}`,
  clean: (minutes: number): string => `reinigen, ${minutes} min`,
} as const;

const ANNOUNCED: Readonly<Record<Role, string>> = { running: '', call: 'Ruf', late: 'Verspätet', lost: 'Geht verloren' };

/** Calls of one role as one sentence, for a screen reader. */
export function announcement(role: Role, calls: readonly string[]): string {
  return `${ANNOUNCED[role]}: ${calls.join(', ')}.`;
}

/** Bis dahin muss es verwendet oder weggeworfen sein. */
export function limitWords(clock: string): string {
  return `Frist ${clock}`;
}
