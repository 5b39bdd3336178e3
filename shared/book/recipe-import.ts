import { formulaSchema, productSchema, type Formula, type Ingredient, type Product } from '../documents/formula.ts';
import { NAME_CHARACTERS, REMARK_CHARACTERS } from '../documents/names.ts';
import { accepted, refused, type Result } from '../result.ts';
import { folded } from './folded.ts';
import { keyOfName } from './key-of-name.ts';
import { isNode, jsonLdIn, listed, recipesIn, type Node, type RecipeFault } from './recipe-documents.ts';
import { durationMin } from './recipe-duration.ts';
import { kindOfName } from './recipe-kinds.ts';
import { readLine, type LineFault } from './recipe-line.ts';
import { isMakeUp, readInstruction, type StepWritten } from './recipe-steps.ts';
import { plainText } from './recipe-text.ts';

/** Lines that a part may have, and steps that a method or a way may have. */
const MOST_LINES = 60;
const MOST_STEPS = 40;
/** Pieces that one recipe may make, grams that a line may weigh, minutes that a step may take: as documents have it. */
const MOST_PIECES = 100_000;
const MOST_G = 10_000_000;
const LONGEST_MIN = 7 * 24 * 60;
const ALPHABET = 'abcdefghijklmnopqrstuvwxyz'.split('');

/** What could not be read, as it stands in the recipe, and why. */
export interface Unread {
  readonly of: 'ingredient' | 'instruction' | 'yield' | 'time';
  readonly text: string;
  readonly why: LineFault | 'noStep' | 'noTime' | 'noPieces' | 'noDuration' | 'cutShort' | 'tooMany';
}

/** A recipe as a draft of ours. Nothing of it is kept until somebody saves it. */
export interface ImportedRecipe {
  readonly draft: Formula;
  /** From make-up on, where the recipe says how many pieces it makes and how they go on. */
  readonly product: Product | null;
  /** Ingredients that the book has not; kinds are guessed by their names, allergens are not. */
  readonly newIngredients: readonly Ingredient[];
  readonly unread: readonly Unread[];
  /** How long the recipe takes in all, as it says; null where it does not. */
  readonly totalMin: number | null;
}

/** Names that the draft cannot have: those that the book already has. */
export interface BookNames {
  readonly formulaIds: ReadonlySet<string>;
  readonly productIds: ReadonlySet<string>;
  readonly letters: ReadonlySet<string>;
}

/** Every recipe that a text holds: JSON-LD with schema.org's Recipe, or a page with such a script in it, pasted whole. */
export function recipesInText(text: string): Result<readonly Node[], RecipeFault> {
  const document = jsonLdIn(text);
  if (!document.ok) return document;
  const recipes = recipesIn(document.value);
  return recipes.length === 0 ? refused({ code: 'noRecipe' }) : accepted(recipes);
}

/** What a recipe is called. */
export function recipeName(recipe: Node): string {
  return plainText(recipe['name']).slice(0, NAME_CHARACTERS).trim();
}

/**
 * The first recipe in a JSON-LD value as a draft of a formula. Refused where there is no recipe in it, or no line of it says
 * a weight.
 */
export function importedRecipe(json: unknown, ingredients: readonly Ingredient[], names: BookNames): Result<ImportedRecipe, RecipeFault> {
  const [recipe] = recipesIn(json);
  if (recipe === undefined) return refused({ code: 'noRecipe' });
  const lines = readLines(recipe, ingredients);
  if (lines.items.length === 0) return refused({ code: 'noIngredients' });
  const steps = readSteps(recipe);
  const yields = readYield(recipe);
  const name = recipeName(recipe) || 'Recipe';
  const id = keyOfName(name, 'recipe', (key) => names.formulaIds.has(key));
  const draft = formulaSchema.parse({
    id,
    name,
    letters: freeLetters(name, names.letters),
    kind: lines.hasFlour ? 'dough' : 'prep',
    parts: [{ name, role: 'dough', items: lines.items }],
    method: steps.method,
    ...noteOf(recipe),
  });
  return accepted({
    draft,
    product: productOf(draft, steps.way, yields.pieces, names),
    newIngredients: lines.newIngredients,
    unread: [...lines.unread, ...steps.unread, ...yields.unread, ...timeUnread(recipe)],
    totalMin: minutesOf(recipe, 'totalTime'),
  });
}

