import type { OrderForm } from '../../../shared/documents/order.ts';
import type { MovedStep } from '../../../shared/floor/events.ts';
import type { OrderField } from '../../../shared/plan/orders/order-columns.ts';
import type { LineFault } from '../../../shared/plan/orders/read-orders.ts';

/** Ce que dit la page d’un jour autour de ses parties. */
export const DAY = {
  title: 'La journée',
  date: 'Date',
  today: 'Aujourd’hui',
  tomorrow: 'Demain',
  dayBefore: 'Le jour d’avant',
  dayAfter: 'Le jour d’après',
  sections: 'Parties de la journée',
  loading: 'Liaison avec le fournil…',
  loadingBook: 'Ouverture du livre de recettes…',
  emptyTitle: 'Pas encore de fournil',
  emptyMore: 'Une journée se prévoit pour un fournil. Il vient avec le fichier du fournil donné au serveur.',
  failedTitle: 'Le livre de recettes est hors d’atteinte',
  failedMore: 'Sans lui, personne ne sait ce qui peut être commandé. Ci-dessous, le dernier état connu.',
  tryAgain: 'Réessayer',
  noLinkMore: 'Vous voyez le dernier état connu. Rien ne se commande ni ne se prévoit avant le retour de la liaison.',
  closed: 'Cette journée est finie\u00a0: plus rien ne se commande pour elle.',
  refused: 'Pas fait\u00a0:',
  forbidden: 'Cet appareil ne peut pas prévoir la journée.',
  unsent: 'Pas fait\u00a0: le serveur était hors d’atteinte. Réessayez\u202f; rien ne se fait deux fois.',
  held: (ruleSet: string): string =>
    `Des garnitures et des denrées gardées sont prévues. Les valeurs de conservation et de refroidissement sont celles de\u00a0: ${ruleSet}\u202f; la réglementation locale et l’avis de vos professionnels agréés passent avant. Le plan ne tient rien au froid\u00a0: mesurez.`,
} as const;

export const DAY_SECTIONS = {
  orders: 'Commandes',
  plan: 'Plan',
  stations: 'Par poste',
  try: 'Essayer la journée',
} as const;

/** Colonnes des commandes\u00a0: sur la page, et comme titres de ce qui est collé. */
export const ORDER_COLUMNS: Readonly<Record<OrderField, string>> = {
  product: 'Produit',
  pieces: 'Pièces',
  readyAt: 'Prêt pour',
  form: 'Froid ou chaud',
  freshMin: 'Frais',
  loadingMin: 'Chargement',
  label: 'Pour qui',
  weight: 'Importance',
  date: 'Date',
};

export const ORDER_FORMS: Readonly<Record<OrderForm, string>> = { cooled: 'froid', hot: 'chaud' };

/** Les commandes du jour, et l’une d’elles en cours de saisie. */
export const ORDERS = {
  none: 'Rien n’est commandé pour ce jour.',
  noneMore: 'Saisissez une commande, collez-en d’un tableur, ou reprenez les commandes régulières.',
  table: 'Commandes du jour',
  sum: (orders: number, pieces: number): string => `${orders === 1 ? '1 commande' : `${orders} commandes`}, ${pieces} pièces`,
  named: (pieces: number, product: string, clock: string): string => `${pieces} ${product}, ${clock}`,
  actions: 'Changer ou retirer',
  plan: 'Selon le plan',
  onTime: 'à l’heure',
  late: (min: number): string => `${min} min de retard`,
  short: (pieces: number): string => `il en manque ${pieces}`,
  notPlanned: 'pas encore prévue',
  fromStanding: 'régulière',
  change: 'Changer',
  changeOne: (order: string): string => `Changer la commande ${order}`,
  withdraw: 'Retirer',
  withdrawOne: (order: string): string => `Retirer la commande ${order}`,
  withdrawn: (order: string): string => `Retirée\u00a0: ${order}.`,
  putBack: 'La remettre',
  placed: (orders: number): string => (orders === 1 ? 'Une commande est prise.' : `${orders} commandes sont prises.`),
  changed: 'Changée.',
  // Le formulaire.
  add: 'Saisir une commande',
  more: 'En dire plus',
  take: 'Prendre la commande',
  keep: 'Garder le changement',
  cancel: 'Laisser',
  readyHint: 'à l’heure de la maison\u00a0: 6:30',
  freshHint: 'hors du four depuis ce temps au plus',
  loadingHint: 'avant qu’elle soit voulue',
  labelHint: 'la boutique, l’étal\u202f; jamais le nom d’une personne',
  weightHint: '1 d’habitude\u202f; une minute de retard compte autant de fois',
  needProduct: 'choisir un produit du livre',
  needClock: 'une heure, comme 6:30',
} as const;

