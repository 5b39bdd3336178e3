import { isId } from '../../shared/ids.ts';
import { assert } from '../../shared/result.ts';
import type { JournalEntry } from './journal.ts';

/** Commands that one append may hold. A writer that has more waiting appends them in several groups. */
export const MAX_GROUP_COMMANDS = 1000;

/** Throws on a group that only a bug can produce: what is no id, no instant, or more than an append may hold. */
export function checkGroup(expectedSequence: number, group: readonly JournalEntry[]): void {
  assert(Number.isSafeInteger(expectedSequence) && expectedSequence >= 0, `no sequence number: ${expectedSequence}`);
  assert(group.length <= MAX_GROUP_COMMANDS, `a group has at most ${MAX_GROUP_COMMANDS} commands, not ${group.length}`);
  for (const { commandId, deviceId, receivedMs } of group) {
    assert(isId(commandId), `no command id: ${commandId}`);
    assert(isId(deviceId), `no device id: ${deviceId}`);
    assert(Number.isSafeInteger(receivedMs) && receivedMs >= 0, `no instant in whole milliseconds: ${receivedMs}`);
  }
}
