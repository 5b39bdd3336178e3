import { idFromBytes } from '../../../shared/ids.ts';

/** The id numbered n, so that tests can name what they mean; the same in every run. */
export function idOf(n: number): string {
  const bytes = new Uint8Array(16);
  new DataView(bytes.buffer).setUint32(8, n);
  return idFromBytes(bytes);
}

export const SERVER_DEVICE = idOf(1_000_001);
export const PHONE = idOf(1_000_002);
export const OTHER_PHONE = idOf(1_000_003);
