import type { Formula, YeastForm } from '../../../shared/documents/formula.ts';

/** What the page around the forms says. */
export const FORMULAS = {
  title: 'Livre de recettes',
  book: 'Livre',
  loading: 'Ouverture du livre…',
  loadingFormula: 'Ouverture de la recette…',
  noLinkMore:
    'Vous voyez le dernier état connu. Ce que vous écrivez reste sur cet appareil ; enregistrez-le quand la liaison est rétablie.',
  failedTitle: 'Le livre est hors d’atteinte',
  failedMore: 'Le serveur du fournil ne répond pas. Ce que vous avez écrit reste sur cet appareil.',
  tryAgain: 'Réessayer',
  missingTitle: 'Cette recette n’existe pas',
  missingMore: 'Elle se trouve peut-être sur le serveur d’un autre fournil, ou l’adresse est incomplète.',
  chooseTitle: 'Aucune recette n’est ouverte',
  chooseMore: 'Choisissez-en une dans le livre, ou commencez-y une nouvelle.',
  begun: 'Commencées sur cet appareil, pas encore enregistrées',
  tooManyBegun: 'Pas ouverte\u00a0: trop de recettes sont commencées sur cet appareil. En enregistrer ou en jeter d’abord.',
  emptyTitle: 'Pas encore de fournil',
  emptyMore: 'Les recettes s’écrivent pour un fournil. Il vient avec le fichier du fournil donné au serveur.',
  untitled: { dough: 'Nouvelle pâte', prep: 'Nouvelle garniture ou nouveau trempage', ferment: 'Nouveau levain' } satisfies Record<
    Formula['kind'],
    string
  >,
  copyOf: (name: string): string => `${name}, copie`,
  version: (version: number): string => `version ${version}`,
  notSavedYet: 'pas encore enregistrée',
  sections: 'Parties de la recette',
  archived: 'Cette recette est rangée. On peut la changer, mais aucun jour n’est prévu avec elle.',
  bringBack: 'La ressortir',
  oldVersion: (version: number, newest: number): string => `Version ${version}. La version ${newest} est en vigueur.`,
  toNewest: 'Ouvrir celle en vigueur',
  beginFromOld: (version: number): string => `Repartir de la version ${version}`,
  name: 'Nom',
  letters: 'Lettres de ses étiquettes',
  lettersHint: 'une majuscule, et une minuscule si vous voulez : C, Ch',
  kind: 'Elle donne',
  kinds: { dough: 'une pâte', prep: 'une garniture ou un trempage', ferment: 'un levain vivant' } satisfies Record<Formula['kind'], string>,
  doughC: 'Température de pâte',
  handlingLoss: 'Perte au façonnage',
  selfHeat: 'S’échauffe en masse',
  seedKept: 'Gardé comme chef',
  note: 'Note',
  sidePreps: 'Préparé à côté',
  takesBack: 'Reprend',
  addProduct: 'Ajouter un produit',
  newProduct: 'Nouveau produit',
  productsNone: 'Aucun produit n’est encore tiré de cette recette.',
  productsOfDough: 'Les produits se font avec des pâtes. Ce que donne cette recette entre dans d’autres recettes.',
  refused: 'Pas fait :',
  forbidden: 'Cet appareil ne peut pas changer le livre.',
  planned: 'Sur la liste du jour.',
  notPlanned: 'Pas sur la liste : le serveur n’a pas répondu.',
} as const;

export const SECTION_NAMES = {
  parts: 'Recette',
  method: 'Méthode',
  products: 'Produits',
  size: 'Combien',
  versions: 'Versions',
} as const;

