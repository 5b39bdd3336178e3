import type { BookEntry } from '../../../shared/book/book-api.ts';
import type { Change, FormulaFact, ProductFact } from '../../../shared/book/formula-diff.ts';
import type { RecipeFault } from '../../../shared/book/recipe-documents.ts';
import type { Unread } from '../../../shared/book/recipe-import.ts';
import type { Ingredient } from '../../../shared/documents/formula.ts';
import type { Step } from '../../../shared/documents/method.ts';

/** La liste de toutes les recettes. */
export const BOOK = {
  title: 'Recettes',
  search: 'Chercher dans le livre',
  searchHint: 'nom, lettres, ingrédient, produit',
  clear: 'Effacer la recherche',
  kinds: 'Montrer',
  allKinds: 'tout',
  kindsMany: { dough: 'pâtes', prep: 'prépas', ferment: 'ferments' } satisfies Record<BookEntry['kind'], string>,
  kind: { dough: 'pâte', prep: 'prépa', ferment: 'ferment' } satisfies Record<BookEntry['kind'], string>,
  newOf: { dough: 'Nouvelle pâte', prep: 'Nouvelle prépa : garniture, trempage', ferment: 'Nouveau ferment' } satisfies Record<
    BookEntry['kind'],
    string
  >,
  newOne: 'Nouveau\u00a0:',
  inOut: 'Entrée et sortie…',
  archived: 'Mises de côté',
  archivedCount: (count: number): string => `Mises de côté (${count})`,
  duplicate: 'Dupliquer',
  archive: 'Mettre de côté',
  bringBack: 'Reprendre',
  version: (version: number): string => `version ${version}`,
  water: (pct: string): string => `${pct}\u00a0% d’eau`,
  loading: 'Ouverture du livre…',
  emptyTitle: 'Rien encore dans le livre',
  emptyMore: 'Écrire la première recette, ou faire entrer un livre depuis un fichier.',
  noneArchived: 'Rien n’est mis de côté.',
  noneOfKind: 'Encore aucune de cette sorte.',
  noneFound: (text: string): string => `Rien trouvé pour «\u00a0${text}\u00a0».`,
  foundAway: (count: number): string => `${count} trouvées parmi celles mises de côté`,
  foundInForce: (count: number): string => `${count} trouvées dans le livre`,
  count: (shown: number, of: number): string => (shown === of ? `${of} en tout` : `${shown} sur ${of}`),
} as const;

/** Combien on fait, et en combien de pétrissées. */
export const SIZE = {
  title: 'Quantité',
  by: 'D’après',
  modes: { dough: 'la pâte', flour: 'la farine', pieces: 'les pièces' },
  doughWeight: 'Pâte en tout',
  flourWeight: 'Farine en tout',
  pieces: 'Pièces',
  dough: 'Pâton',
  baked: 'Cuite, environ',
  handling: (pct: string): string => `${pct}\u00a0% de perte au travail sont comptés.`,
  bakeLoss: (pct: string): string => `${pct}\u00a0% de perte à la cuisson`,
  mixer: 'Pétrin',
  anyMixer: 'le premier qui convient',
  mixerLoad: (name: string, least: string, most: string): string => `${name}, de ${least} à ${most}`,
  none: 'Dire combien\u202f: un poids, ou un nombre de pièces.',
  noFlour: 'Il n’y a pas de farine dans cette recette. Choisir d’après son propre poids.',
  tooMuch: 'C’est plus de cent pétrissées, ou une pétrissée de plus de dix tonnes.',
  belowLeast: (dough: string, mixer: string, least: string): string =>
    `${dough}, c’est moins que ce que ${mixer} pétrit bien\u202f: au moins ${least}.`,
  betweenLoads: (mixer: string, from: string, to: string): string =>
    `${mixer} ne peut pas\u202f: jusqu’à ${from}, moins de pétrissées suffisent\u202f; à partir de ${to}, il y en a assez pour une de plus.`,
  piecesUneven: (mixer: string): string =>
    `Les pièces entières ne se partagent pas en pétrissées égales que ${mixer} accepte. Changer un nombre de pièces, ou prendre un autre pétrin.`,
  oneBatch: (dough: string): string => `Une pétrissée de ${dough}`,
  batches: (count: number, each: string): string => `${count} pétrissées de ${each}`,
  inMixer: (mixer: string): string => `dans ${mixer}`,
  inAll: (dough: string): string => `${dough} en tout`,
  batchOf: (index: number, count: number): string => `Pétrissée ${index} sur ${count}`,
  showBatch: 'Montrer la pétrissée',
  print: 'Imprimer',
  csv: 'Télécharger en CSV',
  plan: 'Mettre sur la liste d’un jour',
  planDay: 'Pour le jour',
  planAt: 'La première à',
  planBefore: 'la veille au soir',
  planEvery: 'La suivante après',
  minutes: 'min',
  planDo: (count: number): string => (count === 1 ? 'Mettre sur la liste' : `Mettre les ${count} sur la liste`),
  cutInto: 'Le tout divisé en',
  planNoProduct: 'Une pâte va sur la liste avec ce qu’on en fait\u202f: écrire d’abord un produit.',
  planUnsaved: 'Enregistrer d’abord la recette\u202f: la liste la prend telle qu’elle est dans le livre.',
  planNoDay: 'Dire pour quel jour, et à quelle heure.',
  /** Nom d’un fichier avec une feuille de pesée, avant la clé de la recette. */
  fileName: 'pesee',
  notANumber: 'il faut un nombre',
} as const;

