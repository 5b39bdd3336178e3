import type { Formula, Ingredient, Product } from '../../shared/documents/formula.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';

const OUT = { bubbles: true, composed: true } as const;

/** A formula of the book is to be opened; in an older version where one is named. */
export class FormulaWantedEvent extends Event {
  static readonly type = 'formula-wanted';
  readonly formulaId: string;
  readonly version: number | null;

  constructor(formulaId: string, version: number | null = null) {
    super(FormulaWantedEvent.type, OUT);
    this.formulaId = formulaId;
    this.version = version;
  }
}

/** A formula of a kind is to be written. */
export class NewFormulaWantedEvent extends Event {
  static readonly type = 'new-formula-wanted';
  readonly kind: Formula['kind'];

  constructor(kind: Formula['kind']) {
    super(NewFormulaWantedEvent.type, OUT);
    this.kind = kind;
  }
}

/** A formula is to be written that begins as another one is. */
export class DuplicateWantedEvent extends Event {
  static readonly type = 'duplicate-wanted';
  readonly formulaId: string;

  constructor(formulaId: string) {
    super(DuplicateWantedEvent.type, OUT);
    this.formulaId = formulaId;
  }
}

/** A formula is to be put out of the way, or back. */
export class ArchiveWantedEvent extends Event {
  static readonly type = 'archive-wanted';
  readonly formulaId: string;
  readonly isArchived: boolean;

  constructor(formulaId: string, isArchived: boolean) {
    super(ArchiveWantedEvent.type, OUT);
    this.formulaId = formulaId;
    this.isArchived = isArchived;
  }
}

/** Something is to be brought in, or the book taken out: the panel for it is to be shown. */
export class ImportWantedEvent extends Event {
  static readonly type = 'import-wanted';

  constructor() {
    super(ImportWantedEvent.type, OUT);
  }
}

/** What was read of a recipe is to be opened as a formula that nobody has saved yet, with the ingredients that the book lacks. */
export class DraftWantedEvent extends Event {
  static readonly type = 'draft-wanted';
  readonly formula: Formula;
  readonly newIngredients: readonly Ingredient[];
  readonly product: Product | null;

  constructor(formula: Formula, newIngredients: readonly Ingredient[] = [], product: Product | null = null) {
    super(DraftWantedEvent.type, OUT);
    this.formula = formula;
    this.newIngredients = newIngredients;
    this.product = product;
  }
}

/** The book on the server is another one now, by a way that the page does not see: what is shown is to be fetched again. */
export class BookChangedEvent extends Event {
  static readonly type = 'book-changed';

  constructor() {
    super(BookChangedEvent.type, OUT);
  }
}

/** Batches are to be put on a day's list. */
export class PlanWantedEvent extends Event {
  static readonly type = 'plan-wanted';
  readonly command: Extract<ClientCommand, { type: 'planBatches' }>;

  constructor(command: PlanWantedEvent['command']) {
    super(PlanWantedEvent.type, OUT);
    this.command = command;
  }
}

declare global {
  interface HTMLElementEventMap {
    'formula-wanted': FormulaWantedEvent;
    'new-formula-wanted': NewFormulaWantedEvent;
    'duplicate-wanted': DuplicateWantedEvent;
    'archive-wanted': ArchiveWantedEvent;
    'import-wanted': ImportWantedEvent;
    'draft-wanted': DraftWantedEvent;
    'book-changed': BookChangedEvent;
    'plan-wanted': PlanWantedEvent;
  }
}