/** Des commandes collées ou lues d’un fichier. */
export const READING = {
  title: 'Coller, ou lire un fichier',
  more: 'Copié d’un tableur, ou CSV à virgules ou points-virgules. Colonnes dans cet ordre, ou sous ces titres dans n’importe quel ordre\u00a0:',
  box: 'Commandes, une par ligne',
  file: 'Choisir un fichier',
  tooLarge: (kibibytes: number): string => `Ce fichier est trop gros\u00a0: ${kibibytes} Kio au plus.`,
  notReadable: 'Ce fichier n’a pas pu être lu.',
  read: (orders: number): string => (orders === 1 ? '1 commande est lue.' : `${orders} commandes sont lues.`),
  alsoDates: (dates: string): string => `Certaines sont pour d’autres jours\u00a0: ${dates}.`,
  unread: (headings: string): string => `Pas lu, personne n’en a besoin\u00a0: ${headings}.`,
  known: (orders: number): string =>
    orders === 1
      ? 'L’une d’elles existe déjà à l’identique\u00a0: reprise, elle sera faite deux fois.'
      : `${orders} d’entre elles existent déjà à l’identique\u00a0: reprises, elles seront faites deux fois.`,
  faults: (lines: number): string =>
    lines === 1
      ? 'Une ligne n’est pas encore juste. Elle reste ici\u00a0:'
      : `${lines} lignes ne sont pas encore justes. Elles restent ici\u00a0:`,
  at: (line: number, column: number | null): string => (column === null ? `Ligne ${line}` : `Ligne ${line}, colonne ${column}`),
  moreFaults: (faults: number): string => `et ${faults} de plus`,
  take: (orders: number): string => (orders === 1 ? 'Prendre 1 commande' : `Prendre ${orders} commandes`),
  clear: 'Vider la case',
} as const;

/** Une erreur dans un texte de commandes. `text` est ce qui s’y trouve, `field` le titre de la colonne. */
export function orderFaultWords(code: LineFault['code'], text: string, field: string, near: string | null): string {
  const said = text === '' ? '' : `«\u00a0${text}\u00a0»`;
  switch (code) {
    case 'quote':
      return 'les guillemets ne finissent pas avec la cellule';
    case 'columnMissing':
      return `il n’y a pas de colonne «\u00a0${field}\u00a0»`;
    case 'columnTwice':
      return `la colonne «\u00a0${field}\u00a0» y est deux fois`;
    case 'extraCell':
      return `${said} est au-delà de la dernière colonne`;
    case 'missing':
      return `«\u00a0${field}\u00a0» manque`;
    case 'productUnknown':
      return near === null
        ? `${said} n’est pas un produit du livre`
        : `${said} n’est pas un produit du livre\u202f; «\u00a0${near}\u00a0»\u202f?`;
    case 'productTwice':
      return `plusieurs produits s’appellent ${said}\u00a0: écrire la clé`;
    case 'notPieces':
      return `${said} n’est pas un nombre de pièces`;
    case 'notClockTime':
      return `${said} n’est pas une heure, comme 6:30`;
    case 'notForm':
      return `${said} n’est ni froid ni chaud`;
    case 'notMinutes':
      return `${said} n’est pas une durée, comme 90 ou 1:30`;
    case 'notWeight':
      return `${said} n’est pas entre 1 et 9`;
    case 'labelTooLong':
      return 'trop long\u00a0: 60 signes au plus';
    case 'notDate':
      return `${said} n’est pas une date, comme 07/03/2026`;
    case 'dateOver':
      return `${said} est passé`;
    case 'tooMany':
      return `une journée prend ${text} commandes au plus`;
  }
}