/** La feuille de pesée imprimée. */
export const SHEET = {
  title: 'Feuille de pesée',
  ingredient: 'Ingrédient',
  weight: 'Poids',
  percent: '% de la farine',
  lot: 'Numéro de lot',
  done: 'Mis',
  part: { preferment: 'Préferment', soaker: 'Trempage', dough: 'Pâte' },
  total: 'ensemble',
  seed: 'ce qui a été gardé',
  ofFormula: (name: string): string => `${name} (du ferment ou de la prépa)`,
  ofPart: (name: string): string => `${name}, ci-dessus`,
  heldBack: (weight: string, verb: string): string => `dont ${weight} gardés, pour\u00a0: ${verb}`,
  later: (weight: string, verb: string): string => `dont ${weight} plus tard\u00a0: ${verb}`,
  allLater: (verb: string): string => `pas au début\u00a0: ${verb}`,
  onTop: 'En plus, par pièce',
  onTopLine: (pieces: number, each: string, product: string, verb: string): string => `${pieces} × ${each}, ${product}\u00a0: ${verb}`,
  cut: 'Division',
  cutLine: (pieces: number, product: string, each: string): string => `${pieces} × ${product}, pâtons de ${each}`,
  version: (version: number): string => `version ${version}`,
  unsaved: 'non enregistrée',
  date: 'Date',
  tag: 'Lettres',
  temperatures: { flour: 'Farine', room: 'Fournil', water: 'Eau', dough: 'Pâte' },
  wanted: (temperature: string): string => `voulu ${temperature}`,
  allergens: 'Allergènes',
  /** Têtes de colonne du fichier\u202f: une ligne par pesée, poids en grammes. */
  columns: {
    formula: 'recette',
    version: 'version',
    batch: 'pétrissée',
    part: 'partie',
    ingredient: 'ingrédient',
    grams: 'grammes',
    division: 'échelon de la balance en grammes',
    percent: 'pour cent de la farine de la partie',
    note: 'remarque',
    lot: 'numéro de lot',
  },
} as const;

/** Deux versions côte à côte. */
export const VERSIONS = {
  title: 'Versions',
  left: 'Avant',
  right: 'Après',
  versionAt: (version: number, when: string | null): string => `version ${version}${when === null ? '' : `, ${when}`}`,
  newest: 'en vigueur',
  onlyChanges: 'Seulement les différences',
  same: 'Les deux disent la même chose.',
  loading: 'On cherche les versions…',
  formula: 'Recette',
  method: 'Méthode',
  product: (name: string): string => `Produit ${name}`,
  what: 'Quoi',
  change: 'Différence',
  differs: (fields: string): string => `autre\u00a0: ${fields}`,
  none: 'aucun',
  minutes: (minutes: string): string => `${minutes} min`,
  count: (count: number): string => (count === 1 ? '1 différence' : `${count} différences`),
} as const;

