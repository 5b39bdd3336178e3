import { isSameDocument } from '../documents/same-document.ts';
import type { Formula, Ingredient, Part, PartItem, Product } from '../documents/formula.ts';
import type { Step } from '../documents/method.ts';
import { merged, type MergedRow } from './merged.ts';

/** What became of something from the left version to the right one. */
export type Change = 'same' | 'changed' | 'moved' | 'added' | 'removed';

/** How much a line is: grams, and per cent of the flour of its part, null where that has none. */
export interface LineFigure {
  readonly g: number;
  readonly pct: number | null;
}

/** What a line takes: an ingredient, an earlier part, what another formula makes, or a living ferment's own seed. */
export type LineOf =
  | { readonly kind: 'item' | 'formula'; readonly id: string }
  | { readonly kind: 'part'; readonly name: string }
  | { readonly kind: 'seed' };

export interface LineDiff {
  readonly of: LineOf;
  readonly change: Change;
  readonly left: LineFigure | null;
  readonly right: LineFigure | null;
}

export interface PartDiff {
  readonly name: string;
  readonly change: Change;
  readonly leftG: number | null;
  readonly rightG: number | null;
  readonly lines: readonly LineDiff[];
}

export interface StepDiff {
  readonly change: Change;
  readonly left: Step | null;
  readonly right: Step | null;
  /** Which of its fields differ, where it is in both. */
  readonly fields: readonly (keyof Step)[];
}

/** Fields of a formula beside its parts and its method, and of a product beside its way. */
export type FormulaFact = Exclude<keyof Formula, 'id' | 'parts' | 'method'>;
export type ProductFact = Exclude<keyof Product, 'id' | 'way' | 'formula'>;

export interface ProductDiff {
  readonly change: Change;
  readonly left: Product | null;
  readonly right: Product | null;
  readonly facts: readonly ProductFact[];
  readonly way: readonly StepDiff[];
}

export interface FormulaDiff {
  readonly facts: readonly FormulaFact[];
  readonly parts: readonly PartDiff[];
  readonly method: readonly StepDiff[];
}

const FORMULA_FACTS = [
  'name',
  'letters',
  'kind',
  'doughC',
  'seedG',
  'handlingLossPct',
  'selfHeatKPerH',
  'keeping',
  'takesBack',
  'sidePreps',
  'note',
] as const satisfies readonly FormulaFact[];
const PRODUCT_FACTS = [
  'name',
  'pieceG',
  'bakeLossPct',
  'piecesPerSlot',
  'deckRoom',
  'prefersSlots',
  'keepsMin',
  'keeping',
  'loads',
  'sidePreps',
  'caution',
] as const satisfies readonly ProductFact[];

/** What differs between two versions of a formula. Grams and per cents are compared as they are written. */
export function formulaDiff(left: Formula, right: Formula, ingredients: readonly Ingredient[]): FormulaDiff {
  const flours = new Set(ingredients.filter(({ kind }) => kind === 'flour').map(({ id }) => id));
  return {
    facts: differing(left, right, FORMULA_FACTS),
    parts: merged(left.parts, right.parts, ({ name }) => name).map((row) => partDiff(row, flours)),
    method: stepsDiff(left.method, right.method),
  };
}

/** What differs between the products of two versions. */
export function productsDiff(left: readonly Product[], right: readonly Product[]): readonly ProductDiff[] {
  return merged(left, right, ({ id }) => id).map((row) => {
    const facts = row.left === null || row.right === null ? [] : differing(row.left, row.right, PRODUCT_FACTS);
    const way = stepsDiff(row.left?.way ?? [], row.right?.way ?? []);
    const isChanged = facts.length > 0 || way.some(({ change }) => change !== 'same');
    return { change: changeOf(row, isChanged), left: row.left, right: row.right, facts, way };
  });
}

/** What differs between two lists of steps, matched by their ids. */
export function stepsDiff(left: readonly Step[], right: readonly Step[]): readonly StepDiff[] {
  return merged(left, right, ({ id }) => id).map((row) => {
    const fields = row.left === null || row.right === null ? [] : fieldsThatDiffer(row.left, row.right);
    return { change: changeOf(row, fields.length > 0), left: row.left, right: row.right, fields };
  });
}

function partDiff(row: MergedRow<Part>, flours: ReadonlySet<string>): PartDiff {
  const leftFlourG = flourIn(row.left, flours);
  const rightFlourG = flourIn(row.right, flours);
  const lines = merged(row.left?.items ?? [], row.right?.items ?? [], lineKey).map((line) => lineDiff(line, leftFlourG, rightFlourG));
  const isChanged = row.left?.role !== row.right?.role || lines.some(({ change }) => change !== 'same');
  return {
    name: row.right?.name ?? row.left?.name ?? '',
    change: changeOf(row, isChanged),
    leftG: totalG(row.left),
    rightG: totalG(row.right),
    lines,
  };
}

function lineDiff(row: MergedRow<PartItem>, leftFlourG: number, rightFlourG: number): LineDiff {
  const left = figureOf(row.left, leftFlourG);
  const right = figureOf(row.right, rightFlourG);
  const isChanged = left?.g !== right?.g || left?.pct !== right?.pct;
  return { of: lineOf(row.right ?? row.left), change: changeOf(row, isChanged), left, right };
}

function changeOf(row: MergedRow<unknown>, isChanged: boolean): Change {
  if (row.left === null) return 'added';
  if (row.right === null) return 'removed';
  if (isChanged) return 'changed';
  return row.isMoved ? 'moved' : 'same';
}

function figureOf(line: PartItem | null, flourG: number): LineFigure | null {
  return line === null ? null : { g: line.g, pct: flourG === 0 ? null : (100 * line.g) / flourG };
}

/** What a line takes. */
export function lineOf(line: PartItem | null): LineOf {
  if (line === null || 'seed' in line) return { kind: 'seed' };
  if ('item' in line) return { kind: 'item', id: line.item };
  return 'part' in line ? { kind: 'part', name: line.part } : { kind: 'formula', id: line.formula };
}

function lineKey(line: PartItem): string {
  const of = lineOf(line);
  return of.kind === 'seed' ? of.kind : `${of.kind} ${of.kind === 'part' ? of.name : of.id}`;
}

function flourIn(part: Part | null, flours: ReadonlySet<string>): number {
  return (part?.items ?? []).reduce((sum, line) => sum + ('item' in line && flours.has(line.item) ? line.g : 0), 0);
}

function totalG(part: Part | null): number | null {
  return part === null ? null : part.items.reduce((sum, line) => sum + line.g, 0);
}

function differing<Document, Key extends keyof Document>(left: Document, right: Document, keys: readonly Key[]): readonly Key[] {
  return keys.filter((key) => !isSame(left[key], right[key]));
}

function fieldsThatDiffer(left: Step, right: Step): readonly (keyof Step)[] {
  const keys = new Set([...Object.keys(left), ...Object.keys(right)]) as ReadonlySet<keyof Step>;
  return [...keys].filter((key) => key !== 'id' && !isSame(left[key], right[key]));
}

function isSame(left: unknown, right: unknown): boolean {
  return (left === undefined && right === undefined) || isSameDocument(left, right);
}