/** The tables of parts. */
export const PARTS = {
  part: 'Partie',
  partName: (name: string): string => `Nom de la partie ${name}`,
  roles: { preferment: 'préferment', soaker: 'trempage ou échaudage', dough: 'pâte' },
  ingredient: 'Ingrédient',
  ofFlour: '% de farine',
  gramsOf: (name: string, part: string): string => `Poids de ${name} dans ${part}`,
  percentOf: (name: string, part: string): string => `Pour cent de ${name} dans ${part}`,
  total: 'Ensemble',
  totalOf: (part: string): string => `Poids total de ${part}`,
  totalHint: 'Un autre poids ici recalcule les lignes, les pour cent restent.',
  take: (name: string): string => `Retirer ${name}`,
  arrange: 'Ranger',
  up: (name: string): string => `${name} : une ligne plus haut`,
  down: (name: string): string => `${name} : une ligne plus bas`,
  partUp: (name: string): string => `${name} : une partie plus tôt`,
  partDown: (name: string): string => `${name} : une partie plus tard`,
  removePart: (name: string): string => `Retirer la partie ${name}`,
  addTo: (part: string): string => `Ajouter à ${part}`,
  addHint: 'ingrédient, partie ou recette',
  add: 'Ajouter',
  make: (name: string): string => `Nouvel ingrédient « ${name} »…`,
  seed: 'Chef gardé du pot',
  build: (seed: string, flour: string, water: string): string => `Chef : farine : eau = ${seed} : ${flour} : ${water}`,
  writeAs: 'écrire en',
  same: (weight: string, form: string): string => `= ${weight} ${form}`,
  customaryYeast: 'selon les rapports usuels (pratique courante) ; le paquet prime',
  unknown: (id: string): string => `${id} (pas dans le livre)`,
  fromPart: 'partie ci-dessus',
  ferment: 'levain',
  prep: 'préparé à côté',
  before: 'Préparer d’avance',
  beforeHint: 'Départs usuels (pratique courante), à ajuster. La farine et l’eau d’un préferment sont retirées de la pâte même.',
  levainHint: 'Un levain est une recette à part, pour que plusieurs pâtes puisent dans un même pot.',
  takeFerment: (name: string): string => `Prendre ${name}`,
  newFerment: 'Écrire un nouveau levain',
  ingredientNew: 'Un nouvel ingrédient',
  ingredientSave: 'Mettre dans le livre',
  ingredientEdit: (name: string): string => `Changer ${name}`,
  cancel: 'Laisser',
  notPercent: 'entre 0 et 100 ; les autres farines prennent le reste',
} as const;

export const TEMPLATE_NAMES = {
  poolish: 'Poolish',
  biga: 'Biga',
  sponge: 'Levain-levure',
  fermentedDough: 'Pâte fermentée',
  oldDough: 'Vieille pâte',
  soaker: 'Trempage',
  scald: 'Échaudage',
} as const;

export const YEAST_FORM_NAMES: Readonly<Record<YeastForm, string>> = { fresh: 'fraîche', dry: 'sèche', instant: 'instantanée' };

/** Figures of the whole formula. */
export const TOTALS = {
  title: 'Toute la recette',
  hydration: 'Hydratation',
  salt: 'Sel',
  yeast: 'Levure',
  prefermented: 'Farine préfermentée',
  sum: 'Le tout',
  doughYield: 'Rendement en pâte',
  weight: 'Poids',
  flour: 'Farine en tout',
  byIngredient: 'Par ingrédient',
  ofAllFlour: '% de toute la farine',
  remarks: 'À revoir',
  allergens: 'Allergènes',
  cannot: 'Le total ne peut pas encore se faire.',
  noFlour: 'pas de farine : pas de pour cent',
  strip: 'La recette en bref',
} as const;

/** The bar at the foot. */
export const SAVE = {
  changed: 'Changé ici, pas encore enregistré',
  isNew: 'Nouvelle, pas encore enregistrée',
  save: 'Enregistrer',
  saveAs: (version: number): string => `Enregistrer la version ${version}`,
  putBack: 'Remettre comme avant',
  discard: 'Jeter',
  saving: 'Enregistrement…',
  saved: (version: number): string => `Enregistré : version ${version}.`,
  unsent: 'Pas enregistré : le serveur n’a pas répondu. C’est gardé sur cet appareil.',
  faulty: (count: number): string =>
    count === 1 ? 'Pas encore possible. Une chose à corriger :' : `Pas encore possible. ${count} choses à corriger :`,
  overtaken: 'Quelqu’un d’autre a enregistré cette recette entre-temps.',
  look: 'Voir les deux',
  takeNewer: 'Prendre la sienne, avec mes changements',
  asTheirs: 'Prendre la sienne telle quelle',
  fault: (thing: string, fault: string): string => `${thing} : ${fault}`,
  mine: 'La vôtre',
  theirs: 'La sienne',
} as const;

/** What a new formula begins with. */
export const STARTING_NAMES = { dough: 'Pâte', ferment: 'Levain', prep: 'Garniture' };
