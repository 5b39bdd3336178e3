import type { Kitchen } from '../../../shared/documents/kitchen.ts';
import type { House } from '../../../shared/documents/house.ts';
import type { EventOf } from '../../../shared/floor/events.ts';
import { decimalComma } from '../decimal-comma.ts';

/** Everything that the kitchen page says. */
export const KITCHEN = {
  title: 'Fournil',
  note: 'Les recettes et leurs méthodes sont dans le livre de recettes\u202f; elles désignent les choses d’ici par leurs clés.',
  loading: 'Connexion au fournil…',
  noLinkMore: 'Ce qui s’affiche est le dernier état connu. Les modifications restent sur cet appareil et partent au retour de la liaison.',
  emptyTitle: 'Pas encore de fournil',
  emptyMore: 'Il vient avec le fichier de la boulangerie donné au serveur à son démarrage.',
  emptyList: 'rien',
  settings: 'Boulangerie et réglages',
  panelHint: 'Choisir un pétrin, un lieu, un étage… pour le voir de près et le modifier.',
  close: 'Fermer',
  free: 'libre',
  empty: 'vide',
  keep: 'Garder les changements',
  putBack: 'Remettre comme avant',
  changed: 'Modifié ici, pas encore gardé',
  keeping: 'Enregistrement…',
  keepingLater: 'Gardé sur cet appareil, envoyé au retour de la liaison',
  faulty: 'Pas gardé. À corriger d’abord\u00a0:',
  overtaken: 'Quelqu’un d’autre l’a modifié entre-temps.',
  takeNewer: 'Prendre sa version, avec mes changements',
  asTheirs: 'Prendre sa version telle quelle',
  refused: 'Pas fait\u00a0:',
  mixers: 'Pétrins',
  restPlaces: 'Lieux de repos',
  vessels: 'Contenants',
  ovens: 'Fours',
  stations: 'Postes',
  sinceCleaned: 'depuis le nettoyage\u00a0:',
  isNew: 'nouveau',
  onTheSpot: 'Sur le moment',
  details: 'Détails',
  panel: 'Ce qui est choisi',
  faultMark: 'quelque chose ne va pas ici',
  remove: 'Retirer du fournil',
  earlier: 'Un rang plus tôt',
  later: 'Un rang plus tard',
  block: 'Mettre hors service',
  blockMore: 'Personne ne peut s’en servir avant la fin de la durée ou la remise en service.',
  minutes: 'Durée',
  untilFreed: 'jusqu’à remise en service',
  freeIt: 'Remettre en service',
  setDeck: 'Régler',
  setTo: 'Réglage',
  ruleNote:
    'La réglementation locale et l’avis de professionnels agréés passent avant chacun de ces jeux de règles. Ceux-ci déterminent les valeurs affichées pour la conservation et le refroidissement\u202f; ils ne remplacent le jugement de personne.',
  riseHint: 'Un premier chiffre\u00a0: ce que les pâtes apprennent passe avant.',
  mayContainTitle: 'Peut contenir',
  mayContainMore:
    'Affiché avec chaque recette, chaque produit et chaque pétrissée, à côté de ce qu’apportent les ingrédients. Quand il faut le dire, et quand il ne faut pas, relève des règles locales et de votre propre conseil agréé.',
  mixerCaution: 'En panne ou en nettoyage\u00a0: débrancher ou consigner avant d’y mettre la main.',
  ovenCaution: 'Une sole chaude le reste longtemps après l’arrêt.',
  keyHint: 'minuscules sans accent, chiffres, traits d’union',
  tasks: 'Plan de travail et nettoyage',
  benchWork: 'Travail au tour',
  benchUncounted: 'pas compté',
  benchHint: 'Là où personne ne compte, le plan de travail ne gêne aucun plan.',
  noCleanings: 'Aucun nettoyage n’a son heure.',
  hours: 'Présence',
  alwaysThere: 'Il y a toujours quelqu’un.',
  neverThere: 'Il n’y a jamais personne.',
  addHours: 'Ajouter des heures',
  breaks: 'Pauses',
  noBreaks: 'Pas de pause.',
  addBreak: 'Ajouter une pause',
  daily: 'tous les jours',
  someDays: 'certains jours',
  removeHours: 'Enlever',
  overMidnight: 'Ce qui finit plus tôt que cela ne commence dure jusqu’au lendemain.',
  rateUnsaid: 'aussitôt',
  speedsUnsaid: 'autant que demandé',
  cleaningHint: 'Une fois par jour, dans ses heures\u202f; pendant ce temps, personne n’a ce qui se nettoie.',
  nobody: 'personne',
  kinds: {
    mixer: 'Pétrin',
    bowl: 'Cuve',
    restPlace: 'Lieu',
    vessel: 'Contenant',
    oven: 'Four',
    deck: 'Étage',
    slot: 'Place',
    station: 'Poste',
    cleaning: 'Nettoyage',
  },
} as const;

