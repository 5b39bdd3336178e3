import type { Claim, Step, Verb } from '../../../shared/documents/method.ts';

/** Groups of the trade's verbs, in the order of the work. */
export type VerbGroup = 'mixing' | 'rests' | 'makeUp' | 'finishing' | 'oven' | 'beside';

/** What the editor of a method says. */
export const METHOD = {
  title: 'Method',
  empty: 'No step yet. Add the first one below, or a run of several.',
  steps: (count: number): string => (count === 1 ? '1 step' : `${count} steps`),
  hands: (length: string): string => `hands ${length}`,
  lengthOf: (length: string): string => `${length} in all`,
  perPiece: 'and a little for each piece',
  stepNumber: (number: number): string => `Step ${number}`,
  faulty: 'something is wrong in this step',
  earlier: 'Earlier',
  later: 'Later',
  duplicate: 'Duplicate',
  remove: 'Remove step',
  addAfter: 'Add after it',
  key: (key: string): string => `Key of the step: ${key}`,
  // Adding.
  add: 'Add',
  addTitle: 'Add steps',
  what: 'What is done',
  where: 'Where in the order',
  first: 'at the beginning',
  after: (number: number, verb: string): string => `after ${number}, ${verb}`,
  addStep: 'Add the step',
  runs: 'A run of steps at once',
  runNote:
    'Times, checks and cautions of added steps are common practice, to begin from. Put them right for your flour, your mixer and your room; the dough decides.',
  runMixing: 'Mixing: add, first speed, stand, second speed, turn out',
  runFolds: 'Folds, with a rest before and after each',
  runTurns: 'Laminating turns: sheet, turn, chill',
  folds: 'Folds',
  turns: 'Turns',
  restMin: 'Rest between',
  chillMin: 'Chill between',
  addRun: 'Add the run',
  // Parts of a step.
  time: 'Time',
  look: 'What to look for',
  whereWith: 'Where and with what',
  goesIn: 'What goes in',
  baking: 'Baking',
  more: 'Order and ripening',
  targetOfHands: 'Length of the work',
  cautionHint: 'What a colleague has to know here. Local codes and the house’s own rules come first.',
  coreHint: 'Your local food code and your own licensed advice come before this figure.',
  checkNeededHint: 'This is what ends a judged step.',
  minutesShort: (text: string): string => `${text} min`,
  hoursShort: (hours: number, minutes: string): string => (minutes === '' ? `${hours} h` : `${hours} h ${minutes}`),
  perPieceShort: (text: string): string => `+ ${text} min a piece`,
  none: 'none',
  anyPlace: 'wherever it is',
  removeShort: 'Remove',
  fromLength: (text: string): string => `from ${text}`,
  toLength: (text: string): string => `up to ${text}`,
  remove1: (name: string): string => `Remove ${name}`,
  asFormula: 'as the formula says',
  // Lists within a step.
  claim: 'What it takes while it lasts',
  addClaim: 'Take something',
  claimKind: 'Kind',
  claimIds: 'Which will do, best first',
  claimAny: 'any of them',
  claimCount: 'How many',
  claimBy: 'Counted',
  claimFixed: 'so many in all',
  claimByPieces: 'by the pieces',
  claimPer: 'Pieces for each one',
  claimUntil: 'Given back at',
  claimUntilUsual: 'as usual',
  claimUntilHint: 'Boards and bannetons when loaded, tins and trays when depanned, or at the end.',
  addition: 'What goes in here',
  addAddition: 'Add what goes in',
  additionWhat: 'What',
  additionHow: 'How much',
  additionPct: 'Per cent of the flour',
  additionPiece: 'A piece, on top',
  heldBack: 'held back at first, as the dough asks',
  ingredients: 'Ingredients',
  formulas: 'Other formulas',
  phase: (number: number): string => `Phase ${number}`,
  addPhase: 'Add a phase',
  phases: 'Bake programme',
  phasesSum: (minutes: string): string => `${minutes} min together`,
  phaseMinutes: 'Minutes',
  phaseC: 'Oven',
  phaseSteam: 'Steam',
  phaseVent: 'Vent',
  vent: { open: 'open', closed: 'shut' },
  phaseTurn: 'Turn the load',
  phaseNote: 'Note',
  steam: { in: 'steam in', out: 'steam out' },
  link: 'Follows',
  addLink: 'Follow an earlier step',
  linkStep: 'Step',
  linkFrom: 'Counted from',
  linkFroms: { start: 'its beginning', end: 'its end' },
  linkEarliest: 'Not before',
  linkTarget: 'Wanted at',
  linkLatest: 'Not after',
  linkNote: 'Without a link a step follows the one before it.',
} as const;

