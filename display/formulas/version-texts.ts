import type { FormulaFact, LineFigure, ProductFact } from '../../shared/book/formula-diff.ts';
import type { Formula, Product } from '../../shared/documents/formula.ts';
import type { Keeping } from '../../shared/documents/keeping.ts';
import type { SidePrep, Step } from '../../shared/documents/method.ts';
import { unreachable } from '../../shared/result.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { weightText } from '../parts/weight-text.ts';
import { BOOK, VERSIONS } from '../words/book.ts';
import { KEEPING_KINDS } from '../words/keeping.ts';
import { numberWords } from '../words/numbers.ts';
import { PUT_BACK } from '../words/floor.ts';
import { VERBS } from '../words/verbs.ts';
import type { EditorContext } from './editor-context.ts';
import { lengthText } from './length-text.ts';
import { claimNames, slotNames } from './step-names.ts';

/** How much a line is, as both versions show it. */
export function figureText({ g, pct }: LineFigure, { house }: EditorContext): string {
  const weight = weightText(g, house.units);
  return pct === null ? weight : `${weight} · ${numberWords(pct)}\u00a0%`;
}

/** A step in one line: what is done and how long. */
export function stepText({ verb, minutes }: Step): string {
  const { earliest, target, latest } = minutes;
  const around =
    earliest === undefined && latest === undefined ? '' : ` (${numberWords(earliest ?? target)}–${numberWords(latest ?? target)})`;
  return `${VERBS[verb].running}, ${VERSIONS.minutes(`${numberWords(target)}${around}`)}`;
}

/** What a field of a formula says, in words. */
export function formulaFactText(fact: FormulaFact, formula: Formula, context: EditorContext): string {
  const { units } = context.house;
  switch (fact) {
    case 'name':
    case 'letters':
      return formula[fact];
    case 'note':
      return formula.note ?? VERSIONS.none;
    case 'kind':
      return BOOK.kind[formula.kind];
    case 'doughC':
      return formula.doughC === undefined ? VERSIONS.none : temperatureText(formula.doughC, units.temperature);
    case 'seedG':
      return formula.seedG === undefined ? VERSIONS.none : weightText(formula.seedG, units);
    case 'handlingLossPct':
      return percent(formula.handlingLossPct);
    case 'selfHeatKPerH':
      return formula.selfHeatKPerH === undefined ? VERSIONS.none : `${numberWords(formula.selfHeatKPerH)} K/h`;
    case 'keeping':
      return keepingText(formula.keeping);
    case 'takesBack':
      return listed(formula.takesBack.map(({ what, capPct }) => `${PUT_BACK[what]} ${percent(capPct)}`));
    case 'sidePreps':
      return prepsText(formula.sidePreps, context);
    default:
      return unreachable(fact);
  }
}

/** What a field of a product says, in words. */
export function productFactText(fact: ProductFact, product: Product, context: EditorContext): string {
  switch (fact) {
    case 'name':
      return product.name;
    case 'caution':
      return product.caution ?? VERSIONS.none;
    case 'pieceG':
      return weightText(product.pieceG, context.house.units);
    case 'bakeLossPct':
      return percent(product.bakeLossPct);
    case 'piecesPerSlot':
      return product.piecesPerSlot === undefined ? VERSIONS.none : String(product.piecesPerSlot);
    case 'deckRoom':
      return listed(
        (product.deckRoom ?? []).map(({ deck, piecesPerSlot }) => `${claimNames('deck', context.kitchen)[deck] ?? deck} ${piecesPerSlot}`),
      );
    case 'prefersSlots':
      return listed((product.prefersSlots ?? []).map((id) => slotNames(context.kitchen)[id] ?? id));
    case 'keepsMin':
      return product.keepsMin === undefined ? VERSIONS.none : lengthText(product.keepsMin);
    case 'keeping':
      return keepingText(product.keeping);
    case 'loads':
      return product.loads === undefined ? VERSIONS.none : String(product.loads.pieces);
    case 'sidePreps':
      return prepsText(product.sidePreps, context);
    default:
      return unreachable(fact);
  }
}

function keepingText(keeping: Keeping | undefined): string {
  return keeping === undefined ? VERSIONS.none : KEEPING_KINDS[keeping.kind];
}

function prepsText(preps: readonly SidePrep[], { entries }: EditorContext): string {
  return listed(preps.map(({ formula }) => entries.find(({ id }) => id === formula)?.name ?? formula));
}

function listed(texts: readonly string[]): string {
  return texts.length === 0 ? VERSIONS.none : texts.join(', ');
}

function percent(pct: number | undefined): string {
  return pct === undefined ? VERSIONS.none : `${numberWords(pct)}\u00a0%`;
}
