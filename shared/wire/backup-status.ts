import { z } from 'zod';

/** How a house's backups stand, as `GET /api/backups` tells it and `POST /api/backups` after one more. */
export const backupStatusSchema = z.object({
  /** Where they are kept, on the server's machine. */
  folder: z.string(),
  /** The newest that is whole: when it was made by the machine's clock, and its journal's last event; null for none. */
  last: z.object({ madeMs: z.number().int(), sequence: z.number().int().min(0) }).nullable(),
  /** Why the last one that was tried could not be made; null where it could. */
  fault: z.string().nullable(),
  /** Two in a row were missed. */
  isLate: z.boolean(),
  kept: z.number().int().min(0),
});
export type BackupStatus = z.infer<typeof backupStatusSchema>;
