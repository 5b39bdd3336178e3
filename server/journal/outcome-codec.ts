import { outcomeSchema, type Outcome } from '../../shared/floor/refusals.ts';
import { assert } from '../../shared/result.ts';

/**
 * An outcome in its short form for keeping: that of an accepted command, which names its own last event, is only whether it can
 * be undone. `lastSequence` is that of the command's last event, null where it has none.
 */
export function packOutcome(outcome: Outcome, lastSequence: number | null): Outcome | boolean {
  return outcome.ok && outcome.sequence === lastSequence ? outcome.undoable : outcome;
}

/** The outcome of which `packOutcome` made the short form. Throws on what it cannot have made. */
export function unpackOutcome(packed: unknown, lastSequence: number | null): Outcome {
  if (typeof packed !== 'boolean') return outcomeSchema.parse(packed);
  assert(lastSequence !== null, 'a command whose outcome names its last event has one');
  return { ok: true, sequence: lastSequence, undoable: packed };
}
