import type { Claim, Step, Verb } from '../../../shared/documents/method.ts';
import type { VerbGroup } from '../en/method.ts';

const comma = (text: string): string => text.replace(/(\d)\.(\d)/g, '$1,$2');

/** What the editor of a method says. */
export const METHOD = {
  title: 'Méthode',
  empty: 'Aucune étape. Ajouter la première ci-dessous, ou une suite d’étapes.',
  steps: (count: number): string => (count === 1 ? '1 étape' : `${count} étapes`),
  hands: (length: string): string => `mains ${length}`,
  lengthOf: (length: string): string => `${length} en tout`,
  perPiece: 'et un peu pour chaque pièce',
  stepNumber: (number: number): string => `Étape ${number}`,
  faulty: 'quelque chose ne va pas dans cette étape',
  earlier: 'Plus tôt',
  later: 'Plus tard',
  duplicate: 'Dupliquer',
  remove: 'Retirer l’étape',
  addAfter: 'Ajouter après',
  key: (key: string): string => `Clé de l’étape\u00a0: ${key}`,
  add: 'Ajouter',
  addTitle: 'Ajouter des étapes',
  what: 'Ce qui se fait',
  where: 'Place dans l’ordre',
  first: 'au début',
  after: (number: number, verb: string): string => `après ${number}, ${verb}`,
  addStep: 'Ajouter l’étape',
  runs: 'Une suite d’un coup',
  runNote:
    'Durées, contrôles et précautions des étapes ajoutées sont d’usage courant, pour commencer. À ajuster à la farine, au pétrin et à la pièce\u202f; la pâte décide.',
  runMixing: 'Pétrissage\u00a0: ajout, frasage, repos, 2e vitesse, sortie de cuve',
  runFolds: 'Rabats, avec un repos avant et après',
  runTurns: 'Tours\u00a0: abaisser, tour, froid',
  folds: 'Rabats',
  turns: 'Tours',
  restMin: 'Repos entre deux',
  chillMin: 'Froid entre deux',
  addRun: 'Ajouter la suite',
  time: 'Temps',
  look: 'À observer',
  whereWith: 'Où et avec quoi',
  goesIn: 'Ce qui entre',
  baking: 'Cuisson',
  more: 'Ordre et maturation',
  targetOfHands: 'Durée du travail',
  cautionHint: 'Ce que chacun doit savoir ici. La réglementation locale et les règles de la maison passent avant.',
  coreHint: 'La réglementation locale et l’avis de professionnels agréés passent avant ce chiffre.',
  checkNeededHint: 'C’est ce qui termine une étape jugée.',
  minutesShort: (text: string): string => `${comma(text)} min`,
  hoursShort: (hours: number, minutes: string): string => (minutes === '' ? `${hours} h` : `${hours} h ${minutes}`),
  perPieceShort: (text: string): string => `+ ${comma(text)} min par pièce`,
  none: 'aucun',
  anyPlace: 'là où elle est',
  removeShort: 'Retirer',
  fromLength: (text: string): string => `dès ${text}`,
  toLength: (text: string): string => `jusqu’à ${text}`,
  remove1: (name: string): string => `Retirer ${name}`,
  asFormula: 'comme dans la recette',
  claim: 'Ce qu’elle occupe tant qu’elle dure',
  addClaim: 'Occuper quelque chose',
  claimKind: 'Sorte',
  claimIds: 'Lesquels conviennent, le meilleur d’abord',
  claimAny: 'n’importe lequel',
  claimCount: 'Combien',
  claimBy: 'Compté',
  claimFixed: 'tant en tout',
  claimByPieces: 'selon les pièces',
  claimPer: 'Pièces pour chacun',
  claimUntil: 'Rendu à',
  claimUntilUsual: 'comme d’usage',
  claimUntilHint: 'Planches et bannetons à l’enfournement, moules et plaques au démoulage, sinon à la fin.',
  addition: 'Ce qui entre ici',
  addAddition: 'Ajouter ce qui entre',
  additionWhat: 'Quoi',
  additionHow: 'Combien',
  additionPct: 'Pour cent de la farine',
  additionPiece: 'Par pièce, en plus',
  heldBack: 'retenu d’abord, selon la pâte',
  ingredients: 'Ingrédients',
  formulas: 'Autres recettes',
  phase: (number: number): string => `Phase ${number}`,
  addPhase: 'Ajouter une phase',
  phases: 'Programme de cuisson',
  phasesSum: (minutes: string): string => `${comma(minutes)} min ensemble`,
  phaseMinutes: 'Minutes',
  phaseC: 'Four',
  phaseSteam: 'Buée',
  phaseVent: 'Oura',
  vent: { open: 'ouvert', closed: 'fermé' },
  phaseTurn: 'Tourner la fournée',
  phaseNote: 'Note',
  steam: { in: 'donner la buée', out: 'chasser la buée' },
  link: 'Suit',
  addLink: 'Lier à une étape précédente',
  linkStep: 'Étape',
  linkFrom: 'Compté depuis',
  linkFroms: { start: 'son début', end: 'sa fin' },
  linkEarliest: 'Pas avant',
  linkTarget: 'Voulu à',
  linkLatest: 'Pas après',
  linkNote: 'Sans lien, une étape suit la précédente.',
} as const;

