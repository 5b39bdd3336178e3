import { accepted, refused, type Result } from '../../shared/result.ts';
import { downMessageSchema, type DownMessage } from '../../shared/wire/down.ts';

/** Longest name of an unknown message that is told to the server, in characters (RFC 6455 leaves 123 bytes to a close reason). */
const NAME_CHARACTERS = 60;

/** Reads what the server sent. Refused by the name of the message where this page does not know it. */
export function readDown(text: string): Result<DownMessage, string> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refused('no JSON');
  }
  const parsed = downMessageSchema.safeParse(value);
  return parsed.success ? accepted(parsed.data) : refused(nameOf(value));
}

function nameOf(value: unknown): string {
  if (typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string')
    return value.type.slice(0, NAME_CHARACTERS);
  return 'no type';
}
