/** What the phone says, apart from verbs, roles and refusals. */
export const PHONE = {
  pageTitle: 'Téléphone',
  doughs: 'Pâtes',
  backToDoughs: 'Pâtes',
  back: 'Retour',
  thisPhone: 'Ce téléphone',
  loading: 'Connexion au fournil…',
  loadingMore: 'Les pâtes s’affichent dès que la liaison est là.',
  emptyTitle: 'Aucune pâte en cours',
  emptyMore: 'Les pétrissées du jour s’affichent ici dès qu’elles sont prévues.',
  otherVersionTitle: 'Cette page est plus ancienne que son fournil',
  otherVersionMore: 'Elle s’est rechargée toute seule. Si ce message reste, fermer la page et la rouvrir.',
  forbiddenTitle: 'Ce téléphone n’est pas admis ici',
  forbiddenMore: 'La personne qui s’occupe du serveur du fournil peut l’admettre.',
  fullTitle: 'Plus de place pour un autre écran',
  fullMore: 'En fermer un qui ne sert pas\u202f; celui-ci réessaie tout seul.',
  inTouch: 'en liaison',
  catchingUp: 'mise à jour…',
  notSentYet: 'Pas encore envoyé. Gardé sur ce téléphone.',
  notSentShort: 'pas encore envoyé',
  tooManyKept: 'Pas pris\u00a0: ce téléphone garde déjà autant d’appuis qu’il peut. Retrouver la liaison, puis appuyer encore une fois.',
  weighOut: 'Pesée',
  lookFor: 'À observer',
  caution: 'Attention',
  earliest: 'au plus tôt',
  target: 'visé',
  latest: 'au plus tard',
  late: 'en retard',
  comesAfter: 'Et ensuite',
  nothingAfter: 'Rien\u00a0: c’est alors terminé.',
  now: 'maintenant',
  becomes: 'Donne',
  whereItStands: 'Se trouve',
  inOven: 'Au four',
  slotsTitle: 'Va dans',
  slotFree: 'libre',
  slotChosen: 'ici',
  passes: 'À POINT',
  started: 'Commencé',
  heard: 'Entendu',
  moreTime: 'Plus de temps',
  hold: 'Retenir l’appel',
  release: 'Rappeler',
  other: 'Autre…',
  skip: 'Sauter…',
  skipOwnReason: 'Autre motif',
  skipDo: 'Sauter pour ce motif',
  undo: 'Annuler',
  everything: 'tout entendu',
  name: 'Nom de ce téléphone',
  station: 'Où il se trouve',
  noStation: 'sans poste fixe',
  save: 'Enregistrer',
  house: 'Boulangerie',
} as const;

export function skipTitleWords(tag: string, verb: string): string {
  return `${tag} sans ${verb}\u00a0: pourquoi\u202f?`;
}

/** Reasons that need no typing. They go into the record as they stand. */
export const SKIP_REASONS = ['Pas utile à la pâte', 'Fait autrement', 'Plus le temps', 'Pas cette pétrissée'] as const;

export function noLinkWords(sinceClock: string): string {
  return `Hors ligne depuis ${sinceClock} · appuis gardés`;
}

export function keptWords(count: number, isLinked: boolean): string {
  const taps = count === 1 ? '1 appui gardé' : `${count} appuis gardés`;
  return isLinked ? `${taps}, nouvel envoi sous peu` : `${taps}, envoi au retour de la liaison`;
}

/** Unmistakable: this is not a real day. */
export function phonePaceWords(pace: number): string {
  return `×${pace} · jour fictif`;
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
  return pieces < 2 ? `${pieces} pièce` : `${pieces} pièces`;
}

export function piecesDoneWords(done: number, of: number): string {
  return `${done} sur ${of} faites`;
}

export function slotsChosenWords(chosen: number, needed: number): string {
  return `${chosen} sur ${needed}`;
}

export function heardAtWords(clock: string): string {
  return `entendu ${clock}`;
}

export function heldToWords(clock: string): string {
  return `retenu jusqu’à ${clock}`;
}

export function startedAtWords(clock: string): string {
  return `depuis ${clock}`;
}

/** What a tap did, as the undo bar names it. */
export const DID = {
  finished: (tag: string, done: string): string => `${tag} ${done.toLowerCase()}`,
  started: (tag: string, verb: string): string => `${tag} ${verb} en cours`,
  testPiece: 'pâton d’essai',
  prompt: (tag: string): string => `${tag}\u00a0: fait, comme la cuisson le demande`,
  moreTime: (tag: string, minutes: number): string => `${tag} +${minutes} min`,
  heard: (tag: string): string => `${tag} entendu`,
  held: (tag: string, minutes: number): string => `${tag} retenu ${minutes} min`,
  released: (tag: string): string => `${tag} rappelle`,
  skipped: (tag: string, verb: string): string => `${tag} sans ${verb}`,
  discarded: (tag: string): string => `${tag} jeté`,
  holdingDecided: (tag: string, minutes: number): string => `${tag} utilisé encore ${minutes}\u00a0min`,
  read: (tag: string, celsius: string): string => `${tag} ${celsius}`,
  progressed: (tag: string, done: number): string => `${tag}\u00a0: ${done} ${done < 2 ? 'faite' : 'faites'}`,
  helped: (tag: string): string => `renfort sur ${tag}`,
  handedOver: (tag: string, station: string): string => `${tag} passé à ${station}`,
  where: (tag: string, verb: string): string => `${tag} à l’étape ${verb}`,
  moved: (tag: string): string => `${tag} déplacé`,
  time: (tag: string): string => `${tag} heure corrigée`,
  count: (tag: string, pieces: number): string => `${tag} compte ${pieces}`,
  tag: (tag: string): string => `repère ${tag}`,
  loads: (tag: string, count: number): string => `${tag} en ${count} ${count < 2 ? 'fournée' : 'fournées'}`,
  joined: (tags: string): string => `${tags} réunis`,
  drawn: (from: string, tag: string): string => `${from} dans ${tag}`,
  putBack: (from: string, tag: string): string => `${from} remis dans ${tag}`,
  feedPlanned: (tag: string, clock: string): string => `${tag} à rafraîchir ${clock}`,
  added: (tag: string): string => `${tag} complété`,
  lost: (tag: string, grams: string): string => `${tag} perte ${grams}`,
  dayEnded: 'journée close',
  kitchen: 'fournil modifié',
  house: 'réglages modifiés',
  book: 'livre de recettes modifié',
  orders: 'Commandes gardées',
  pinned: 'Plan prévenu',
  planned: 'ajouté à la journée',
  riseForgotten: 'échauffement du pétrin oublié',
  weighed: (tag: string): string => `${tag} pesé`,
  unweighed: (tag: string): string => `${tag} retiré de la cuve`,
  rescaled: (tag: string): string => `${tag} recalculé`,
  watered: (tag: string): string => `${tag} eau versée`,
  deck: 'étage réglé',
  air: 'air noté',
  blocked: 'mise hors service',
  freed: 'remise en service',
  undone: 'annulation',
} as const;
