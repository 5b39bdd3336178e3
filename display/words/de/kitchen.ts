import type { Kitchen } from '../../../shared/documents/kitchen.ts';
import type { House } from '../../../shared/documents/house.ts';
import type { EventOf } from '../../../shared/floor/events.ts';
import { decimalComma } from '../decimal-comma.ts';

/** Everything that the kitchen page says. */
export const KITCHEN = {
  title: 'Backstube',
  note: 'Rezepte und Arbeitsschritte stehen im Rezeptbuch; sie nennen die Dinge hier bei ihren Schlüsseln.',
  loading: 'Verbindung zur Backstube…',
  noLinkMore: 'Zu sehen ist der letzte Stand. Änderungen bleiben auf diesem Gerät und gehen raus, sobald die Verbindung wieder da ist.',
  emptyTitle: 'Noch keine Backstube',
  emptyMore: 'Sie kommt mit der Betriebsdatei, mit der der Server gestartet wird.',
  emptyList: 'keine',
  settings: 'Betrieb und Einstellungen',
  panelHint: 'Kneter, Ruheplatz, Herd … auswählen, um es genauer zu sehen und zu ändern.',
  close: 'Schließen',
  free: 'frei',
  empty: 'leer',
  keep: 'Änderungen speichern',
  putBack: 'Änderungen verwerfen',
  changed: 'Hier geändert, noch nicht gespeichert',
  keeping: 'Wird gespeichert…',
  keepingLater: 'Auf diesem Gerät aufbewahrt, geht raus, sobald die Verbindung wieder da ist',
  faulty: 'Nicht gespeichert. Zuerst berichtigen:',
  overtaken: 'Inzwischen hat jemand anders das hier geändert.',
  takeNewer: 'Neuen Stand nehmen, eigene Änderungen darauf',
  asTheirs: 'Neuen Stand nehmen, wie er ist',
  refused: 'Nicht gemacht:',
  mixers: 'Kneter',
  restPlaces: 'Ruheplätze',
  vessels: 'Behälter',
  ovens: 'Öfen',
  stations: 'Posten',
  sinceCleaned: 'seit der Reinigung:',
  isNew: 'neu',
  onTheSpot: 'Gilt sofort',
  details: 'Angaben',
  panel: 'Auswahl',
  faultMark: 'hier stimmt etwas nicht',
  remove: 'Aus der Backstube nehmen',
  earlier: 'Einen Platz vor',
  later: 'Einen Platz zurück',
  block: 'Sperren',
  blockMore: 'Gesperrt für alle, bis die Zeit um ist oder jemand es freigibt.',
  minutes: 'Für',
  untilFreed: 'bis zur Freigabe',
  freeIt: 'Freigeben',
  setDeck: 'Einstellen',
  setTo: 'Eingestellt auf',
  ruleNote:
    'Örtliche Vorschriften und der Rat zugelassener Fachleute gehen jedem dieser Regelwerke vor. Ein Regelwerk wählt die Werte, die zum Warm- und Kalthalten und zum Abkühlen angezeigt werden; es ersetzt niemandes Urteil.',
  riseHint: 'Ein erster Wert: Was die Teige lehren, geht ihm vor.',
  mayContainTitle: 'Kann enthalten',
  mayContainMore:
    'Steht bei jedem Rezept, jedem Produkt und jeder Charge neben dem, was die Zutaten bringen. Wann es gesagt werden muss und wann nicht gesagt werden darf, sagen örtliche Vorschriften und eigene fachkundige Beratung.',
  mixerCaution: 'Defekt oder in Reinigung: Stecker ziehen oder Hauptschalter abschließen, bevor eine Hand hineingeht.',
  ovenCaution: 'Ein heißer Herd bleibt nach dem Abschalten noch lange heiß.',
  keyHint: 'Kleinbuchstaben, Ziffern, Bindestriche',
  tasks: 'Tisch und Reinigung',
  benchWork: 'Arbeit am Tisch',
  benchUncounted: 'nicht gezählt',
  benchHint: 'Wo niemand zählt, steht der Tisch keinem Plan im Weg.',
  noCleanings: 'Keine Reinigung hat ihre Zeit.',
  hours: 'Besetzt',
  alwaysThere: 'Immer ist jemand da.',
  neverThere: 'Nie ist jemand da.',
  addHours: 'Zeit hinzufügen',
  breaks: 'Pausen',
  noBreaks: 'Keine Pausen.',
  addBreak: 'Pause hinzufügen',
  daily: 'täglich',
  someDays: 'an manchen Tagen',
  removeHours: 'Wegnehmen',
  overMidnight: 'Was früher endet, als es beginnt, dauert in den nächsten Tag hinein.',
  rateUnsaid: 'sofort',
  speedsUnsaid: 'so viele wie verlangt',
  cleaningHint: 'Einmal am Tag, in ihrer Zeit; solange sie dauert, ist für niemanden da, was gereinigt wird.',
  nobody: 'niemand',
  kinds: {
    mixer: 'Kneter',
    bowl: 'Kessel',
    restPlace: 'Ruheplatz',
    vessel: 'Behälter',
    oven: 'Ofen',
    deck: 'Herd',
    slot: 'Herdplatz',
    station: 'Posten',
    cleaning: 'Reinigung',
  },
} as const;

