import type { Role } from '../../../shared/floor/role.ts';
import type { EventOf } from '../../../shared/floor/events.ts';

/** Everything else that the wall says. */
export const WALL = {
  pageTitle: 'Écran mural',
  doughs: 'Pâtes',
  ovens: 'Fours',
  soundOn: 'son actif',
  soundWaiting: 'toucher\u00a0: son',
  soundNone: 'rien ne sonne',
  soundPanel: 'toucher pour mettre le son',
  soundPanelMore: 'ou presser une touche',
  tooSmallTitle: 'Cet écran est trop petit pour être lu de là',
  tooSmallMore: 'Essayer une distance plus courte.',
  noLink: 'HORS LIGNE',
  loading: 'Connexion au fournil…',
  emptyTitle: 'Aucune pâte en cours',
  emptyMore: 'Ce qui est lancé sur un téléphone s’affiche ici.',
  stationEmpty: 'Rien pour ce poste en ce moment',
  /** After the marks and numbers of what presses at other stations. */
  elsewhere: 'ailleurs',
  setUp: 'Régler cet écran mural',
  stations: 'Les postes de ce fournil\u00a0:',
  wholeWall: 'tout le fournil',
  otherVersionTitle: 'Cette page est plus ancienne que son fournil',
  otherVersionMore: 'Elle se recharge toute seule. Si ce message reste, la recharger à la main.',
  join: 'Faire admettre cet écran',
  notKept: 'rien n’est gardé\u00a0: disque plein\u00a0?',
  backupsLate: 'pas de sauvegarde depuis deux heures',
  forbiddenTitle: 'Cet écran n’est pas admis ici',
  forbiddenMore: 'La personne qui s’occupe du serveur du fournil peut l’admettre.',
  fullTitle: 'Plus de place pour un autre écran',
  fullMore: 'En fermer un qui ne sert pas\u202f; celui-ci réessaie.',
  free: 'libre',
  deckOut: 'SORTIR',
  heard: 'entendu',
  moreDecks: 'autres étages',
  goOn: 'passer outre',
} as const;

/** Unmistakable: this is not a real day. */
export function paceWords(pace: number): string {
  return `CADENCE ×${pace} · jour fictif`;
}

/** Another device is the one that sounds. */
export function soundOnWords(deviceName: string): string {
  return `son sur ${deviceName}`;
}

/** Calls that have no row of their own. */
export function moreWords(count: number): string {
  return `+${count} ${count < 2 ? 'autre' : 'autres'}`;
}

export function freeSlotsWords(count: number): string {
  return `${count} ${count < 2 ? 'libre' : 'libres'}`;
}

/** When it calls again: shorter than until when it is held. */
export function heldWords(clock: string): string {
  return `rappel ${clock}`;
}

export function piecesWords(done: number, of: number): string {
  return `${done} sur ${of}`;
}

export function shortWords(short: number, of: number): string {
  return `manque ${short} sur ${of}`;
}

/** The stations that work on one step together. */
export function stationsWords(names: readonly string[]): string {
  return names.join(' + ');
}

/** A tag of another day in one word, where "ven. C1" is too wide: "VeC1". */
export function compactDayWords(weekday: string, tag: string): string {
  return `${weekday.charAt(0).toUpperCase()}${weekday.charAt(1)}${tag}`;
}

/** The address asks for a station that this kitchen does not have. */
export function unknownStationWords(stationId: string): string {
  return `Pas de poste «\u00a0${stationId}\u00a0» ici`;
}

/** What presses at other stations. */
export function elsewhereWords(lost: number, late: number): string {
  const parts = [lost > 0 ? `${lost} ${lost < 2 ? 'se perd' : 'se perdent'}` : '', late > 0 ? `${late} en retard` : ''].filter(
    (part) => part !== '',
  );
  return parts.length === 0 ? 'rien en retard ailleurs' : `${parts.join(', ')} ailleurs`;
}

/** From when to when a ferment is ripe. */
export function ripeWords(from: string, to: string): string {
  return `mûr ${from}–${to}`;
}

/** How a rest follows the warmth of its dough, in few words. */
export const RIPENING = {
  /** Clock or minutes, and why. */
  why: (moved: string, dough: string): string => `${moved}, ${dough}`,
  dough: (temperature: string): string => `pâte ${temperature}`,
  read: (temperature: string, clock: string): string => `pâte relevée ${temperature} ${clock}`,
  /** Reckoned, not read. */
  about: (temperature: string): string => `pâte env. ${temperature}`,
  ripe: (clock: string): string => `mûre ${clock}`,
  ripeBetween: (from: string, to: string): string => `mûre ${from}–${to}`,
} as const;

/** Why a deck cannot be used. */
export const BLOCKED: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'nettoyage',
  allergenChangeOver: 'allergènes',
  outOfOrder: 'en panne',
};

/** Why something cannot be used, and until when where somebody said. */
export function blockedWords(why: EventOf<'resourceBlocked'>['why'], until: string | null): string {
  return until === null ? BLOCKED[why] : `${BLOCKED[why]} jusqu’à ${until}`;
}

/** What stands in the way of a step, in few words; names are the house's, so that no article goes before them. */
export const IN_THE_WAY = {
  ovenFull: 'four plein',
  other: 'pas encore possible',
  /** Where there is no room to say what. Not "bloqué", which is said of dough held cold. */
  unsaid: 'empêché',
  slotTaken: (slot: string, tag: string): string => `${slot} a déjà ${tag}`,
  mixerBusy: (mixer: string, tag: string): string => `${mixer} a déjà ${tag}`,
  blocked: (name: string, why: string): string => `${name}\u00a0: ${why}`,
  changeOver: (mixer: string): string => `${mixer}\u00a0: nettoyage allergènes`,
  none: (name: string): string => `manque ${lowered(name)}`,
  tooFew: (free: number, needed: number, name: string): string => `${free} sur ${needed} ${lowered(name)}`,
  tooLittle: (name: string): string => `trop peu\u00a0: ${lowered(name)}`,
  lastOf: (tag: string): string => `fond de ${tag}`,
  hot: (tag: string): string => `${tag} encore chaud`,
} as const;

/** The mildest way out, in few words. */
export const WAY_OUT = {
  wait: (clock: string, over: number): string => (over > 0 ? `libre ${clock} (+${over})` : `libre ${clock}`),
  otherSlot: (deck: string, temperature: string | null): string =>
    temperature === null ? `${deck} libre` : `${deck} libre, ${temperature}`,
  otherMixer: (mixer: string): string => `${mixer} libre`,
  otherSource: (tag: string): string => `prendre ${tag}`,
  part: (pieces: number): string => `${pieces} d’abord`,
  chill: (place: string, temperature: string | null): string => (temperature === null ? `vers ${place}` : `vers ${place}, ${temperature}`),
  clean: (minutes: number): string => `nettoyer, ${minutes} min`,
} as const;

/** A name of the house within a line: "Moules à pain" reads "moules à pain". */
function lowered(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}

const ANNOUNCED: Readonly<Record<Role, string>> = { running: '', call: 'Appel', late: 'En retard', lost: 'Se perd' };

/** Calls of one role as one sentence, for a screen reader. */
export function announcement(role: Role, calls: readonly string[]): string {
  return `${ANNOUNCED[role]}\u00a0: ${calls.join(', ')}.`;
}

/** À utiliser ou à jeter avant. */
export function limitWords(clock: string): string {
  return `limite ${clock}`;
}