/** Le livre en fichier, et des recettes venues d’ailleurs. */
export const IN_OUT = {
  title: 'Entrée et sortie',
  outTitle: 'Tout le livre en un fichier',
  outMore: 'Toutes les recettes en vigueur, tous les produits, tous les ingrédients, en JSON.',
  download: 'Télécharger le livre',
  inTitle: 'Depuis un fichier',
  inMore: 'Un livre de ce programme, ou une recette en JSON-LD avec le vocabulaire ouvert de schema.org.',
  pick: 'Choisir un fichier',
  pasteTitle: 'Ou collé',
  paste: 'Du JSON, ou une page entière qui contient une recette',
  read: 'Lire',
  reading: 'Lecture…',
  sending: 'Le livre entre…',
  tooLarge: (mebibytes: string): string => `Le fichier dépasse ${mebibytes} Mo.`,
  notReadable: 'Le fichier ne se lit pas.',
  bookTitle: 'C’est un livre',
  bookHolds: (formulas: number, products: number, ingredients: number): string =>
    `${formulas} recettes, ${products} produits, ${ingredients} ingrédients.`,
  bookNote: 'Ce qui est nouveau ou différent devient la version suivante. Ce que la maison a en plus reste. Tout entre, ou rien.',
  bringIn: 'Faire entrer',
  done: 'C’est dans le livre.',
  counts: (added: number, changed: number, same: number): string => `${added} nouveaux, ${changed} changés, ${same} comme avant.`,
  faulty: 'Rien n’est entré. À corriger d’abord dans le fichier\u202f:',
  moreFaults: (count: number): string => `et ${count} autres`,
  failed: 'Le serveur n’a pas répondu. Rien n’est entré\u202f; réessayer quand la liaison est revenue.',
  refused: 'Le serveur ne l’a pas pris\u202f:',
  recipeTitle: (name: string): string => `Recette\u00a0: ${name}`,
  whichRecipe: 'Laquelle',
  linesRead: (count: number, weight: string): string => `${count === 1 ? '1 ligne lue' : `${count} lignes lues`}, ${weight} ensemble`,
  stepsRead: (count: number): string => (count === 1 ? '1 étape lue' : `${count} étapes lues`),
  takes: (time: string): string => `Elle dit prendre ${time} en tout.`,
  productRead: (pieces: string): string => `Un produit avec des pièces de ${pieces} l’accompagne.`,
  newTitle: 'Nouveaux dans le livre\u202f: vérifier leur sorte',
  unreadTitle: 'Non lu\u202f: reste à faire',
  allRead: 'Tout a été lu.',
  caution:
    'Les allergènes ne sont pas lus d’une recette. Les noter tels qu’ils sont imprimés sur chaque ingrédient avant que quelqu’un ne s’en serve\u202f; la loi locale et l’avis de professionnels agréés passent avant.',
  open: 'Ouvrir comme brouillon',
  hours: (hours: number, minutes: number): string =>
    hours === 0 ? `${minutes} min` : minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`,
} as const;

/** Sortes d’ingrédients. */
export const KIND_NAMES: Readonly<Record<Ingredient['kind'], string>> = {
  flour: 'farine',
  water: 'eau',
  salt: 'sel',
  yeast: 'levure',
  fat: 'matière grasse',
  sugar: 'sucre',
  egg: 'œuf',
  dairy: 'produit laitier',
  seed: 'graines',
  other: 'autre',
};

/** Ce qu’une chose est devenue entre deux versions. */
export const CHANGES: Readonly<Record<Change, string>> = {
  same: 'pareil',
  changed: 'changé',
  moved: 'déplacé',
  added: 'nouveau',
  removed: 'parti',
};

/** Pourquoi une chose d’une recette n’a pas été lue. */
export const UNREAD_WHY: Readonly<Record<Unread['why'], string>> = {
  noWeight: 'pas de poids',
  range: 'une fourchette, pas un poids',
  unclearNumber: 'le nombre se lit autrement d’un pays à l’autre',
  noName: 'un poids sans nom',
  noStep: 'pas d’étape de la méthode',
  noTime: 'pas de durée\u202f; l’étape y est',
  noPieces: 'pas de nombre de pièces',
  noDuration: 'pas une durée',
  cutShort: 'trop long\u202f; l’étape en a le début',
  tooMany: 'plus qu’une recette ne contient',
};

export const RECIPE_FAULTS: Readonly<Record<RecipeFault['code'], string>> = {
  notJson: 'Il n’y a là pas de JSON lisible.',
  noRecipe: 'Il n’y a là ni recette, ni livre de ce programme.',
  noIngredients: 'Aucune ligne de la recette ne dit un poids. Écrire la recette à la main.',
};

export const FORMULA_FACTS: Readonly<Record<FormulaFact, string>> = {
  name: 'Nom',
  letters: 'Lettres',
  kind: 'Sorte',
  doughC: 'Température de la pâte',
  seedG: 'Gardé comme levain chef',
  handlingLossPct: 'Perte au travail',
  selfHeatKPerH: 'S’échauffe en masse',
  takesBack: 'Reprend',
  keeping: 'À garder au froid ou au chaud',
  sidePreps: 'Prépas',
  note: 'Remarque',
};

export const PRODUCT_FACTS: Readonly<Record<ProductFact, string>> = {
  name: 'Nom',
  pieceG: 'Pâton',
  bakeLossPct: 'Perte à la cuisson',
  piecesPerSlot: 'Pièces par place',
  deckRoom: 'Pièces par place selon la sole',
  prefersSlots: 'Places préférées',
  keepsMin: 'Se garde',
  loads: 'Fournées',
  keeping: 'À garder au froid ou au chaud',
  sidePreps: 'Prépas',
  caution: 'Attention',
};

/** Champs d’une étape, comme la liste des différences les nomme. */
export const STEP_FIELDS: Readonly<Record<Exclude<keyof Step, 'id'>, string>> = {
  verb: 'ce qu’on fait',
  kind: 'sorte d’étape',
  station: 'poste',
  minutes: 'durée',
  minutesPerPiece: 'durée par pièce',
  toleranceMin: 'tolérance',
  beginsByItself: 'comment elle commence',
  after: 'ce qu’elle suit',
  check: 'contrôle',
  caution: 'attention',
  claims: 'ce qu’elle prend',
  place: 'place',
  additions: 'ce qui entre',
  leaveOut: 'omission',
  bake: 'cuisson',
  coreC: 'température à cœur',
  ripening: 'maturation',
  yieldPct: 'rendement',
};
