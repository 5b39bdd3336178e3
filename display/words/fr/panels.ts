import type { Despite } from '../../../shared/floor/events.ts';
import type { Correction } from '../../../shared/floor/state.ts';

/** What the panels behind a dough's card say. */
export const PANELS = {
  more: 'Plus…',
  moreTitle: (tag: string): string => `${tag}\u00a0: plus`,
  // Where it really is.
  where: 'Déjà à l’étape…',
  whereTitle: (tag: string): string => `${tag} en est déjà à…`,
  notSoFar: 'Pas si loin\u00a0: retour à…',
  sinceTitle: (tag: string, step: string): string => `${tag} ${step}\u00a0: depuis combien de temps\u202f?`,
  since: (minutes: number): string => (minutes === 0 ? 'à l’instant' : `${minutes} min`),
  // Work under way.
  howFar: 'Où ça en est…',
  howFarTitle: (tag: string, step: string): string => `${tag} ${step}\u00a0: pièces faites`,
  sayDone: (count: number, of: number): string => `${count} sur ${of} faites`,
  goOn: (count: number): string => (count === 1 ? 'Cette pièce continue' : `Ces ${count} continuent`),
  goOnMore: 'en fournée à part',
  onItToo: 'J’y suis aussi',
  handOver: 'Passer à…',
  handOverTitle: (tag: string): string => `Passer ${tag} à`,
  // Counting at the divide.
  count: 'Compter…',
  countTitle: (tag: string): string => `${tag}\u00a0: ce que cela a donné`,
  countWeight: (needed: string, has: string): string => `il faut ${needed} sur ${has}`,
  countDone: (tag: string, done: string): string => `${tag} ${done}, compte fait`,
  // What goes in.
  inputs: 'Ce qui entre…',
  inputsTitle: (tag: string): string => `Ce qui entre dans ${tag}`,
  heldBack: (weight: string): string => `Eau de bassinage, ${weight}\u00a0: quelle part versée\u202f?`,
  heldShares: [
    { share: 1, text: 'tout' },
    { share: 0.75, text: '¾' },
    { share: 0.5, text: 'moitié' },
    { share: 0.25, text: '¼' },
    { share: 0, text: 'rien' },
  ],
  noSource: 'rien de tel au fournil',
  inputsDone: (tag: string, done: string): string => `${tag} ${done} avec cela`,
  takes: 'Prend',
  extra: 'Prélever en plus…',
  extraTitle: (tag: string): string => `Ajout dans ${tag}, en plus de sa recette`,
  extraDo: (weight: string, from: string): string => `Prélever ${weight} sur ${from}`,
  // Pots.
  pot: 'Dans le pot',
  seedKept: (weight: string): string => `${weight} de chef à garder`,
  ripe: (from: string, to: string): string => `mûr ${from}–${to}`,
  feedPlanned: (clock: string, weight: string): string => `prochain rafraîchi ${clock}, jusqu’à ${weight}`,
  feed: 'Quantités…',
  feedTitle: (tag: string): string => `${tag}\u00a0: ce qui va dans le pot`,
  feedSeed: 'Chef laissé au pot',
  feedFlour: 'Farine',
  feedWater: 'Eau',
  feedMakes: (weight: string): string => `donne ${weight}`,
  feedDone: (tag: string): string => `${tag} RAFRAÎCHI avec cela`,
  planFeed: 'Prévoir un rafraîchi…',
  planFeedTitle: (tag: string): string => `Quand rafraîchir ${tag}\u202f?`,
  planFeedUpTo: 'Jusqu’à',
  today: 'aujourd’hui',
  tonight: 'ce soir',
  tomorrow: 'demain',
  // Corrections.
  putRight: 'Corriger…',
  putRightTitle: (tag: string): string => `${tag}\u00a0: ce qui a été dit`,
  times: 'Heures',
  began: (step: string): string => `${step}\u00a0: début`,
  ended: (step: string): string => `${step}\u00a0: fin`,
  pieces: 'Pièces',
  tag: 'Repère',
  setCount: (count: number): string => `C’est ${count}`,
  setTag: (tag: string): string => `C’est ${tag}`,
  countReasons: ['Mal compté', 'Abîmé', 'Tombé', 'Retiré'],
  history: 'Jusqu’ici',
  notTapped: 'sans appui',
  skipped: 'sauté',
  corrections: 'Déjà corrigé',
  noHistory: 'Rien encore.',
  // Elsewhere, loads, tubs.
  move: 'Déplacer…',
  moveTitle: (tag: string): string => `Où se trouve ${tag} maintenant\u202f?`,
  loads: 'Fournées…',
  loadsTitle: (tag: string): string => `${tag} continue en fournées de`,
  join: 'Un seul bac…',
  joinTitle: (tag: string): string => `Dans un même bac avec ${tag}`,
  joinDo: (tags: string): string => `Réunir ${tags}`,
  // Less and gone.
  putBack: 'Remettre…',
  putBackTitle: 'Ce qui retourne dans quelle pâte',
  putBackPair: (from: string, to: string): string => `${from} dans ${to}`,
  putBackDo: (weight: string): string => `Remettre ${weight}`,
  loss: 'Noter une perte…',
  lossTitle: (tag: string): string => `Perte sur ${tag}`,
  lossDo: (weight: string): string => `Noter ${weight} de perte`,
  weight: 'Poids',
  decideHolding: 'Limite dépassée\u00a0: décider…',
  discard: 'Jeter…',
  discardTitle: (tag: string): string => `Jeter ${tag}\u00a0: pourquoi\u202f?`,
  discardReasons: ['Trop poussé', 'Brûlé', 'Tombé', 'Hors délai'],
  discardDo: (tag: string): string => `Jeter tout ${tag}`,
  discardMore: 'Cela quitte le fournil\u202f; le motif reste dans le registre.',
  // The way is blocked.
  inTheWay: 'Ce qui empêche',
  // The end of the day.
  dayEnd: 'Fin de journée…',
  dayEndTitle: (day: string): string => `Fin de journée\u00a0: ${day}`,
  dayEndNone: 'Plus rien en cours.',
  dayEndCarries: 'Passe au jour suivant',
  dayEndDo: (day: string): string => `Clore ${day} maintenant`,
  dayEndMore: 'Ne peut pas être annulé. Ce qui est en cours reste là, avec son jour.',
  noDay: 'Aucune journée ouverte.',
  // The stepper.
  less: (label: string, by: number): string => `${label}\u00a0: ${by} de moins`,
  moreBy: (label: string, by: number): string => `${label}\u00a0: ${by} de plus`,
} as const;

