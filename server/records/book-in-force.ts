import type { Formula, Product } from '../../shared/documents/formula.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Step } from '../../shared/documents/method.ts';
import { newestDocument } from './period.ts';
import type { RecordsReader } from './records-reader.ts';

/** A formula or product by its kind and id. */
export interface Subject {
  readonly kind: 'formula' | 'product';
  readonly id: string;
}

/** Documents in force that were asked for, read once. */
export class BookInForce {
  readonly #formulas: ReadonlyMap<string, Formula>;
  readonly #products: ReadonlyMap<string, Product>;

  private constructor(formulas: ReadonlyMap<string, Formula>, products: ReadonlyMap<string, Product>) {
    this.#formulas = formulas;
    this.#products = products;
  }

  /** Reads the newest version of each. */
  static async read(reader: RecordsReader, formulas: ReadonlySet<string>, products: ReadonlySet<string>): Promise<BookInForce> {
    const sequences = [
      ...[...formulas].flatMap((id) => newestDocument(reader, 'formula', id) ?? []),
      ...[...products].flatMap((id) => newestDocument(reader, 'product', id) ?? []),
    ];
    const events = await reader.events([...new Set(sequences)].sort((a, b) => a - b));
    return new BookInForce(
      new Map(events.flatMap(({ event }) => (event.type === 'formulaAdopted' ? [[event.formula.id, event.formula]] : []))),
      new Map(events.flatMap(({ event }) => (event.type === 'productAdopted' ? [[event.product.id, event.product]] : []))),
    );
  }

  formula(id: string): Formula | undefined {
    return this.#formulas.get(id);
  }

  /** What a product is made of. */
  formulaOf(product: string): string | undefined {
    return this.#products.get(product)?.formula;
  }

  /** Of which document a step of a dough is: a cut goes its product's way, a whole dough its formula's first. */
  subjectOf(formula: string, product: string | null, isPart: boolean, step: string): Subject {
    const isOfFormula = product === null || (!isPart && (this.#formulas.get(formula)?.method ?? []).some(({ id }) => id === step));
    return isOfFormula ? { kind: 'formula', id: formula } : { kind: 'product', id: product };
  }

  /** A step as it is in force; undefined where it is no longer there. */
  step({ kind, id }: Subject, stepId: string): Step | undefined {
    return this.#way({ kind, id }).find((step) => step.id === stepId);
  }

  /** The how manieth of its verb a step is; null where it is the only one. */
  nthOf(subject: Subject, stepId: string): number | null {
    const verb = this.step(subject, stepId)?.verb;
    const alike = this.#way(subject).filter((step) => step.verb === verb);
    return alike.length < 2 ? null : alike.findIndex(({ id }) => id === stepId) + 1 || null;
  }

  /** The step after one; undefined where there is none. */
  stepAfter(subject: Subject, stepId: string): Step | undefined {
    const way = this.#way(subject);
    const index = way.findIndex((step) => step.id === stepId);
    return index === -1 ? undefined : way[index + 1];
  }

  #way({ kind, id }: Subject): readonly Step[] {
    return (kind === 'formula' ? this.#formulas.get(id)?.method : this.#products.get(id)?.way) ?? [];
  }
}

/** The kitchen as it is in force; null before there is one. */
export async function kitchenInForce(reader: RecordsReader): Promise<Kitchen | null> {
  const sequence = newestDocument(reader, 'kitchen', 'kitchen');
  const [recorded] = sequence === null ? [] : await reader.events([sequence]);
  return recorded?.event.type === 'kitchenAdopted' ? recorded.event.kitchen : null;
}