/** Des commandes qui reviennent chaque semaine. */
export const STANDING = {
  title: 'Commandes régulières',
  none: 'Pas encore de commande régulière.',
  more: 'Elles reviennent chaque semaine à leurs jours, et quelqu’un les reprend pour une date.',
  weekdays: 'Le',
  daily: 'tous les jours',
  add: 'Ajouter une commande régulière',
  take: 'Garder la commande régulière',
  takeOver: (orders: number, date: string): string =>
    orders === 1 ? `Reprendre 1 commande pour ${date}` : `Reprendre ${orders} commandes pour ${date}`,
  allTaken: (date: string): string => `Tout ce qui est régulier pour ${date} est repris.`,
  tooLate: (date: string): string => `L’heure de ce qui reste de régulier pour ${date} est passée.`,
  noneOn: (date: string): string => `Rien de régulier pour ${date}.`,
  change: 'Changer',
  changeOne: (order: string): string => `Changer la commande régulière ${order}`,
  remove: 'Enlever',
  removeOne: (order: string): string => `Enlever la commande régulière ${order}`,
  needDays: 'choisir au moins un jour',
  overtaken: 'Quelqu’un d’autre a changé les commandes régulières entre-temps\u00a0: regardez de nouveau.',
  kept: 'Les commandes régulières sont enregistrées.',
} as const;

/** Un plan qu’on cherche, compare et garde. */
export const PLANNING = {
  plan: 'Prévoir la journée',
  again: 'Prévoir ainsi',
  more: 'De ces commandes\u00a0: les pétrissées, et quand commence chaque étape. Rien ne change avant d’être gardé.',
  noOrders: 'Rien n’est commandé pour ce jour\u00a0: rien à prévoir.',
  running: 'La journée se prévoit',
  stop: 'Arrêter',
  progress: (done: string, all: string): string => `${done} voies essayées sur ${all}`,
  bestSoFar: (onTime: number, orders: number): string => `au mieux jusqu’ici\u00a0: ${onTime} commandes sur ${orders} à l’heure`,
  nothingYet: 'pas encore de journée trouvée',
  failedTitle: 'Cette journée ne peut pas être prévue',
  // Comparés.
  compare: 'Propositions comparées',
  inForce: 'en vigueur',
  proposal: (letter: string): string => `Proposition ${letter}`,
  show: 'Montrer',
  showOne: (name: string): string => `Montrer sur la feuille du jour\u00a0: ${name}`,
  keep: 'Garder',
  keepOne: (name: string): string => `Garder\u00a0: ${name}`,
  drop: 'Écarter',
  dropOne: (name: string): string => `Écarter\u00a0: ${name}`,
  outdated: 'Commandes ou fournil ont changé depuis\u00a0: prévoyez de nouveau.',
  asOrdered: 'comme commandé',
  kept: 'Gardé. Le fournil suit ce plan.',
  unknown: '–',
  // À l’essai.
  tryTitle: 'Essayer autrement',
  tryMore: 'Essayé dans une proposition\u202f; la commande ne change que si elle est gardée.',
  order: 'Commande',
  laterMin: 'Minutes de plus',
  fewerTo: 'Pièces',
  tryLater: 'Prête plus tard',
  tryFewer: 'Moins de pièces',
  tryLeaveOut: 'La laisser',
  tryFirst: 'Avant toutes les autres',
  changes: 'À essayer',
  later: (order: string, min: number): string => `${order}\u00a0: ${lengthWords(min)} plus tard`,
  fewer: (order: string, pieces: number): string => `${order}\u00a0: ${pieces} pièces seulement`,
  leftOut: (order: string): string => `${order}\u00a0: laissée`,
  first: (order: string): string => `${order}\u00a0: avant toutes les autres`,
  pinned: (step: string, clock: string): string => `${step}\u00a0: à ${clock}`,
  takeBack: (change: string): string => `Finalement non\u00a0: ${change}`,
  // Pourquoi cela ne tient pas.
  whyTitle: 'Pourquoi cela ne tient pas',
  whyMore: 'Trouvé en prévoyant de nouveau\u202f; chaque bouton prévoit la journée avec ce changement.',
  try: 'Essayer',
  // Ce que le plan dit de lui-même.
  movedTitle: (clock: string): string => `Déplacé à ${clock}`,
  nothingMoved: 'Rien ne s’est déplacé.',
  notBegun: 'son heure est venue, personne ne l’a commencée',
  goesWith: (step: string): string => `va avec ${step}`,
  warningsTitle: 'À prévoir',
  noWarnings: 'Ni retard ni perte en vue.',
  offersTitle: 'De meilleures voies, offertes',
  offer: (clock: string): string => `Trouvée à ${clock}`,
  offerGain: (before: string, after: string): string => `à l’heure\u00a0: ${before} → ${after}`,
  offerLate: (before: number, after: number): string => `retard en tout\u00a0: ${before} → ${after} min`,
  offerMoves: (steps: number): string => (steps === 1 ? '1 étape se déplace' : `${steps} étapes se déplacent`),
  noPlan: 'Le fournil ne suit encore aucun plan.',
  madeAt: (clock: string): string => `Le plan en vigueur est de ${clock}.`,
  replanning: 'Nouvelle prévision…',
  replanFailed: 'La dernière nouvelle prévision n’a rien donné\u00a0:',
  statusFailed: 'Le planificateur est hors d’atteinte.',
  movedMore: (steps: number): string => `et ${steps} de plus`,
} as const;