export const DESPITE: Readonly<Record<Despite, string>> = {
  changeOver: 'pétrin non nettoyé entre-temps',
  lastOfFerment: 'fond du ferment pris',
  vesselsShort: 'manque de contenants',
  withoutSource: 'sans rien prélever',
  notCooled: 'pris avant le temps de refroidir',
  wildReading: 'mesure loin de l’attendu',
};

export const CORRECTED: Readonly<Record<Correction['what'], string>> = {
  start: 'début',
  end: 'fin',
  count: 'pièces',
  tag: 'repère',
  where: 'étape',
};

/** How a step is told from the others of its verb: "rabat 2". */
export function nthWords(verb: string, nth: number | null): string {
  return nth === null ? verb : `${verb} ${nth}`;
}

export function shortWords(pieces: number): string {
  return `manque ${pieces}`;
}

export function joinsWords(tag: string, clock: string | null): string {
  return clock === null ? `pour ${tag}` : `pour ${tag} ${clock}`;
}

export function notBeforeWords(clock: string): string {
  return `pas avant ${clock}`;
}

/** "1 500 g levain pris sur L1, à point depuis 04:20". */
export function takeWords(weight: string, name: string, from: string | null, ripe: string | null): string {
  const what = `${weight} ${name}`;
  if (from === null) return `${what}\u00a0: ${PANELS.noSource}`;
  return `${what} pris sur ${from}${ripe === null ? ', pas encore à point' : `, ${ripe}`}`;
}

export function ripeSinceWords(clock: string, isSince: boolean): string {
  return isSince ? `à point depuis ${clock}` : `à point à ${clock}`;
}