/** Labels of a step's fields. */
export const STEP_LABELS = {
  verb: 'What is done',
  kind: 'How it ends',
  station: 'Station',
  earliest: 'Not before',
  target: 'Wanted at',
  latest: 'Not after',
  minutesPerPiece: 'More for each piece',
  late: 'Late after',
  lost: 'Being lost after',
  beginsByItself: 'Begins by itself when the step before is done',
  check: 'Check',
  caution: 'Caution',
  place: 'Stands at',
  leaveOut: 'May be left out, by the words',
  coreC: 'Core temperature when done',
  yieldPct: 'Left when done',
  ripening: 'Ripens',
  referenceC: 'Times hold at',
  rate: 'Faster or slower for each degree',
  q10: 'Times so much for ten kelvin',
  minC: 'Does not grow below',
  optC: 'Grows best at',
  maxC: 'Does not grow above',
} as const;

/** How a step ends, each with what it means. */
export const STEP_KINDS: Readonly<Record<Step['kind'], string>> = {
  hands: 'by hand: whoever works says done',
  timed: 'by time: the next step ends it',
  judged: 'by its check: time is a guide',
  bake: 'in the oven: taking out ends it',
};

/** The same in one word, for lists. */
export const KIND_MARKS: Readonly<Record<Step['kind'], string>> = { hands: 'hands', timed: 'time', judged: 'check', bake: 'oven' };

export const VERB_GROUPS: Readonly<Record<VerbGroup, string>> = {
  mixing: 'Weighing and mixing',
  rests: 'Rests',
  makeUp: 'Make-up',
  finishing: 'Finishing',
  oven: 'Oven',
  beside: 'Beside and after',
};

export const CLAIM_KINDS: Readonly<Record<Claim['kind'], string>> = {
  mixer: 'mixer',
  bowl: 'bowl',
  restPlace: 'rest place',
  vessel: 'tubs, tins, boards …',
  deck: 'oven deck',
  bench: 'bench',
  hands: 'hands',
};

export const RIPENING_MODELS: Readonly<Record<NonNullable<Step['ripening']>['model'], string>> = {
  perKelvin: 'by a share for each degree',
  q10: 'by a factor for ten kelvin',
  cardinal: 'between three temperatures',
  levain: 'as a levain does',
};

/** Usual checks, where a step is judged. Common practice. */
export const USUAL_CHECKS: Partial<Readonly<Record<Verb, string>>> = {
  ripen: 'Risen and domed, smells of yoghurt, a spoonful floats.',
  firstSpeed: 'No dry flour left at the bottom; one rough mass.',
  secondSpeed: 'Sides of the bowl clean; the dough stretches thin without tearing.',
  temper: 'It has lost its chill and gives under a finger.',
  cook: 'Thickened, and no raw taste of flour or starch.',
};

/** What stands beside a judged step that has no usual check. */
export const CHECK_BY_HAND = 'Right to the eye and the hand.';

/** Usual cautions. They replace no local code and nobody's training. */
export const USUAL_CAUTIONS: Partial<Readonly<Record<Verb, string>>> = {
  weigh: 'Pour flour low and slowly: its dust harms lungs and can burn. Wear the mask.',
  feed: 'Pour flour low and slowly: its dust harms lungs and can burn. Wear the mask.',
  add: 'Mixer stopped while anything goes in; guard closed before it turns again.',
  firstSpeed: 'Guard closed before the mixer turns; hands and tools stay out of the bowl.',
  secondSpeed: 'Guard closed before the mixer turns; hands and tools stay out of the bowl.',
  turnOut: 'Mixer stopped and its tool at rest before a hand goes into the bowl.',
  divide: 'Scraper and knife: cut away from the hand.',
  scale: 'Scraper and knife: cut away from the hand.',
  sheet: 'Guard of the sheeter in place; fingers stay clear of the rollers.',
  fill: 'A filling with egg, milk or meat stays in the cold until it is wanted; note how long it was out. Local food codes come first.',
  top: 'A topping with egg, cheese or meat stays in the cold until it is wanted; note how long it was out. Local food codes come first.',
  wash: 'Raw egg: wash hands and brush before anything else is touched. Local food codes come first.',
  dust: 'Dust low and sparingly: flour dust harms lungs and can burn.',
  score: 'Bare blade: say where it lies, and put its cover back.',
  load: 'Hot oven and hot steam: dry gloves, stand aside when the door opens.',
  takeOut: 'Hot oven and hot steam: dry gloves, stand aside when the door opens.',
  depan: 'Hot tins: gloves, and a free way to the rack.',
  slice: 'Bare blade: fingers behind the guard. Switched off and unplugged before it is cleaned.',
  cook: 'Boiling and sticky: long sleeves, stir away from the body. Core temperature by the house rule set; local food codes come first.',
  chill: 'What holds egg, milk or meat is cooled as quickly as it can be, by the house rule set. Local food codes come first.',
  clean: 'Pull the plug or lock it off before a hand goes in.',
};