/** Lignes de la comparaison, par les noms des chiffres. */
export const FIGURES = {
  ordersOnTime: 'Commandes à l’heure',
  latestMin: 'La plus en retard',
  spoilMin: 'Attend trop',
  pinsBroken: 'Fixés non tenus',
  ripenessMin: 'Hors maturité',
  staleMin: 'Plus vieux que voulu',
  beginsMs: 'Commence',
  endsMs: 'Finit',
  handsMin: 'Main-d’œuvre',
  movedMin: 'Déplacé',
  batches: 'Pétrissées',
  changes: 'Essayé autrement',
} as const;

export function ofAllWords(some: number, all: number): string {
  return `${some} sur ${all}`;
}

/** Une durée qui se lit d’un coup d’œil\u00a0: « 45 min », « 3 h 10 ». */
export function lengthWords(min: number): string {
  const whole = Math.round(min);
  if (whole < 60) return `${whole} min`;
  const rest = whole % 60;
  return rest === 0 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${String(rest).padStart(2, '0')}`;
}

export function inWords(length: string): string {
  return `dans ${length}`;
}

/** Une pétrissée avant son repère\u00a0: la recette, et laquelle. */
export function batchWords(formula: string, number: string): string {
  return `${formula} ${number}`;
}

/** Une étape d’une pâte en une ligne\u00a0: « C1 rabattre ». */
export function stepWords(tag: string, verb: string): string {
  return `${tag} ${verb}`;
}

/** Avertissements d’un plan. `step` est repère et verbe, `order` pièces, produit et heure. */
export const WARNINGS = {
  spoils: (step: string, clock: string, length: string): string => `${step}\u00a0: trop long à partir de ${clock}, de ${length}`,
  late: (order: string, clock: string, length: string): string => `${order}\u00a0: prête à ${clock}, ${length} de retard`,
  short: (order: string, pieces: number): string => `${order}\u00a0: il manque ${pieces} pièces`,
  pinBroken: (step: string, clock: string): string => `${step}\u00a0: ne peut pas commencer comme fixé\u202f; ${clock}`,
  firstBroken: (order: string): string => `${order}\u00a0: ne peut pas passer avant toutes les autres`,
} as const;

/** Pourquoi une étape s’est déplacée. `thing` est une chose, une étape ou une commande, là où elle est connue. */
export function movedWhyWords(what: NonNullable<MovedStep['because']>['what'], thing: string | null): string {
  switch (what) {
    case 'resource':
      return thing === null ? 'ce qu’il lui faut est pris' : `${thing}\u00a0: pris`;
    case 'dough':
      return thing === null ? 'sa propre pâte' : `attend ${thing}`;
    case 'order':
      return 'sa commande';
    case 'pin':
      return 'un moment fixé';
    case 'search':
      return 'une meilleure voie s’est trouvée';
  }
}

/** Ce qui ne va pas dans une journée prévue. */
export const TROUBLES = {
  late: (order: string, length: string): string => `${order}\u00a0: ${length} de retard`,
  spoils: (step: string, length: string): string => `${step}\u00a0: attend ${length} de trop`,
  pinBroken: (step: string, clock: string): string => `${step}\u00a0: ne peut pas commencer comme fixé\u202f; ${clock}`,
} as const;

/** Ce qui la retient. `at` et `by` sont des étapes, `thing` un pétrin, une sole, un poste. */
export const CAUSES = {
  busy: (at: string, thing: string, by: string, clock: string): string =>
    `${at}\u00a0: attend jusqu’à ${clock}, ${thing} est pris par ${by}.`,
  atWork: (at: string, station: string, by: string, clock: string): string =>
    `${at}\u00a0: attend jusqu’à ${clock}, ${station} est à ${by}.`,
  nobody: (at: string, station: string, clock: string): string => `${at}\u00a0: attend jusqu’à ${clock}, personne avant à ${station}.`,
  closed: (at: string, thing: string, clock: string): string => `${at}\u00a0: attend jusqu’à ${clock}, ${thing} n’est pas libre avant.`,
  tooShort: (at: string, clock: string): string => `Seul le temps manque\u00a0: ${at} commence à ${clock}, et de là c’est trop long.`,
  pinned: (at: string, clock: string): string => `${at} est fixé à ${clock}.`,
  begun: (at: string): string => `${at} est en cours, et dure ce qu’il dure.`,
} as const;

/** Des changements essayés, et ce qu’il en est sorti. */
export const REMEDIES = {
  fits: '– alors cela tient',
  /** Ce qu’il en est advenu, après ce qui change. */
  inTime: '– alors à l’heure',
  lateStill: (length: string, before: string): string => `– alors ${length} de retard au lieu de ${before}`,
  inAll: (length: string, before: string): string => `toutes les commandes ensemble ${length} de retard au lieu de ${before}`,
  noneSpoils: '– alors rien n’attend trop longtemps',
  spoilsStill: (length: string): string => `– alors encore ${length} de trop en tout`,
  asPinned: '– alors cela commence comme fixé',
  offPin: (length: string): string => `– alors à ${length} de l’heure fixée`,
  openEarlier: (station: string, length: string): string => `Quelqu’un à ${station} ${length} plus tôt`,
  openLonger: (station: string, length: string): string => `Quelqu’un à ${station} ${length} plus longtemps`,
  allEarlier: (length: string): string => `Tout le monde ${length} plus tôt`,
  allLonger: (length: string): string => `Tout le monde ${length} plus longtemps`,
  oneMoreHand: (station: string): string => `Une paire de bras de plus\u00a0: ${station}`,
  oneMoreHandFor: (station: string, from: string, to: string): string => `Une paire de bras de plus\u00a0: ${station}, de ${from} à ${to}`,
  moreVessels: (vessel: string, count: number): string => `${count} de plus\u00a0: ${vessel}`,
  beginEarlier: (step: string, length: string, clock: string): string => `${step}\u00a0: ${length} plus tôt, à ${clock}`,
  beginLater: (step: string, length: string, clock: string): string => `${step}\u00a0: ${length} plus tard, à ${clock}`,
  inKitchen: 'Heures et bras sont dans la page du fournil',
  none: 'Rien de ce qui a été essayé ne la fait tenir.',
  also: 'Pour la même raison\u00a0:',
} as const;

/** Pourquoi une journée ne peut pas du tout être prévue. `batch` est ce dont il s’agit, là où c’est une chose. */
export const PLAN_FAULTS = {
  documentMissing: (batch: string, missing: string): string => `${batch}\u00a0: ${missing} manque dans le livre`,
  noMixer: (batch: string, weight: string): string => `${batch}\u00a0: aucun pétrin ne prend ${weight}`,
  noDeck: (batch: string, needed: number, most: number): string =>
    `${batch}\u00a0: il faut ${needed} places à la fois, aucune sole n’en a plus de ${most}`,
  noDeckForPieces: (batch: string, pieces: number, most: number): string =>
    `${batch}\u00a0: ${pieces} pièces vont au four à la fois, aucune sole n’en prend plus de ${most}`,
  tooMany: (batch: string, batches: number): string => `${batch}\u00a0: ${batches} pétrissées, plus qu’une journée ne peut en avoir`,
  tooFewVessels: (batch: string, needed: number, most: number): string =>
    `${batch}\u00a0: il faut ${needed} contenants à la fois, il y en a ${most}`,
  tooFewHands: (batch: string, needed: number, most: number): string =>
    `${batch}\u00a0: il faut ${needed} bras à la fois, il y en a ${most}`,
  orderUnknown: 'Une commande à essayer autrement n’est plus là.',
  noKitchen: 'Il n’y a pas encore de fournil.',
  nothingPlanned: 'Il n’y a aucun plan à essayer.',
  givenUp: 'Abandonné avant la fin.',
  crashed: 'Le planificateur est tombé en panne. C’est dans le journal du serveur\u202f; réessayez.',
} as const;
