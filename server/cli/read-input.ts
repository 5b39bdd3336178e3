/** What is read to its end, chunk by chunk. */
export type Input = AsyncIterable<Uint8Array | string>;

/** Input that is longer than this is no sum, in bytes. */
export const MOST_INPUT_BYTES = 4 * 1024 * 1024;

/** All of an input as text; null where it is longer than MOST_INPUT_BYTES or no UTF-8. */
export async function readOnce(input: Input): Promise<string | null> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of input) {
    const bytes = typeof chunk === 'string' ? new TextEncoder().encode(chunk) : chunk;
    length += bytes.length;
    if (length > MOST_INPUT_BYTES) return null;
    chunks.push(bytes);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
  } catch (error) {
    if (error instanceof TypeError) return null;
    throw error;
  }
}
