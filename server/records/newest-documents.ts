import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { numberOrNull, type RecordsReader } from './records-reader.ts';

/** The kitchen's document in force at the end of the journal; null before there is one. */
export async function newestKitchen(reader: RecordsReader): Promise<Kitchen | null> {
  const row = reader.row("SELECT max(sequence) AS sequence FROM documents WHERE kind = 'kitchen'");
  const sequence = row === undefined ? null : numberOrNull(row, 'sequence');
  if (sequence === null) return null;
  const [recorded] = await reader.events([sequence]);
  return recorded?.event.type === 'kitchenAdopted' ? recorded.event.kitchen : null;
}
