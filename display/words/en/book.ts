import type { BookEntry } from '../../../shared/book/book-api.ts';
import type { Change, FormulaFact, ProductFact } from '../../../shared/book/formula-diff.ts';
import type { RecipeFault } from '../../../shared/book/recipe-documents.ts';
import type { Unread } from '../../../shared/book/recipe-import.ts';
import type { Ingredient } from '../../../shared/documents/formula.ts';
import type { Step } from '../../../shared/documents/method.ts';

/** The list of all formulas. */
export const BOOK = {
  title: 'Formulas',
  search: 'Search the book',
  searchHint: 'name, letters, ingredient, product',
  clear: 'Clear the search',
  kinds: 'Show',
  allKinds: 'all',
  kindsMany: { dough: 'doughs', prep: 'preps', ferment: 'ferments' } satisfies Record<BookEntry['kind'], string>,
  kind: { dough: 'dough', prep: 'prep', ferment: 'ferment' } satisfies Record<BookEntry['kind'], string>,
  newOf: { dough: 'New dough', prep: 'New prep: filling, topping, soaker', ferment: 'New ferment' } satisfies Record<
    BookEntry['kind'],
    string
  >,
  newOne: 'New:',
  inOut: 'In and out…',
  archived: 'Put away',
  archivedCount: (count: number): string => `Put away (${count})`,
  duplicate: 'Duplicate',
  archive: 'Put it away',
  bringBack: 'Bring back',
  version: (version: number): string => `version ${version}`,
  water: (pct: string): string => `${pct} % water`,
  loading: 'Opening the book…',
  emptyTitle: 'Nothing in the book yet',
  emptyMore: 'Write the first formula, or bring a book in from a file.',
  noneArchived: 'Nothing has been put away.',
  noneOfKind: 'None of these yet.',
  noneFound: (text: string): string => `Nothing found for “${text}”.`,
  foundAway: (count: number): string => `${count} found among what is put away`,
  foundInForce: (count: number): string => `${count} found in the book`,
  count: (shown: number, of: number): string => (shown === of ? `${of} in all` : `${shown} of ${of}`),
} as const;

/** How much is made, and in how many batches. */
export const SIZE = {
  title: 'How much',
  by: 'Made to',
  modes: { dough: 'dough', flour: 'flour', pieces: 'pieces' },
  doughWeight: 'Dough in all',
  flourWeight: 'Flour in all',
  pieces: 'Pieces',
  dough: 'Dough a piece',
  baked: 'Baked, about',
  handling: (pct: string): string => `${pct} % handling loss is counted in.`,
  bakeLoss: (pct: string): string => `${pct} % bake loss`,
  mixer: 'Mixer',
  anyMixer: 'the first that takes it',
  mixerLoad: (name: string, least: string, most: string): string => `${name}, ${least} to ${most}`,
  none: 'Say how much: a weight, or how many pieces.',
  noFlour: 'There is no flour in this formula. Make it to its own weight.',
  tooMuch: 'That is more than a hundred batches, or a batch over ten tonnes.',
  belowLeast: (dough: string, mixer: string, least: string): string => `${dough} is less than ${mixer} mixes well: at least ${least}.`,
  betweenLoads: (mixer: string, from: string, to: string): string =>
    `${mixer} cannot make this: up to ${from} go into fewer batches, from ${to} on there is enough for one more.`,
  piecesUneven: (mixer: string): string =>
    `Whole pieces do not go evenly into batches that ${mixer} takes. Change a number of pieces, or take another mixer.`,
  oneBatch: (dough: string): string => `One batch of ${dough}`,
  batches: (count: number, each: string): string => `${count} batches of ${each}`,
  inMixer: (mixer: string): string => `in ${mixer}`,
  inAll: (dough: string): string => `${dough} in all`,
  batchOf: (index: number, count: number): string => `Batch ${index} of ${count}`,
  showBatch: 'Show batch',
  print: 'Print',
  csv: 'Download CSV',
  plan: 'Put on a day’s list',
  planDay: 'For the day',
  planAt: 'First one at',
  planBefore: 'on the evening before',
  planEvery: 'Next one after',
  minutes: 'min',
  planDo: (count: number): string => (count === 1 ? 'Put it on the list' : `Put all ${count} on the list`),
  cutInto: 'All of it cut into',
  planNoProduct: 'A dough goes on the list with what it is cut into: write a product first.',
  planUnsaved: 'Save the formula first: the list takes it as it stands in the book.',
  planNoDay: 'Say for which day, and when.',
  /** What a file with a weigh-out is called before its formula's key. */
  fileName: 'weigh-out',
  notANumber: 'a number is needed',
} as const;