interface LinesRead {
  readonly items: { item: string; g: number }[];
  readonly newIngredients: Ingredient[];
  readonly unread: Unread[];
  hasFlour: boolean;
}

function readLines(recipe: Node, ingredients: readonly Ingredient[]): LinesRead {
  const known = new Map(ingredients.map((ingredient) => [folded(ingredient.name), ingredient]));
  const ids = new Set(ingredients.map(({ id }) => id));
  const read: LinesRead = { items: [], newIngredients: [], unread: [], hasFlour: false };
  // The older name of the property is still written.
  for (const text of listed(recipe['recipeIngredient'] ?? recipe['ingredients']).flatMap(lineTexts)) {
    const line = readLine(text);
    if (!line.ok || line.value.g > MOST_G || read.items.length === MOST_LINES) {
      read.unread.push({ of: 'ingredient', text, why: line.ok ? 'tooMany' : line.fault });
      continue;
    }
    const name = line.value.name.slice(0, NAME_CHARACTERS).trim();
    const ingredient = known.get(folded(name)) ?? newIngredient(name, ids);
    if (!ids.has(ingredient.id)) read.newIngredients.push(ingredient);
    ids.add(ingredient.id);
    known.set(folded(name), ingredient);
    read.items.push({ item: ingredient.id, g: line.value.g });
    read.hasFlour ||= ingredient.kind === 'flour' && line.value.g > 0;
  }
  return read;
}

function newIngredient(name: string, ids: ReadonlySet<string>): Ingredient {
  const id = keyOfName(name, 'ingredient', (key) => ids.has(key));
  return { id, name, kind: kindOfName(name), allergens: [] };
}

/** An ingredient is a text, or a value with its unit and its name (PropertyValue). */
function lineTexts(value: unknown): readonly string[] {
  if (!isNode(value)) return linesOf(plainText(value));
  const amount = value['value'];
  const unit = value['unitText'] ?? UNIT_OF_CODE[String(value['unitCode'])] ?? '';
  const quantity = isNode(amount)
    ? `${plainText(amount['value'])} ${plainText(amount['unitText'] ?? UNIT_OF_CODE[String(amount['unitCode'])])}`
    : `${plainText(amount)} ${plainText(unit)}`;
  return linesOf(`${quantity} ${plainText(value['name'])}`.trim());
}

/** UN/CEFACT Recommendation 20, the codes for weights and volumes that recipes use. */
const UNIT_OF_CODE: Readonly<Record<string, string>> = { GRM: 'g', KGM: 'kg', ONZ: 'oz', LBR: 'lb', MLT: 'ml', LTR: 'l' };

function linesOf(text: string): readonly string[] {
  return text.split('\n').filter((line) => line !== '');
}

interface StepsRead {
  readonly method: StepWritten[];
  readonly way: StepWritten[];
  readonly unread: Unread[];
}

function readSteps(recipe: Node): StepsRead {
  const read: StepsRead = { method: [WEIGHING], way: [], unread: [] };
  const ids = new Set([WEIGHING.id]);
  const bakeMin = minutesOf(recipe, 'cookTime');
  for (const sentence of listed(recipe['recipeInstructions']).flatMap(instructionTexts).flatMap(readInstruction)) {
    const { text, step } = sentence;
    const isMadeUp = step !== null && (read.way.length > 0 || isMakeUp(step.verb));
    const steps = isMadeUp ? read.way : read.method;
    if (step === null || steps.length >= MOST_STEPS - 1) {
      read.unread.push({ of: 'instruction', text, why: step === null ? 'noStep' : 'tooMany' });
      continue;
    }
    const timed =
      sentence.hasNoTime && step.verb === 'bake' && bakeMin !== null && bakeMin <= LONGEST_MIN ? withMinutes(step, bakeMin) : step;
    const id = takenId(step.id, ids);
    steps.push({ ...timed, id });
    if (step.verb === 'bake') steps.push({ ...TAKING_OUT, id: takenId(TAKING_OUT.id, ids) });
    if (sentence.hasNoTime && timed === step) read.unread.push({ of: 'instruction', text, why: 'noTime' });
    if (text.length > REMARK_CHARACTERS) read.unread.push({ of: 'instruction', text, why: 'cutShort' });
  }
  return read;
}