/** Labels of a step's fields. */
export const STEP_LABELS = {
  verb: 'Ce qui se fait',
  kind: 'Comment elle finit',
  station: 'Poste',
  earliest: 'Pas avant',
  target: 'Voulu à',
  latest: 'Pas après',
  minutesPerPiece: 'En plus par pièce',
  late: 'En retard après',
  lost: 'Se perd après',
  beginsByItself: 'Commence d’elle-même quand la précédente est finie',
  check: 'Contrôle',
  caution: 'Précaution',
  place: 'Repose à',
  leaveOut: 'Peut être omise, par les mots',
  coreC: 'Température à cœur quand c’est cuit',
  yieldPct: 'Reste à la fin',
  ripening: 'Mûrit',
  referenceC: 'Durées valables à',
  rate: 'Plus vite ou moins vite par degré',
  q10: 'Fois tant pour dix kelvins',
  minC: 'Ne pousse pas sous',
  optC: 'Pousse le mieux à',
  maxC: 'Ne pousse pas au-dessus de',
} as const;

/** How a step ends, each with what it means. */
export const STEP_KINDS: Readonly<Record<Step['kind'], string>> = {
  hands: 'à la main\u00a0: qui travaille dit fini',
  timed: 'au temps\u00a0: l’étape suivante la termine',
  judged: 'au contrôle\u00a0: le temps est un repère',
  bake: 'au four\u00a0: le défournement la termine',
};

/** The same in one word, for lists. */
export const KIND_MARKS: Readonly<Record<Step['kind'], string>> = { hands: 'mains', timed: 'temps', judged: 'contrôle', bake: 'four' };

export const VERB_GROUPS: Readonly<Record<VerbGroup, string>> = {
  mixing: 'Pesée et pétrissage',
  rests: 'Repos',
  makeUp: 'Mise en forme',
  finishing: 'Finition',
  oven: 'Four',
  beside: 'À côté et après',
};

export const CLAIM_KINDS: Readonly<Record<Claim['kind'], string>> = {
  mixer: 'pétrin',
  bowl: 'cuve',
  restPlace: 'lieu de repos',
  vessel: 'bacs, moules, planches…',
  deck: 'étage de four',
  bench: 'tour',
  hands: 'mains',
};

export const RIPENING_MODELS: Readonly<Record<NonNullable<Step['ripening']>['model'], string>> = {
  perKelvin: 'd’une part par degré',
  q10: 'd’un facteur pour dix kelvins',
  cardinal: 'entre trois températures',
  levain: 'comme un levain',
};

