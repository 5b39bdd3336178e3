import { formulaDiff, productsDiff, type Change, type LineDiff, type PartDiff, type StepDiff } from '../../shared/book/formula-diff.ts';
import type { BookFormula } from '../../shared/book/book-api.ts';
import { weightText } from '../parts/weight-text.ts';
import { FORMULA_FACTS, PRODUCT_FACTS, SHEET, STEP_FIELDS, VERSIONS } from '../words/book.ts';
import { VERBS } from '../words/verbs.ts';
import type { EditorContext } from './editor-context.ts';
import { lineName } from './line-names.ts';
import { figureText, formulaFactText, productFactText, stepText } from './version-texts.ts';

/** One line of the comparison; empty where a version has nothing there. */
export interface VersionRow {
  readonly what: string;
  readonly change: Change;
  readonly left: string;
  readonly right: string;
  readonly note: string;
}

export interface VersionGroup {
  readonly title: string;
  readonly rows: readonly VersionRow[];
}

/** Two versions of a formula with its products, as rows in groups: the formula, its parts, its method, each product. */
export function versionGroups(left: BookFormula, right: BookFormula, context: EditorContext): readonly VersionGroup[] {
  const diff = formulaDiff(left.formula, right.formula, context.ingredients);
  const facts = diff.facts.map((fact) =>
    changed(FORMULA_FACTS[fact], formulaFactText(fact, left.formula, context), formulaFactText(fact, right.formula, context)),
  );
  return [
    { title: VERSIONS.formula, rows: facts },
    ...diff.parts.map((part) => partGroup(part, context)),
    { title: VERSIONS.method, rows: diff.method.map(stepRow) },
    ...productGroups(left, right, context),
  ];
}

/** How many rows differ. */
export function differences(groups: readonly VersionGroup[]): number {
  return groups.reduce((sum, { rows }) => sum + rows.filter(({ change }) => change !== 'same').length, 0);
}

function productGroups(left: BookFormula, right: BookFormula, context: EditorContext): readonly VersionGroup[] {
  const products = (book: BookFormula): BookFormula['products'][number]['product'][] => book.products.map(({ product }) => product);
  return productsDiff(products(left), products(right)).map((diff) => {
    const { left: before, right: after } = diff;
    const title = VERSIONS.product(after?.name ?? before?.name ?? '');
    const whole = before === null || after === null ? [wholeRow(title, diff.change)] : [];
    const facts =
      before === null || after === null
        ? []
        : diff.facts.map((fact) =>
            changed(PRODUCT_FACTS[fact], productFactText(fact, before, context), productFactText(fact, after, context)),
          );
    return { title, rows: [...whole, ...facts, ...diff.way.map(stepRow)] };
  });
}

function partGroup(part: PartDiff, context: EditorContext): VersionGroup {
  const { units } = context.house;
  const total = {
    what: SHEET.total,
    change:
      part.leftG === part.rightG
        ? ('same' as const)
        : part.leftG === null
          ? ('added' as const)
          : part.rightG === null
            ? ('removed' as const)
            : ('changed' as const),
    left: part.leftG === null ? '' : weightText(part.leftG, units),
    right: part.rightG === null ? '' : weightText(part.rightG, units),
    note: '',
  };
  return { title: part.name, rows: [...part.lines.map((line) => lineRow(line, context)), total] };
}

function lineRow(line: LineDiff, context: EditorContext): VersionRow {
  const { left, right, change } = line;
  return {
    what: lineName(line.of, context),
    change,
    left: left === null ? '' : figureText(left, context),
    right: right === null ? '' : figureText(right, context),
    note: '',
  };
}

function stepRow({ change, left, right, fields }: StepDiff): VersionRow {
  const step = right ?? left;
  const shown = fields.filter((field) => field !== 'minutes' && field !== 'verb');
  return {
    what: step === null ? '' : VERBS[step.verb].running,
    change,
    left: left === null ? '' : stepText(left),
    right: right === null ? '' : stepText(right),
    note: shown.length === 0 ? '' : VERSIONS.differs(shown.map((field) => (field === 'id' ? field : STEP_FIELDS[field])).join(', ')),
  };
}

function changed(what: string, left: string, right: string): VersionRow {
  return { what, change: 'changed', left, right, note: '' };
}

function wholeRow(what: string, change: Change): VersionRow {
  return { what, change, left: change === 'added' ? '' : what, right: change === 'removed' ? '' : what, note: '' };
}