/** Labels of the fields, by their keys in the documents. */
export const FIELDS = {
  name: 'Nom',
  id: 'Clé dans le fichier de la boulangerie',
  kind: 'Type',
  leastG: 'Pâte au minimum',
  mostG: 'Pâte au maximum',
  bowlComesOff: 'La cuve s’enlève et peut rester ailleurs',
  changeOverMin: 'Nettoyage au changement d’allergènes',
  station: 'Poste',
  litres: 'Volume',
  fits: 'Va sur',
  temperatureC: 'Température',
  deckC: 'Température habituelle',
  humidityPct: 'Humidité',
  room: 'Places pour bacs ou échelles',
  count: 'Nombre en tout',
  turnRoundMin: 'Remise en état (lavage, farinage, refroidissement)',
  hands: 'Personnes',
  zone: 'Fuseau horaire',
  unitOfTemperature: 'Températures en',
  unitOfWeight: 'Poids en',
  altitudeM: 'Altitude',
  ruleSet: 'Règles de conservation et de refroidissement',
  benchScaleG: 'Balance du plan de travail, par pas de',
  fineScaleG: 'Balance de précision, par pas de',
  riseK: 'Réchauffe la pâte au pétrissage de',
  waterForm: 'L’échauffement du pétrin se dit en',
  iceC: 'La glace entre à',
  mayContain: 'Peut se trouver dans tout ce qui est fait ici',
  mayContainNote: 'Avec vos propres mots',
  from: 'De',
  to: 'À',
  days: 'Jours',
  speeds: 'Vitesses',
  benchRoom: 'Pâtes travaillées à la fois',
  heatKPerMin: 'Chauffe de',
  coolKPerMin: 'Refroidit de',
  cleaned: 'Ce qui se nettoie',
  cleaningMin: 'Dure',
  cleaningStation: 'Qui nettoie',
  cleaningFrom: 'Pas avant',
  cleaningTo: 'Fini à',
} as const;

type Mixer = Kitchen['mixers'][number];
type Place = Kitchen['restPlaces'][number];
type Vessel = Kitchen['vessels'][number];

export const MIXER_KINDS: Readonly<Record<Mixer['kind'], string>> = {
  spiral: 'spirale',
  planetary: 'batteur',
  fork: 'axe oblique',
  'twin-arm': 'bras plongeants',
};
export const PLACE_KINDS: Readonly<Record<Place['kind'], string>> = {
  bench: 'plan de travail',
  'warm-shelf': 'étagère chaude',
  prover: 'étuve',
  retarder: 'chambre de blocage',
  'cold-room': 'chambre froide',
  freezer: 'congélateur',
};
export const VESSEL_KINDS: Readonly<Record<Vessel['kind'], string>> = {
  tub: 'bac',
  tin: 'moule',
  banneton: 'banneton',
  board: 'planche',
  tray: 'plaque',
  rack: 'échelle',
};
// Not "livres" alone: on a French market that is half a kilogram.
export const WEIGHT_UNITS: Readonly<Record<House['units']['weight'], string>> = {
  g: 'grammes et kilogrammes',
  lb: 'livres et onces anglaises (lb, oz)',
};

/** By which custom the house reckons its water. */
export const WATER_FORMS: Readonly<Record<House['water']['form'], string>> = {
  rise: 'échauffement de la pâte',
  friction: 'coefficient de friction',
  base: 'température de base',
};

/** Why a thing cannot be had. */
export const BLOCK_REASONS: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'nettoyage',
  allergenChangeOver: 'nettoyage allergènes',
  outOfOrder: 'en panne',
};

export function addWords(kind: keyof typeof KITCHEN.kinds): string {
  return `Ajouter ${kind === 'bowl' || kind === 'slot' ? 'une' : 'un'} ${KITCHEN.kinds[kind].toLowerCase()}`;
}

export function addWithinWords(kind: 'deck' | 'slot' | 'bowl', name: string): string {
  return `${addWords(kind)}\u00a0: ${name}`;
}

export function blockedWords(why: string, untilClock: string | null): string {
  return untilClock === null ? why : `${why} jusqu’à ${untilClock}`;
}

export function handsWords(hands: number): string {
  return hands < 2 ? `${hands} personne` : `${hands} personnes`;
}

/** How many doughs can be worked on the bench at once. */
export function doughsAtOnceWords(count: number): string {
  return count === 1 ? '1 pâte à la fois' : `${count} pâtes à la fois`;
}

export function roomWords(taken: number, room: number): string {
  return `${taken} sur ${room}`;
}

export function rangeOfLoadWords(least: string, most: string): string {
  return `${least}–${most}`;
}

export function litresWords(litres: number): string {
  return `${decimalComma(litres)} l`;
}

export function countWords(count: number): string {
  return `${count} en tout`;
}

export function heldCountWords(count: number): string {
  return `${count} en usage`;
}

export function returningWords(count: number, clock: string): string {
  return `${count} de retour à ${clock}`;
}

export function freeCountWords(count: number): string {
  return `${count} ${count < 2 ? 'libre' : 'libres'}`;
}

/** Beside what a deck is set to. */
export function usuallyWords(temperature: string): string {
  return `d’habitude ${temperature}`;
}

/** What a document's shape asks for, where a field does not say it in the reader's unit. */
export function atLeastWords(least: number): string {
  return `au moins ${decimalComma(least)}`;
}

export function atMostWords(most: number): string {
  return `au plus ${decimalComma(most)}`;
}

/** For figures whose bound is itself too little. */
export function moreThanWords(least: number): string {
  return `plus de ${decimalComma(least)}`;
}

/** A fault with the thing that has it. */
export function faultOfWords(name: string, message: string): string {
  return name === '' ? message : `${name}\u00a0: ${message}`;
}