/** The weigh-out that is printed. */
export const SHEET = {
  title: 'Weigh-out',
  ingredient: 'Ingredient',
  weight: 'Weight',
  percent: '% of flour',
  lot: 'Lot number',
  done: 'Done',
  part: { preferment: 'Preferment', soaker: 'Soaker', dough: 'Dough' },
  total: 'together',
  seed: 'what was kept back',
  ofFormula: (name: string): string => `${name} (from the pot or the prep)`,
  ofPart: (name: string): string => `${name}, from above`,
  heldBack: (weight: string, verb: string): string => `${weight} of it held back, for ${verb}`,
  later: (weight: string, verb: string): string => `${weight} of it later: ${verb}`,
  allLater: (verb: string): string => `not at the start: ${verb}`,
  onTop: 'On top, by the piece',
  onTopLine: (pieces: number, each: string, product: string, verb: string): string => `${pieces} × ${each}, ${product}: ${verb}`,
  cut: 'Cut into',
  cutLine: (pieces: number, product: string, each: string): string => `${pieces} × ${product}, ${each} of dough each`,
  version: (version: number): string => `version ${version}`,
  unsaved: 'not saved',
  date: 'Date',
  tag: 'Tag',
  temperatures: { flour: 'Flour', room: 'Room', water: 'Water', dough: 'Dough' },
  wanted: (temperature: string): string => `wanted ${temperature}`,
  allergens: 'Allergens',
  /** Heads of the columns in the file: one row a line, weights in grams. */
  columns: {
    formula: 'formula',
    version: 'version',
    batch: 'batch',
    part: 'part',
    ingredient: 'ingredient',
    grams: 'grams',
    division: 'scale division in grams',
    percent: 'per cent of the part’s flour',
    note: 'note',
    lot: 'lot number',
  },
} as const;

/** Two versions beside one another. */
export const VERSIONS = {
  title: 'Versions',
  left: 'Before',
  right: 'After',
  versionAt: (version: number, when: string | null): string => `version ${version}${when === null ? '' : `, ${when}`}`,
  newest: 'in force',
  onlyChanges: 'Only what differs',
  same: 'These two say the same.',
  loading: 'Fetching the versions…',
  formula: 'Formula',
  method: 'Method',
  product: (name: string): string => `Product ${name}`,
  what: 'What',
  change: 'Change',
  differs: (fields: string): string => `other: ${fields}`,
  none: 'none',
  minutes: (minutes: string): string => `${minutes} min`,
  count: (count: number): string => (count === 1 ? '1 difference' : `${count} differences`),
} as const;

