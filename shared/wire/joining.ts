import { z } from 'zod';

/** What a device may do: look (walls), act (phones on the floor), manage (formulas, kitchen, plan, export, devices). */
export const accessRoleSchema = z.enum(['look', 'act', 'manage']);
export type AccessRole = z.infer<typeof accessRoleSchema>;

/** While joining is open: what walls show. */
export const joiningSchema = z.strictObject({
  role: accessRoleSchema,
  /** Six digits. */
  code: z.string(),
  /** Single-use, for as long as the picture stands; null to a wall that nobody vouched for. */
  ticket: z.string().nullable(),
  /** When joining closes by itself, in the server's real time. */
  untilMs: z.number().int(),
});
export type Joining = z.infer<typeof joiningSchema>;

/** `GET`, `POST`, `DELETE /api/joining`. */
export const joiningStatusSchema = z.object({
  joining: joiningSchema.nullable(),
  /** Too many wrong codes: nobody joins until then, in the server's real time. */
  lockedUntilMs: z.number().int().nullable(),
});
export type JoiningStatus = z.infer<typeof joiningStatusSchema>;

/** Nobody is let in at present. */
export const NOBODY_JOINS: JoiningStatus = { joining: null, lockedUntilMs: null };