/** Whatever is made is weighed first. */
const WEIGHING: StepWritten = { id: 'weigh', verb: 'weigh', kind: 'hands', minutes: { target: 0 } };

/** What goes into the oven is taken out of it, though recipes seldom say so. */
const TAKING_OUT: StepWritten = { id: 'take-out', verb: 'takeOut', kind: 'hands', minutes: { target: 0 } };

/** A key for a step, taken from now on. */
function takenId(wanted: string, ids: Set<string>): string {
  const id = keyOfName(wanted, 'step', (key) => ids.has(key));
  ids.add(id);
  return id;
}

function withMinutes(step: StepWritten, minutes: number): StepWritten {
  return { ...step, minutes: { target: minutes }, bake: [{ ...step.bake?.[0], minutes }] };
}

/** An instruction is a text, a step, or a section with steps in it. */
function instructionTexts(value: unknown): readonly string[] {
  if (!isNode(value)) return linesOf(plainText(value));
  const inner = value['itemListElement'];
  if (inner !== undefined && value['text'] === undefined) return listed(inner).flatMap(instructionTexts);
  return linesOf(plainText(value['text'] ?? value['description'] ?? value['name']));
}

function readYield(recipe: Node): { readonly pieces: number | null; readonly unread: readonly Unread[] } {
  const values = listed(recipe['recipeYield'] ?? recipe['yield']);
  const texts = values.map((value) =>
    isNode(value) ? `${plainText(value['value'])} ${plainText(value['unitText'])}`.trim() : plainText(value),
  );
  for (const text of texts) {
    const pieces = Number(/^\D*?(\d+)(?![\d.,/–-])(?! ?(?:k?g|kilo|lbs?|oz|ml|l)\b)/i.exec(text)?.[1] ?? 0);
    if (pieces >= 1 && pieces <= MOST_PIECES) return { pieces, unread: [] };
  }
  return {
    pieces: null,
    unread: texts.filter((text) => text !== '').map((text) => ({ of: 'yield' as const, text, why: 'noPieces' as const })),
  };
}

function productOf(draft: Formula, way: readonly StepWritten[], pieces: number | null, names: BookNames): Product | null {
  const doughG = draft.parts.flatMap(({ items }) => items).reduce((sum, { g }) => sum + g, 0);
  if (draft.kind !== 'dough' || pieces === null || way.length === 0 || doughG === 0) return null;
  const pieceG = Math.max(1, Math.floor(doughG / pieces));
  return productSchema.parse({
    id: keyOfName(draft.name, 'product', (key) => names.productIds.has(key)),
    name: draft.name,
    formula: draft.id,
    pieceG,
    way,
  });
}

function noteOf(recipe: Node): { readonly note?: string } {
  const note = plainText(recipe['description']).replace(/\s+/g, ' ').slice(0, REMARK_CHARACTERS).trim();
  return note === '' ? {} : { note };
}

function minutesOf(recipe: Node, property: 'totalTime' | 'cookTime'): number | null {
  const [value] = listed(recipe[property]);
  return durationMin(plainText(value));
}

function timeUnread(recipe: Node): readonly Unread[] {
  return (['totalTime', 'cookTime'] as const)
    .map((property) => plainText(listed(recipe[property])[0]))
    .filter((text) => text !== '' && durationMin(text) === null)
    .map((text) => ({ of: 'time', text, why: 'noDuration' }));
}

/** Letters for the tags that no formula has yet: of the name's first letter, with one of its others where need be. */
function freeLetters(name: string, taken: ReadonlySet<string>): string {
  const letters = folded(name).replace(/[^a-z]/g, '');
  const first = (letters[0] ?? 'r').toUpperCase();
  const seconds = ['', ...letters.slice(1).split(''), ...ALPHABET];
  return seconds.map((second) => `${first}${second}`).find((candidate) => !taken.has(candidate)) ?? first;
}