/** The book as a file, and recipes from elsewhere. */
export const IN_OUT = {
  title: 'In and out',
  outTitle: 'The whole book as a file',
  outMore: 'Every formula in force, every product, every ingredient, as JSON.',
  download: 'Download the book',
  inTitle: 'From a file',
  inMore: 'A book of this program, or a recipe as JSON-LD with the open vocabulary of schema.org.',
  pick: 'Choose a file',
  pasteTitle: 'Or pasted',
  paste: 'JSON, or a whole page with a recipe in it',
  read: 'Read it',
  reading: 'Being read…',
  sending: 'The book is being brought in…',
  tooLarge: (mebibytes: string): string => `The file is larger than ${mebibytes} MB.`,
  notReadable: 'The file cannot be read.',
  bookTitle: 'This is a book',
  bookHolds: (formulas: number, products: number, ingredients: number): string =>
    `${formulas} formulas, ${products} products, ${ingredients} ingredients.`,
  bookNote: 'What is new or different becomes the next version. What this house has beside it stays. All of it comes in, or nothing.',
  bringIn: 'Bring it in',
  done: 'It is in the book.',
  counts: (added: number, changed: number, same: number): string => `${added} new, ${changed} changed, ${same} as before.`,
  faulty: 'Nothing was brought in. Put these right in the file first:',
  moreFaults: (count: number): string => `and ${count} more`,
  failed: 'The server did not answer. Nothing was brought in; try again when the link is back.',
  refused: 'The server did not take it:',
  recipeTitle: (name: string): string => `Recipe: ${name}`,
  whichRecipe: 'Which of them',
  linesRead: (count: number, weight: string): string => `${count === 1 ? '1 line' : `${count} lines`} read, ${weight} together`,
  stepsRead: (count: number): string => (count === 1 ? '1 step read' : `${count} steps read`),
  takes: (time: string): string => `It says that it takes ${time} in all.`,
  productRead: (pieces: string): string => `A product with pieces of ${pieces} comes with it.`,
  newTitle: 'New to the book: look whether the kinds are right',
  unreadTitle: 'Not read: left for you',
  allRead: 'Everything in it was read.',
  caution:
    'Allergens are not read from a recipe. Write them down as they are printed on each ingredient before anybody bakes from it; local law and licensed advice come first.',
  open: 'Open as a draft',
  hours: (hours: number, minutes: number): string =>
    hours === 0 ? `${minutes} min` : minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`,
} as const;

/** Kinds of ingredient. */
export const KIND_NAMES: Readonly<Record<Ingredient['kind'], string>> = {
  flour: 'flour',
  water: 'water',
  salt: 'salt',
  yeast: 'yeast',
  fat: 'fat',
  sugar: 'sugar',
  egg: 'egg',
  dairy: 'dairy',
  seed: 'seeds',
  other: 'other',
};

/** What became of something between two versions. */
export const CHANGES: Readonly<Record<Change, string>> = {
  same: 'same',
  changed: 'changed',
  moved: 'moved',
  added: 'new',
  removed: 'gone',
};

/** Why something in a recipe was not read. */
export const UNREAD_WHY: Readonly<Record<Unread['why'], string>> = {
  noWeight: 'no weight',
  range: 'a range, not a weight',
  unclearNumber: 'the number reads differently from country to country',
  noName: 'a weight of nothing named',
  noStep: 'no step of the method in it',
  noTime: 'no time; the step is there',
  noPieces: 'no number of pieces',
  noDuration: 'no length of time',
  cutShort: 'too long; the step has its beginning',
  tooMany: 'more than a formula can hold',
};

export const RECIPE_FAULTS: Readonly<Record<RecipeFault['code'], string>> = {
  notJson: 'There is no JSON in this that can be read.',
  noRecipe: 'There is no recipe in this, nor a book of this program.',
  noIngredients: 'No line of the recipe says a weight. Write the formula by hand.',
};

export const FORMULA_FACTS: Readonly<Record<FormulaFact, string>> = {
  name: 'Name',
  letters: 'Letters of the tag',
  kind: 'Kind',
  doughC: 'Dough temperature',
  seedG: 'Kept back as seed',
  handlingLossPct: 'Handling loss',
  selfHeatKPerH: 'Warms itself in bulk',
  takesBack: 'Takes back',
  keeping: 'Has to be kept',
  sidePreps: 'Side preps',
  note: 'Note',
};

export const PRODUCT_FACTS: Readonly<Record<ProductFact, string>> = {
  name: 'Name',
  pieceG: 'Dough in a piece',
  bakeLossPct: 'Bake loss',
  piecesPerSlot: 'Pieces a slot',
  deckRoom: 'Pieces a slot by deck',
  prefersSlots: 'Slots it likes best',
  keepsMin: 'Keeps for',
  loads: 'Loads',
  keeping: 'Has to be kept',
  sidePreps: 'Side preps',
  caution: 'Caution',
};

/** Fields of a step, as a list of what differs names them. */
export const STEP_FIELDS: Readonly<Record<Exclude<keyof Step, 'id'>, string>> = {
  verb: 'what is done',
  kind: 'kind of step',
  station: 'station',
  minutes: 'time',
  minutesPerPiece: 'time a piece',
  toleranceMin: 'tolerance',
  beginsByItself: 'how it begins',
  after: 'what it follows',
  check: 'check',
  caution: 'caution',
  claims: 'what it takes',
  place: 'place',
  additions: 'what goes in',
  leaveOut: 'leaving out',
  bake: 'bake',
  coreC: 'core temperature',
  ripening: 'ripening',
  yieldPct: 'yield',
};
