import { unreachable } from '../result.ts';
import type { EventOf, FloorEvent, RecordedEvent } from './events.ts';
import { versionKey, type FloorState, type KeptVersion } from './state.ts';

type BookEvent = EventOf<'formulaAdopted' | 'productAdopted' | 'formulaArchived'>;

/** A recorded event about formulas or products of the book. */
export type RecordedBookEvent = RecordedEvent & { readonly event: BookEvent };

/** Whether a recorded event is about formulas or products of the book. */
export function isRecordedBookEvent(recorded: RecordedEvent): recorded is RecordedBookEvent {
  return isBookEvent(recorded.event);
}

/** Whether an event is about formulas or products of the book. */
export function isBookEvent(event: FloorEvent): event is BookEvent {
  return event.type === 'formulaAdopted' || event.type === 'productAdopted' || event.type === 'formulaArchived';
}

/**
 * The state after several events about the book, one after another. Together, for a book that is brought in is thousands of
 * them, and what is known already would be copied for each.
 */
export function evolveBook(state: FloorState, run: readonly RecordedBookEvent[]): FloorState {
  const formulas = new Documents(state.formulas, state.formulaVersions, state.formulaHistory);
  const products = new Documents(state.products, state.productVersions, state.productHistory);
  const archived = new Set(state.archivedFormulas);
  for (const { event, sequence } of run) {
    switch (event.type) {
      case 'formulaAdopted':
        formulas.adopt(event.formula, { version: event.version, sequence, atMs: event.atMs ?? null });
        break;
      case 'productAdopted':
        products.adopt(event.product, { version: event.version, sequence, atMs: event.atMs ?? null });
        break;
      case 'formulaArchived':
        archived.delete(event.formulaId);
        if (event.isArchived) archived.add(event.formulaId);
        break;
      default:
        unreachable(event);
    }
  }
  return {
    ...state,
    ...(formulas.isChanged && { formulas: formulas.documents, formulaVersions: formulas.versions, formulaHistory: formulas.history }),
    ...(products.isChanged && { products: products.documents, productVersions: products.versions, productHistory: products.history }),
    ...(run.some(({ event }) => event.type === 'formulaArchived') && { archivedFormulas: [...archived] }),
  };
}

/** The versions of formulas, or of products; copied when the first of them comes in. */
class Documents<Document extends { readonly id: string }> {
  documents: Record<string, Document>;
  versions: Record<string, number>;
  history: Record<string, readonly KeptVersion[]>;
  isChanged = false;

  constructor(
    documents: Readonly<Record<string, Document>>,
    versions: Readonly<Record<string, number>>,
    history: Readonly<Record<string, readonly KeptVersion[]>>,
  ) {
    this.documents = documents;
    this.versions = versions;
    this.history = history;
  }

  adopt(document: Document, kept: KeptVersion): void {
    if (!this.isChanged) {
      this.documents = { ...this.documents };
      this.versions = { ...this.versions };
      this.history = { ...this.history };
      this.isChanged = true;
    }
    this.documents[versionKey(document.id, kept.version)] = document;
    this.versions[document.id] = kept.version;
    this.history[document.id] = [...(this.history[document.id] ?? []), kept];
  }
}