/** Labels of the fields, by their keys in the documents. */
export const FIELDS = {
  name: 'Name',
  id: 'Schlüssel in der Betriebsdatei',
  kind: 'Art',
  leastG: 'Teig mindestens',
  mostG: 'Teig höchstens',
  bowlComesOff: 'Der Kessel ist ausfahrbar und kann woanders stehen',
  changeOverMin: 'Reinigung bei Allergenwechsel',
  station: 'Posten',
  litres: 'Inhalt',
  fits: 'Passt an',
  temperatureC: 'Temperatur',
  deckC: 'Übliche Temperatur',
  humidityPct: 'Luftfeuchte',
  room: 'Platz für Wannen oder Wagen',
  count: 'Anzahl',
  turnRoundMin: 'Wieder bereit nach (waschen, bemehlen, abkühlen)',
  hands: 'Arbeitskräfte',
  zone: 'Zeitzone',
  unitOfTemperature: 'Temperaturen in',
  unitOfWeight: 'Gewichte in',
  altitudeM: 'Höhe über dem Meer',
  ruleSet: 'Regelwerk für Warm- und Kalthalten und Abkühlen',
  benchScaleG: 'Tischwaage zeigt Schritte von',
  fineScaleG: 'Feinwaage zeigt Schritte von',
  riseK: 'Erwärmt den Teig beim Kneten um',
  waterForm: 'Die Kneterwärmung heißt hier',
  iceC: 'Eis kommt hinein mit',
  mayContain: 'Kann in alles geraten, was hier entsteht',
  mayContainNote: 'In eigenen Worten',
  from: 'Von',
  to: 'Bis',
  days: 'Tage',
  speeds: 'Gänge',
  benchRoom: 'Teige zugleich in Arbeit',
  heatKPerMin: 'Heizt auf um',
  coolKPerMin: 'Kühlt ab um',
  cleaned: 'Was gereinigt wird',
  cleaningMin: 'Dauert',
  cleaningStation: 'Wer reinigt',
  cleaningFrom: 'Nicht vor',
  cleaningTo: 'Fertig bis',
} as const;

type Mixer = Kitchen['mixers'][number];
type Place = Kitchen['restPlaces'][number];
type Vessel = Kitchen['vessels'][number];

export const MIXER_KINDS: Readonly<Record<Mixer['kind'], string>> = {
  spiral: 'Spiralkneter',
  planetary: 'Planetenrührer',
  fork: 'Gabelkneter',
  'twin-arm': 'Tauchkneter',
};
export const PLACE_KINDS: Readonly<Record<Place['kind'], string>> = {
  bench: 'Tisch',
  'warm-shelf': 'warmes Regal',
  prover: 'Gärraum',
  retarder: 'Gärverzögerer',
  'cold-room': 'Kühlraum',
  freezer: 'Froster',
};
export const VESSEL_KINDS: Readonly<Record<Vessel['kind'], string>> = {
  tub: 'Wanne',
  tin: 'Kasten',
  banneton: 'Gärkorb',
  board: 'Diele',
  tray: 'Blech',
  rack: 'Stikkenwagen',
};
// "Pfund" alone is half a kilogram to a German ear.
export const WEIGHT_UNITS: Readonly<Record<House['units']['weight'], string>> = {
  g: 'Gramm und Kilogramm',
  lb: 'englische Pfund und Unzen (lb, oz)',
};

/** By which custom the house reckons its water. */
export const WATER_FORMS: Readonly<Record<House['water']['form'], string>> = {
  rise: 'Erwärmung des Teigs',
  friction: 'Reibungswert',
  base: 'Basistemperatur',
};

/** Why a thing cannot be had. */
export const BLOCK_REASONS: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'Reinigung',
  allergenChangeOver: 'Allergenwechsel',
  outOfOrder: 'defekt',
};

export function addWords(kind: keyof typeof KITCHEN.kinds): string {
  return `${KITCHEN.kinds[kind]} hinzufügen`;
}

export function addWithinWords(kind: 'deck' | 'slot' | 'bowl', name: string): string {
  return `${name}: ${addWords(kind)}`;
}

export function blockedWords(why: string, untilClock: string | null): string {
  return untilClock === null ? why : `${why} bis ${untilClock}`;
}

export function handsWords(hands: number): string {
  return hands === 1 ? '1 Kraft' : `${hands} Kräfte`;
}

/** How many doughs can be worked on the bench at once. */
export function doughsAtOnceWords(count: number): string {
  return count === 1 ? '1 Teig auf einmal' : `${count} Teige zugleich`;
}

export function roomWords(taken: number, room: number): string {
  return `${taken} von ${room}`;
}

export function rangeOfLoadWords(least: string, most: string): string {
  return `${decimalComma(least)}–${decimalComma(most)}`;
}

export function litresWords(litres: number): string {
  return `${decimalComma(litres)} l`;
}

export function countWords(count: number): string {
  return `${count} insgesamt`;
}

export function heldCountWords(count: number): string {
  return `${count} belegt`;
}

export function returningWords(count: number, clock: string): string {
  return `${count} zurück bis ${clock}`;
}

export function freeCountWords(count: number): string {
  return `${count} frei`;
}

/** Beside what a deck is set to. */
export function usuallyWords(temperature: string): string {
  return `üblich ${temperature}`;
}

/** What a document's shape asks for, where a field does not say it in the reader's unit. */
export function atLeastWords(least: number): string {
  return `mindestens ${decimalComma(least)}`;
}

export function atMostWords(most: number): string {
  return `höchstens ${decimalComma(most)}`;
}

/** For figures whose bound is itself too little. */
export function moreThanWords(least: number): string {
  return `mehr als ${decimalComma(least)}`;
}

/** A fault with the thing that has it. */
export function faultOfWords(name: string, message: string): string {
  return name === '' ? message : `${name}: ${message}`;
}
