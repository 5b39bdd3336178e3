import { JournalError, type Journal } from './journal.ts';
import type { FromJournalThread, ToJournalThread } from './journal-messages.ts';

/** The thread's end of a threaded journal: appends what it is told, one group after another, and says what came of it. */
export async function appendTold(
  journal: Pick<Journal, 'append'>,
  { callId, kitchenId, expectedSequence, group }: Extract<ToJournalThread, { type: 'append' }>,
): Promise<FromJournalThread> {
  try {
    return { type: 'kept', callId, head: await journal.append(kitchenId, expectedSequence, group) };
  } catch (error) {
    if (error instanceof JournalError) return { type: 'refused', callId, code: error.code, message: error.message };
    const { message, stack = '' } = error instanceof Error ? error : new Error(String(error));
    return { type: 'broken', callId, message, stack };
  }
}