/** Usual checks, where a step is judged. Common practice. */
export const USUAL_CHECKS: Partial<Readonly<Record<Verb, string>>> = {
  ripen: 'Monté et bombé, sent le yaourt, une cuillerée flotte.',
  firstSpeed: 'Plus de farine sèche au fond\u202f; une masse grossière.',
  secondSpeed: 'Les bords de la cuve sont propres\u202f; la pâte s’étire en voile sans se déchirer.',
  temper: 'Plus froide, elle cède sous le doigt.',
  cook: 'Épaissi, sans goût cru de farine ni d’amidon.',
};

/** What stands beside a judged step that has no usual check. */
export const CHECK_BY_HAND = 'Juste à l’œil et à la main.';

/** Usual cautions. They replace no local code and nobody's training. */
export const USUAL_CAUTIONS: Partial<Readonly<Record<Verb, string>>> = {
  weigh: 'Verser la farine bas et lentement\u00a0: sa poussière nuit aux poumons et peut brûler. Porter le masque.',
  feed: 'Verser la farine bas et lentement\u00a0: sa poussière nuit aux poumons et peut brûler. Porter le masque.',
  add: 'Pétrin arrêté pendant tout ajout\u202f; grille fermée avant de le remettre en marche.',
  firstSpeed: 'Grille fermée avant de mettre en marche\u202f; mains et outils hors de la cuve.',
  secondSpeed: 'Grille fermée avant de mettre en marche\u202f; mains et outils hors de la cuve.',
  turnOut: 'Pétrin arrêté, outil immobile, avant de mettre la main dans la cuve.',
  divide: 'Coupe-pâte et couteau\u00a0: couper en s’éloignant de la main.',
  scale: 'Coupe-pâte et couteau\u00a0: couper en s’éloignant de la main.',
  sheet: 'Grille du laminoir en place\u202f; doigts loin des cylindres.',
  fill: 'Une garniture à l’œuf, au lait ou à la viande reste au froid jusqu’à l’emploi\u202f; noter le temps passé dehors. La réglementation locale passe avant.',
  top: 'Une garniture à l’œuf, au fromage ou à la viande reste au froid jusqu’à l’emploi\u202f; noter le temps passé dehors. La réglementation locale passe avant.',
  wash: 'Œuf cru\u00a0: laver mains et pinceau avant de toucher autre chose. La réglementation locale passe avant.',
  dust: 'Fariner bas et peu\u00a0: la poussière de farine nuit aux poumons et peut brûler.',
  score: 'Lame nue\u00a0: dire où elle est posée, et remettre son étui.',
  load: 'Four et buée brûlants\u00a0: gants secs, se tenir de côté à l’ouverture.',
  takeOut: 'Four et buée brûlants\u00a0: gants secs, se tenir de côté à l’ouverture.',
  depan: 'Moules brûlants\u00a0: gants, et passage libre jusqu’au chariot.',
  slice: 'Lame nue\u00a0: doigts derrière la protection. Arrêter et débrancher avant de nettoyer.',
  cook: 'Ça bout et ça colle\u00a0: manches longues, remuer loin du corps. Température à cœur selon le jeu de règles de la maison\u202f; la réglementation locale passe avant.',
  chill:
    'Ce qui contient œuf, lait ou viande se refroidit au plus vite, selon le jeu de règles de la maison. La réglementation locale passe avant.',
  clean: 'Débrancher ou consigner avant d’y mettre la main.',
};

/** Side preps. */
export const PREPS = {
  title: 'Préparé à côté',
  note: 'Garnitures, trempages, dorures, préparés pendant les repos et ajoutés à une étape.',
  empty: 'Rien n’est préparé à côté.',
  add: 'Préparer à côté',
  noPreps: 'Aucune garniture ni trempage dans le livre\u00a0: l’écrire d’abord comme recette à part.',
  formula: 'Ce qui est préparé',
  joins: 'Entre à',
  readyMin: 'Prêt avant, de',
  notBefore: 'Pas commencé avant',
  withinMin: 'Pas plus tôt que',
  withinHint: 'Dernière minute\u00a0: au plus tant avant d’entrer.',
  whenever: 'dès qu’il y a le temps',
} as const;

