import { isSameDocument } from '../../shared/documents/same-document.ts';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Versioned } from '../../shared/floor/state.ts';
import type { FloorView } from '../link/floor-link.ts';
import { rebased } from '../desk/rebase.ts';

/** A document as somebody edits it, before it is kept. */
export interface Draft<Document> {
  readonly version: number;
  /** As it was in force when the editing began. */
  readonly base: Document;
  readonly mine: Document;
  /** It was sent, and is not answered yet. */
  readonly isSent: boolean;
  /** What the house said of it, until it is edited again. */
  readonly told: readonly FileFault[];
}

/** The draft with one more edit; the first edit begins one. An edit that leads back to how it was ends it. */
export function edited<Document>(
  draft: Draft<Document> | null,
  inForce: Versioned<Document>,
  change: (document: Document) => Document,
): Draft<Document> | null {
  const { version, base, mine } = draft ?? { version: inForce.version, base: inForce.document, mine: inForce.document };
  const next = change(mine);
  return isSameDocument(base, next) ? null : { version, base, mine: next, isSent: false, told: [] };
}

/** Somebody else has changed the document since the draft was begun. */
export function isOvertaken<Document>(draft: Draft<Document>, inForce: Versioned<Document>): boolean {
  return !draft.isSent && draft.version !== inForce.version;
}

/** The draft's changes on top of what is in force now; null where that says the same already. */
export function onNewer<Document>(draft: Draft<Document>, inForce: Versioned<Document>): Draft<Document> | null {
  const mine = rebased(draft.base, draft.mine, inForce.document);
  return isSameDocument(inForce.document, mine)
    ? null
    : { version: inForce.version, base: inForce.document, mine, isSent: false, told: [] };
}

/** What is left of a draft that was sent, once the view tells what became of it. */
export function settled<Document>(
  draft: Draft<Document> | null,
  view: FloorView,
  type: Extract<ClientCommand['type'], 'adoptKitchen' | 'adoptHouse'>,
  inForce: Versioned<Document>,
): Draft<Document> | null {
  if (draft === null || !draft.isSent || view.kept.some(({ command }) => command.type === type)) return draft;
  const answer = view.lastAnswer?.command.type === type ? view.lastAnswer.outcome : null;
  if (answer?.ok === true || isSameDocument(inForce.document, draft.mine)) return null;
  const told = answer?.refusal.code === 'documentFaulty' ? answer.refusal.faults : [];
  return { ...draft, isSent: false, told };
}
