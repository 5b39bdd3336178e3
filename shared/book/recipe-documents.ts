import { accepted, refused, type Result } from '../result.ts';

/** Why nothing could be read. */
export interface RecipeFault {
  readonly code: 'notJson' | 'noRecipe' | 'noIngredients';
}

export type Node = Readonly<Record<string, unknown>>;

const SCRIPT = /<script\b[^>]*\btype\s*=\s*["']?application\/ld\+json["']?[^>]*>([\s\S]*?)<\/script\s*>/gi;
/** What is looked through for recipes: so deep, so many values. */
const MOST_DEPTH = 12;
const MOST_VALUES = 100_000;
const RECIPE_TYPE = /^(?:https?:\/\/schema\.org\/|schema:)?Recipe$/;

/** JSON-LD in a text: the text itself, or what stands in the `application/ld+json` scripts of a page pasted whole. */
export function jsonLdIn(text: string): Result<unknown, RecipeFault> {
  const trimmed = text.replace(/^\uFEFF/, '').trim();
  if (!trimmed.startsWith('<')) return parsed(trimmed);
  const values = [...trimmed.matchAll(SCRIPT)].map(([, inner]) => parsed(withoutMarks(inner ?? ''))).filter((result) => result.ok);
  return values.length === 0 ? refused({ code: 'notJson' }) : accepted(values.map(({ value }) => value));
}

/** Every recipe in a value, wherever it stands: alone, in a list, in `@graph`, as what a page is about. */
export function recipesIn(value: unknown): readonly Node[] {
  const found: Node[] = [];
  let left = MOST_VALUES;
  const look = (inner: unknown, depth: number): void => {
    if (typeof inner !== 'object' || inner === null || depth > MOST_DEPTH || left <= 0) return;
    left -= 1;
    if (!Array.isArray(inner) && isRecipe(inner as Node)) found.push(inner as Node);
    else for (const next of Object.values(inner)) look(next, depth + 1);
  };
  look(value, 0);
  return found;
}

/** What a property says, as a list: nothing, one value, or many; of a list of items, what is in them. */
export function listed(value: unknown): readonly unknown[] {
  if (value === undefined || value === null) return [];
  if (Array.isArray(value)) return value.flatMap((inner: unknown) => listed(inner));
  const list = isNode(value) ? value['itemListElement'] : undefined;
  if (list !== undefined && !('text' in (value as Node))) return listed(list);
  const item = isNode(value) ? value['item'] : undefined;
  return isNode(item) || typeof item === 'string' ? listed(item) : [value];
}

/** Whether a value is an object with properties. */
export function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isRecipe(node: Node): boolean {
  const type = node['@type'];
  return (Array.isArray(type) ? type : [type]).some((name) => typeof name === 'string' && RECIPE_TYPE.test(name));
}

function parsed(text: string): Result<unknown, RecipeFault> {
  try {
    return accepted(JSON.parse(text) as unknown);
  } catch {
    return refused({ code: 'notJson' });
  }
}

/** A script may be wrapped in the marks that keep it from being read as something else. */
function withoutMarks(text: string): string {
  return text
    .trim()
    .replace(/^(?:<!--|\/\*<!\[CDATA\[\*\/|\/\/<!\[CDATA\[|<!\[CDATA\[)/, '')
    .replace(/(?:-->|\/\*\]\]>\*\/|\/\/\]\]>|\]\]>)$/, '');
}