/** What goes back in. */
export const TAKES_BACK = {
  title: 'Y retourne',
  note: 'Restes de pâte, chutes, vieille pâte et pain rassis que cette pâte peut reprendre, et combien.',
  empty: 'Rien n’y retourne.',
  add: 'Y remettre quelque chose',
  what: 'Quoi',
  capPct: 'Au plus, de la farine',
  age: 'Pas plus vieux que',
  hours: 'h',
  caution: 'Ce qui y retourne apporte ses allergènes. La réglementation locale passe avant.',
} as const;

/** A product. */
export const PRODUCT = {
  name: 'Nom',
  pieceG: 'Pâte par pièce',
  bakedG: 'Cuit, environ',
  bakeLoss: 'Perte à la cuisson',
  weights: 'Poids',
  weightsNote:
    'L’un ou l’autre poids peut être saisi\u202f; l’autre suit par la perte à la cuisson. Peser ses propres pains avant d’annoncer un poids\u00a0: la loi locale passe avant.',
  piecesPerSlot: 'Pièces par place de four',
  oven: 'Au four, et après',
  deckRoom: 'Pièces par place, là où une sole en prend plus ou moins',
  deckRoomAsUsual: (pieces: number | null): string => (pieces === null ? 'pas dit' : `${pieces} comme ailleurs`),
  prefersSlots: 'Places où cela cuit le mieux',
  prefersHint: 'La meilleure d’abord, dans l’ordre où on les coche.',
  prefersOrder: (slots: readonly string[]): string => `D’abord\u00a0: ${slots.join('\u202f; puis ')}.`,
  keeps: 'Se garde une fois cuit',
  keepsHint: 'Heures ou minutes\u00a0: 36 h, 1 h 30, 90 min. Vide\u00a0: jusqu’à ce qu’on en ait besoin, le jour même.',
  keepsNote:
    'Le temps pendant lequel c’est assez bon pour la vente, pour pouvoir le faire à l’avance. Le temps pendant lequel on a le droit de le garder relève des règles locales et de votre propre conseil agréé.',
  lengthNeeded: 'il faut une durée, par exemple 36 h ou 90 min, une semaine au plus',
  loads: 'Façonné par fournées',
  loadsOn: 'Continue par fournées, chacune pour soi',
  loadsAfter: 'après',
  loadsPieces: 'Pièces par fournée',
  caution: 'Précaution',
  toppings: 'Dessus, par pièce',
  noToppings: 'Rien dessus.',
  addTopping: 'Ajouter une garniture',
  topping: 'Quoi',
  toppingStep: 'Se met à',
  toppingG: 'Par pièce',
  toppingNew: (name: string): string => `${name}, comme nouvelle étape`,
  toppingNote: 'En plus du poids de la pâte.',
  way: 'À partir de la division',
} as const;

/** An ingredient. */
export const INGREDIENT = {
  title: 'Ingrédient',
  newTitle: 'Nouvel ingrédient',
  name: 'Nom',
  kind: 'Compte comme',
  waterPct: 'Eau contenue',
  waterHint: 'En poids\u202f; compte dans l’hydratation, comme pour le lait, l’œuf ou le beurre.',
  yeastForm: 'Forme',
  yeastForms: { fresh: 'fraîche', dry: 'sèche active', instant: 'sèche instantanée' },
  unsaid: 'non précisé',
  allergens: 'Allergènes',
  allergenNote:
    'Tels qu’imprimés sur l’ingrédient\u202f; rien n’est déduit ici. La réglementation locale et l’avis de professionnels agréés passent avant.',
  cereals: 'Céréales contenant du gluten',
  nuts: 'Fruits à coque',
  others: 'Autres',
  noneChosen: 'aucun choisi',
} as const;
