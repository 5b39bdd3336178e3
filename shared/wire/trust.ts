import { z } from 'zod';

/** `GET /api/trust`: the bakehouse's own certificate authority, where the server has one. */
export const trustSchema = z.object({
  /** SHA-256 of the root, to be compared by eye with what the server's console shows. */
  fingerprint: z.string(),
  /** Where the same pages are, over TLS. */
  port: z.number().int(),
});
export type Trust = z.infer<typeof trustSchema>;

/** A browser that has once come through by TLS says so by this cookie; plain http leads it there from then on. */
export const TRUSTS_COOKIE = 'ovenward-trusts';
