import type { FormulaOf } from '../documents/amounts.ts';
import type { Formula, Ingredient, Part, PartItem } from '../documents/formula.ts';
import { accepted, refused, type Result } from '../result.ts';
import type { CalcFault, CalcItem, CalcPart } from '../trade/calc-part.ts';
import { withoutSeed } from './seed.ts';

/**
 * A formula as the trade's sums take it. What it takes of other formulas stands among its parts: ferments and doughs as preferments,
 * preps as soakers; what was kept back of a pot is dissolved into what the pot is made of. Parts that nothing takes are
 * left out: they are in no dough. Ingredients go by their ids. Refused where an ingredient or another formula is missing, or a formula
 * contains itself; the field is the line of this formula at which it comes in.
 */
export function calcPartsOf(
  formula: Formula,
  formulaOf: FormulaOf,
  ingredients: readonly Ingredient[],
): Result<readonly CalcPart[], CalcFault> {
  return new Inliner(formula, formulaOf, new Map(ingredients.map((ingredient) => [ingredient.id, ingredient]))).all();
}

/** Gathers the parts of one formula and of whatever it takes. */
class Inliner {
  readonly #root: Formula;
  readonly #formulaOf: FormulaOf;
  readonly #ingredients: ReadonlyMap<string, Ingredient>;
  readonly #names: Set<string>;
  /** By formula: the name of the part that it became. */
  readonly #partNames = new Map<string, string>();
  readonly #parts: CalcPart[] = [];
  readonly #open: string[] = [];

  constructor(root: Formula, formulaOf: FormulaOf, ingredients: ReadonlyMap<string, Ingredient>) {
    this.#root = root;
    this.#formulaOf = formulaOf;
    this.#ingredients = ingredients;
    this.#names = new Set(root.parts.map(({ name }) => name));
  }

  all(): Result<readonly CalcPart[], CalcFault> {
    const fault = this.#add(this.#root, (_part, own) => own, null);
    return fault === null ? accepted(this.#parts) : refused(fault);
  }

  /** Adds a formula's parts after whatever they take of other formulas. `at` is the root's line by which it comes in. */
  #add(formula: Formula, rename: (part: Part, own: string) => string, at: string | null): CalcFault | null {
    const parts = withoutSeed(formula.parts);
    if (parts === null)
      return {
        code: 'seedAlone',
        field: at ?? `parts[${formula.parts.length - 1}].items`,
        message: 'a ferment is made of more than its seed',
      };
    this.#open.push(formula.id);
    const used = usedNames(parts);
    const nameOf = new Map(parts.map((part) => [part.name, rename(part, part.name)]));
    for (const [index, part] of parts.entries()) {
      if (index < parts.length - 1 && !used.has(part.name)) continue;
      const items: CalcItem[] = [];
      for (const line of part.items) {
        // Where the seed is out, lines no longer stand where they stood.
        const field = at ?? `parts[${index}].items[${lineIndex(this.#root.parts[index], line)}].${keyOf(line)}`;
        const item = this.#item(line, nameOf, field);
        if (!item.ok) return item.fault;
        items.push(item.value);
      }
      this.#parts.push({ name: nameOf.get(part.name) ?? part.name, role: this.#role(formula, part, index === parts.length - 1), items });
    }
    this.#open.pop();
    return null;
  }

  #role(formula: Formula, part: Part, isLast: boolean): 'preferment' | 'soaker' | 'dough' {
    if (!isLast) return part.role === 'soaker' ? 'soaker' : 'preferment';
    if (formula === this.#root) return 'dough';
    return formula.kind === 'prep' ? 'soaker' : 'preferment';
  }

  #item(line: PartItem, nameOf: ReadonlyMap<string, string>, field: string): Result<CalcItem, CalcFault> {
    if ('part' in line) return accepted({ part: nameOf.get(line.part) ?? line.part, g: line.g });
    if ('formula' in line) return this.#taken(line.formula, line.g, field);
    if ('seed' in line) throw new Error('a seed is dissolved before its part is read');
    const ingredient = this.#ingredients.get(line.item);
    if (ingredient === undefined) return refused({ code: 'ingredientMissing', field, message: `there is no ingredient "${line.item}"` });
    const { id, kind, waterPct } = ingredient;
    return accepted({ item: id, kind, g: line.g, ...(waterPct === undefined ? {} : { waterPct }) });
  }

  #taken(formulaId: string, g: number, field: string): Result<CalcItem, CalcFault> {
    if (this.#open.includes(formulaId))
      return refused({ code: 'partOfItself', field, message: `the formula "${formulaId}" contains itself` });
    const known = this.#partNames.get(formulaId);
    if (known !== undefined) return accepted({ part: known, g });
    const formula = this.#formulaOf(formulaId);
    if (formula === null) return refused({ code: 'formulaMissing', field, message: `there is no formula "${formulaId}"` });
    const name = this.#unusedName(formula.name);
    this.#partNames.set(formulaId, name);
    const last = formula.parts.at(-1)?.name;
    const fault = this.#add(formula, (_part, own) => (own === last ? name : this.#unusedName(`${name}: ${own}`)), field);
    return fault === null ? accepted({ part: name, g }) : refused(fault);
  }

  #unusedName(wanted: string): string {
    let name = wanted;
    for (let count = 2; this.#names.has(name); count += 1) name = `${wanted} (${count})`;
    this.#names.add(name);
    return name;
  }
}

function keyOf(line: PartItem): 'item' | 'part' | 'formula' | 'seed' {
  if ('item' in line) return 'item';
  if ('part' in line) return 'part';
  return 'formula' in line ? 'formula' : 'seed';
}

function lineIndex(part: Part | undefined, line: PartItem): number {
  const isSame = (other: PartItem): boolean =>
    ('item' in line && 'item' in other && line.item === other.item) ||
    ('formula' in line && 'formula' in other && line.formula === other.formula);
  return Math.max(0, part?.items.findIndex(isSame) ?? 0);
}

/** The parts that the last one is made of, at any depth. */
function usedNames(parts: readonly Part[]): ReadonlySet<string> {
  const used = new Set<string>();
  const open = [parts.at(-1)];
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    for (const line of part.items) {
      if (!('part' in line) || used.has(line.part)) continue;
      used.add(line.part);
      open.push(parts.find(({ name }) => name === line.part));
    }
  }
  return used;
}
