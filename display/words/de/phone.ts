/** What the phone says, apart from verbs, roles and refusals. */
export const PHONE = {
  pageTitle: 'Handy',
  doughs: 'Teige',
  backToDoughs: 'Teige',
  back: 'Zurück',
  thisPhone: 'Dieses Handy',
  loading: 'Verbindung zur Backstube…',
  loadingMore: 'Sobald sie da ist, stehen hier die Teige.',
  emptyTitle: 'Kein Teig in Arbeit',
  emptyMore: 'Die Teige des Tages erscheinen hier, sobald sie geplant sind.',
  otherVersionTitle: 'Diese Seite ist nicht mehr aktuell',
  otherVersionMore: 'Sie hat sich schon neu geladen. Bleibt das stehen, die Seite schließen und neu öffnen.',
  forbiddenTitle: 'Dieses Handy hat hier keinen Zugang',
  forbiddenMore: 'Wer den Server der Backstube betreut, kann es zulassen.',
  fullTitle: 'Kein Platz für noch einen Bildschirm',
  fullMore: 'Einen schließen, der nicht gebraucht wird; dieser versucht es von selbst wieder.',
  inTouch: 'verbunden',
  catchingUp: 'holt auf…',
  notSentYet: 'Noch nicht gesendet. Auf diesem Handy aufbewahrt.',
  notSentShort: 'nicht gesendet',
  tooManyKept: 'Nicht angenommen: mehr Eingaben kann dieses Handy nicht aufbewahren. Erst wieder verbinden, dann noch einmal tippen.',
  weighOut: 'Abwiegen',
  lookFor: 'Darauf achten',
  caution: 'Vorsicht',
  earliest: 'frühestens',
  target: 'Ziel',
  latest: 'spätestens',
  late: 'verspätet',
  comesAfter: 'Was danach kommt',
  nothingAfter: 'Nichts: dann ist es fertig.',
  now: 'jetzt',
  becomes: 'Wird zu',
  whereItStands: 'Steht',
  inOven: 'Im Ofen',
  slotsTitle: 'Kommt auf',
  slotFree: 'frei',
  slotChosen: 'hier',
  passes: 'PASST',
  started: 'Begonnen',
  heard: 'Gehört',
  moreTime: 'Mehr Zeit',
  hold: 'Ruf anhalten',
  release: 'Wieder rufen',
  other: 'Anderes…',
  skip: 'Auslassen…',
  skipOwnReason: 'Anderer Grund',
  skipDo: 'Mit Grund auslassen',
  undo: 'Zurücknehmen',
  everything: 'alles gehört',
  name: 'Name dieses Handys',
  station: 'Wo es ist',
  noStation: 'kein fester Posten',
  save: 'Speichern',
  house: 'Betrieb',
} as const;

export function skipTitleWords(tag: string, verb: string): string {
  return `${tag} ${verb} auslassen: warum?`;
}

/** Reasons that need no typing. They go into the record as they stand. */
export const SKIP_REASONS = ['Der Teig braucht es nicht', 'Anders gemacht', 'Keine Zeit mehr', 'Nicht bei diesem Teig'] as const;

export function noLinkWords(sinceClock: string): string {
  return `Offline seit ${sinceClock} · Eingaben bleiben`;
}

export function keptWords(count: number, isLinked: boolean): string {
  const taps = count === 1 ? '1 Eingabe' : `${count} Eingaben`;
  return isLinked ? `${taps} aufbewahrt, gleich neu gesendet` : `${taps} aufbewahrt bis zur Verbindung`;
}

/** Unmistakable: this is not a real day. */
export function phonePaceWords(pace: number): string {
  return `×${pace} · kein echter Tag`;
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
  return `${pieces} Stück`;
}

export function piecesDoneWords(done: number, of: number): string {
  return `${done} von ${of} fertig`;
}

export function slotsChosenWords(chosen: number, needed: number): string {
  return `${chosen} von ${needed}`;
}

export function heardAtWords(clock: string): string {
  return `gehört ${clock}`;
}

export function heldToWords(clock: string): string {
  return `angehalten bis ${clock}`;
}

export function startedAtWords(clock: string): string {
  return `seit ${clock}`;
}

/** The nouns among what a thumb says; within a sentence they keep their capital. */
const NOUNS_DONE = ['Gang', 'Stockgare', 'Gare', 'Kästen'];

/** "1. GANG FERTIG" as a sentence writes it: "1. Gang fertig". */
function withinSentence(done: string): string {
  const words = done.toLowerCase().split(' ');
  return words.map((word) => NOUNS_DONE.find((noun) => noun.toLowerCase() === word) ?? word).join(' ');
}

/** What a tap did, as the undo bar names it. */
export const DID = {
  finished: (tag: string, done: string): string => `${tag} ${withinSentence(done)}`,
  started: (tag: string, verb: string): string => `${tag} ${verb} begonnen`,
  testPiece: 'Probestück',
  prompt: (tag: string): string => `${tag}: getan, was der Backverlauf verlangt`,
  moreTime: (tag: string, minutes: number): string => `${tag} +${minutes} min`,
  heard: (tag: string): string => `${tag} gehört`,
  held: (tag: string, minutes: number): string => `${tag} ${minutes} min angehalten`,
  released: (tag: string): string => `${tag} ruft wieder`,
  skipped: (tag: string, verb: string): string => `${tag} ${verb} ausgelassen`,
  discarded: (tag: string): string => `${tag} weggeworfen`,
  holdingDecided: (tag: string, minutes: number): string => `${tag} noch ${minutes} min verwendet`,
  read: (tag: string, celsius: string): string => `${tag} ${celsius}`,
  progressed: (tag: string, done: number): string => `${tag} ${done} fertig`,
  helped: (tag: string): string => `${tag} mitgeholfen`,
  handedOver: (tag: string, station: string): string => `${tag} übergeben an ${station}`,
  where: (tag: string, verb: string): string => `${tag} bei ${verb}`,
  moved: (tag: string): string => `${tag} umgestellt`,
  time: (tag: string): string => `${tag} Zeit berichtigt`,
  count: (tag: string, pieces: number): string => `${tag} zählt ${pieces}`,
  tag: (tag: string): string => `Kürzel ${tag}`,
  loads: (tag: string, count: number): string => `${tag} in ${count} Einschüssen`,
  joined: (tags: string): string => `${tags} zusammen`,
  drawn: (from: string, tag: string): string => `${from} in ${tag}`,
  putBack: (from: string, tag: string): string => `${from} zurück in ${tag}`,
  feedPlanned: (tag: string, clock: string): string => `${tag} auffrischen ${clock}`,
  added: (tag: string): string => `${tag} zugegeben`,
  lost: (tag: string, grams: string): string => `${tag} ${grams} weg`,
  dayEnded: 'Tag beendet',
  kitchen: 'Backstube geändert',
  house: 'Einstellungen geändert',
  book: 'Rezeptbuch geändert',
  orders: 'Bestellungen übernommen',
  pinned: 'Plan gesagt',
  planned: 'für den Tag eingeplant',
  riseForgotten: 'Erwärmung des Kneters vergessen',
  weighed: (tag: string): string => `${tag} eingewogen`,
  unweighed: (tag: string): string => `${tag} aus der Schüssel genommen`,
  rescaled: (tag: string): string => `${tag} umgerechnet`,
  watered: (tag: string): string => `${tag} Wasser zugegeben`,
  deck: 'Herd eingestellt',
  air: 'Luft vermerkt',
  blocked: 'gesperrt',
  freed: 'freigegeben',
  undone: 'Zurücknahme',
} as const;