/** Side preps. */
export const PREPS = {
  title: 'Made beside it',
  note: 'Fillings, toppings, soakers and washes that are made during the rests and join at a step.',
  empty: 'Nothing is made beside it.',
  add: 'Add a side prep',
  noPreps: 'There is no filling, topping or soaker in the book yet: write it as a formula of its own.',
  formula: 'What is made',
  joins: 'Goes in at',
  readyMin: 'Ready before that by',
  notBefore: 'Not begun before',
  withinMin: 'Not begun earlier than',
  withinHint: 'Last minute: so long before it goes in, at most.',
  whenever: 'whenever there is time',
} as const;

/** What goes back in. */
export const TAKES_BACK = {
  title: 'Goes back into it',
  note: 'Scrap, trim, old dough and old bread that this dough may take, and how much of them.',
  empty: 'Nothing goes back into it.',
  add: 'Let something go back in',
  what: 'What',
  capPct: 'At most, of the flour',
  age: 'Not older than',
  hours: 'h',
  caution: 'What goes back in brings its allergens with it. Local codes come first.',
} as const;

/** A product. */
export const PRODUCT = {
  name: 'Name',
  pieceG: 'Dough a piece',
  bakedG: 'Baked, about',
  bakeLoss: 'Bake loss',
  weights: 'Weight',
  weightsNote:
    'Either weight may be typed; the other follows by the bake loss. Weigh your own loaves before a weight is declared: local law on weights comes first.',
  piecesPerSlot: 'Pieces in one slot',
  oven: 'In the oven, and after',
  deckRoom: 'Pieces in one slot, where a deck takes more or fewer',
  deckRoomAsUsual: (pieces: number | null): string => (pieces === null ? 'not said' : `${pieces} as elsewhere`),
  prefersSlots: 'Slots where it bakes best',
  prefersHint: 'Best first, in the order in which they are ticked.',
  prefersOrder: (slots: readonly string[]): string => `Best first: ${slots.join('; then ')}.`,
  keeps: 'Keeps once it is baked',
  keepsHint: 'Hours or minutes: 36 h, 1 h 30, 90 min. Empty: until it is wanted, within its day.',
  keepsNote:
    'How long it is good enough to sell, so that it may be made early. How long it may be kept is for local codes and your own licensed advice.',
  lengthNeeded: 'a length of time is needed, such as 36 h or 90 min, a week at most',
  loads: 'Made up in loads',
  loadsOn: 'Goes on in loads, apart from each other',
  loadsAfter: 'after',
  loadsPieces: 'Pieces in a load',
  caution: 'Caution',
  toppings: 'On top, a piece',
  noToppings: 'Nothing goes on top.',
  addTopping: 'Add a topping',
  topping: 'What',
  toppingStep: 'Goes on at',
  toppingG: 'A piece',
  toppingNew: (name: string): string => `${name} as a new step`,
  toppingNote: 'On top of the dough’s weight.',
  way: 'From the dividing on',
} as const;

/** An ingredient. */
export const INGREDIENT = {
  title: 'Ingredient',
  newTitle: 'New ingredient',
  name: 'Name',
  kind: 'Counts as',
  waterPct: 'Water in it',
  waterHint: 'By weight; it counts towards hydration, as in milk, egg or butter.',
  yeastForm: 'Form',
  yeastForms: { fresh: 'fresh', dry: 'active dry', instant: 'instant' },
  unsaid: 'not said',
  allergens: 'Allergens',
  allergenNote: 'As printed on the ingredient; nothing is worked out here. Local codes and your own licensed advice come first.',
  cereals: 'Cereals containing gluten',
  nuts: 'Nuts',
  others: 'Others',
  noneChosen: 'none chosen',
} as const;
