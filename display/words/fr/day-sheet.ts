import type { Standing } from '../../day/sheet-bar.ts';

/** What the day sheet says. */
export const SHEET_WORDS = {
  title: 'La journée sur un axe du temps',
  grouping: 'En lignes',
  byDough: 'Par pâte',
  byResource: 'Par machine et par mains',
  zoom: 'Afficher',
  zooms: { fit: 'Toute la journée', fourHours: '4 heures', hour: '1 heure' },
  toNow: 'À MAINTENANT',
  now: 'MAINTENANT',
  orders: 'Commandes',
  legend: 'Ce que veulent dire les formes',
  emptyTitle: 'Rien encore ce jour-là',
  emptyMore: 'Les commandes, les pâtes et ce qui est prévu s’affichent ici.',
  noPlan: 'Aucun plan n’est retenu : la suite est calculée d’après les durées visées des méthodes.',
  tried: 'Cette journée est seulement à l’essai. Rien n’en est encore retenu.',
  keysHint: 'Les flèches vont d’étape en étape et de ligne en ligne. Entrée ouvre une étape.',
  clashesTitle: 'Ce qui ne va pas ensemble',
  close: 'Fermer',
  bench: 'Tour',
  standings: { done: 'fait', begun: 'en cours', planned: 'prévu', proposed: 'proposé' } satisfies Record<Standing, string>,
  legends: {
    hands: 'travail des mains',
    judged: 'finit par un contrôle',
    rest: 'repose',
    bake: 'au four',
    slack: 'peut attendre jusqu’ici',
    was: 'était ici avant',
    pin: 'fixé',
    closed: 'personne, hors service',
    clash: 'conflit',
    order: 'commande attendue',
    late: 'commande en retard',
  },
  with: 'Avec',
  check: 'Contrôle',
  caution: 'Attention',
  mayWait: 'Peut attendre',
  mayWaitOpen: 'sans limite : la méthode n’en fixe pas',
  noMore: 'pas du tout',
  moved: 'Déplacé',
  pieces: 'Pièces',
  pinTitle: 'Quand elle commence',
  startsAt: 'Commence à',
  fix: 'Fixer',
  letMove: 'Laisser bouger',
  notAClock: 'Il faut une heure, par exemple 04:30.',
  isBegun: 'Elle a commencé : elle reste où elle est.',
  isDone: 'Elle est faite.',
  restFollows: 'Un repos suit l’étape d’avant. Fixez l’étape qui le termine.',
  firstTitle: 'Commandes que sert cette pâte',
  first: 'Cette commande d’abord',
  isFirst: 'passe avant toutes les autres',
  noOrders: 'Aucune commande n’en demande.',
  inTime: 'à l’heure selon le plan',
  nobodyThere: 'personne',
  outOfUse: 'hors service',
  rooms: {
    mixer: () => 'une pâte à la fois',
    station: (hands: number) => (hands === 1 ? '1 paire de mains' : `${hands} paires de mains`),
    deck: (slots: number) => (slots === 1 ? '1 place' : `${slots} places`),
    bench: (room: number) => (room === 1 ? 'place pour 1 pâte' : `place pour ${room} pâtes`),
    restPlace: (room: number | null) => (room === null ? 'pour les repos' : `repos, ${room} places`),
  },
} as const;

/** « 10 pièces ». */
export function piecesWords(pieces: number): string {
  return pieces === 1 ? '1 pièce' : `${pieces} pièces`;
}

/** A stretch of time with its length: "04:10–04:40, 30 min". */
export function stretchWords(from: string, to: string, length: string): string {
  return `${from}–${to}, ${length}`;
}

/** « jusqu’à 04:40, encore 30 min ». */
export function tillWords(clock: string, length: string): string {
  return `jusqu’à ${clock}, encore ${length}`;
}

/** « était à 04:10, 25 min plus tard maintenant ». */
export function movedWords(from: string, length: string, isLater: boolean): string {
  return `était à ${from}, ${length} plus ${isLater ? 'tard' : 'tôt'} maintenant`;
}

/** « fixé à 04:30 ». */
export function fixedWords(clock: string): string {
  return `fixé à ${clock}`;
}

/** More is wanted of a thing than there is. */
export function busyWords(name: string, wanted: number, room: number, stretch: string, tags: string): string {
  return `${name} : ${wanted} demandés, ${room} disponibles, ${stretch} (${tags})`;
}

/** Who works at a place that is called the same. */
export function handsAtWords(station: string): string {
  return `${station}, mains`;
}

/** Nobody is there, or it is out of use, and work is planned all the same. */
export function awayWords(name: string, why: string, stretch: string, tags: readonly string[]): string {
  return `${name} : ${why} ${stretch}, et pourtant ${tags.join(', ')} ${tags.length > 1 ? 'y sont prévus' : 'y est prévu'}`;
}

/** A dough waits longer than it bears. */
export function waitsWords(tag: string, verb: string, length: string): string {
  return `${tag} ${verb} : commence ${length} plus tard que la pâte ne le supporte`;
}

/** A step is not where it was fixed. */
export function pinMissedWords(tag: string, verb: string, fixed: string, stands: string): string {
  return `${tag} ${verb} : fixé à ${fixed}, mais placé à ${stands}`;
}

/** Short, beside the sign in a row. */
export function clashAtWords(clock: string): string {
  return `conflit ${clock}`;
}

/** « 3 commandes, 1 en retard ». */
export function ordersAtWords(count: number, late: number): string {
  const orders = count === 1 ? '1 commande' : `${count} commandes`;
  return late === 0 ? orders : `${orders}, ${late} en retard`;
}

/** « 12 × Pain de campagne ». */
export function orderWords(pieces: number, name: string): string {
  return `${pieces} × ${name}`;
}

export function lateByWords(length: string): string {
  return `${length} de retard`;
}

export function shortOfWords(pieces: number): string {
  return `il manque ${piecesWords(pieces)}`;
}

/** « 1 h 20 min ». */
export function lengthWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return whole % 60 === 0 ? `${whole / 60} h` : `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`;
}

/** A row's heading, for a screen reader: what it is and how much is in it. */
export function rowWords(head: string, count: number): string {
  return `${head}, ${count === 1 ? '1 étape' : `${count} étapes`}`;
}

/** One station's hands, on the screen and on paper. */
export const STATION_LIST = {
  title: 'Par poste',
  choose: 'Poste',
  all: 'Tous les postes',
  print: 'Imprimer cette liste',
  printAll: 'Tout imprimer, un poste par page',
  calendar: 'Pour les agendas de l’équipe (iCalendar)',
  clock: 'Heure',
  tag: 'Repère',
  what: 'Étape',
  pieces: 'Pièces',
  length: 'Durée',
  check: 'À regarder',
  none: 'Aucune main n’est demandée ici ce jour-là.',
  asOf: (clock: string): string => `état à ${clock}`,
  fixed: 'fixé',
} as const;

/** Playing the day many times. */
export const TRY = {
  title: 'Essayer la journée',
  lead: 'Rejoue cette journée de nombreuses fois, avec des pâtes, des mains et des fours chaque fois un peu plus rapides ou plus lents, pour voir quelles commandes tiennent.',
  start: 'Essayer cette journée',
  again: 'Essayer encore',
  running: (done: number, of: number): string => `${done} journées jouées sur ${of}`,
  runs: (runs: number): string => `Jouée ${runs} fois.`,
  orders: 'Combien de fois chaque commande est en retard',
  order: 'Commande',
  wanted: 'Attendue',
  late: 'En retard',
  typical: 'La moitié des jours de retard',
  nineInTen: 'Neuf jours sur dix',
  lateOf: (percent: string, times: number, runs: number): string => `${percent} %, ${times} sur ${runs}`,
  never: 'jamais',
  inTime: 'à l’heure',
  upTo: (length: string): string => `jusqu’à ${length}`,
  holds: 'Ce qui retient la journée',
  holdsMore: 'Part de tous les retards due à son attente.',
  holdsNothing: 'Aucune commande n’a été en retard faute de machine, de mains ou de place.',
  share: (percent: string): string => `${percent} %`,
  doughItself: 'les pâtes elles-mêmes',
  spoils: (percent: string): string => `${percent} % des jours, une pâte a attendu plus qu’elle ne le supporte.`,
  spoilsNever: 'Aucun jour une pâte n’a attendu plus qu’elle ne le supporte.',
  assumed: 'Ce qui a été supposé',
  spread: (kind: string, percent: string): string => `${kind} : d’ordinaire ${percent} % plus vite ou plus lentement`,
  kinds: { hands: 'travail des mains', judged: 'étapes qui finissent par un contrôle', rest: 'repos', bake: 'cuissons' },
  learned: (steps: number): string => `appris de ${steps} étapes de cette maison`,
  average: (percent: string): string => `en moyenne ${percent} % de la durée prévue`,
  customary: 'd’usage, pas encore appris ici',
  failed: 'Elle n’a pas pu être jouée :',
  noOrders: 'Cette journée n’a pas de commande qui puisse être en retard.',
  caution:
    'Cela vaut ce que valent les suppositions. Cela ne dit rien de ce que personne ne prévoit : une machine en panne, quelqu’un qui tombe malade.',
} as const;
