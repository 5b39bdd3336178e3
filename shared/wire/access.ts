import { z } from 'zod';
import { nameSchema } from '../documents/names.ts';
import { idSchema } from '../ids.ts';
import { accessRoleSchema } from './joining.ts';

/** Longest code that is read at all; what people type has dashes and spaces. */
const MAX_CODE_CHARACTERS = 40;
/** A ticket is 128 random bits in base64url (RFC 4648 section 5). */
const TICKET_PATTERN = /^[\w-]{22}$/;

/** `POST /api/join`: the code from the server's console or from the wall, and what the wall's picture brought along. */
export const joinRequestSchema = z.strictObject({
  code: z.string().min(1).max(MAX_CODE_CHARACTERS),
  ticket: z.string().regex(TICKET_PATTERN, 'a ticket is 22 characters of base64url').nullish(),
  /** What the browser is to be: a wall and a phone in one browser are two devices. */
  as: z.enum(['wall', 'phone']).default('phone'),
  name: nameSchema.nullish(),
});
export type JoinRequest = z.infer<typeof joinRequestSchema>;

/** What a device that was let in is told; its token comes as a cookie and nowhere else. */
export const joinedSchema = z.object({ deviceId: idSchema, name: z.string(), role: accessRoleSchema });
export type Joined = z.infer<typeof joinedSchema>;

/** `GET /api/access`: how the house stands to whoever asks. */
export const accessStatusSchema = z.object({
  /** Null: this browser or program is not let in. */
  role: accessRoleSchema.nullable(),
  /** Some device manages the kitchen; until then the console's code makes the first one. */
  isClaimed: z.boolean(),
  /** A wall shows the code now. */
  isJoiningOpen: z.boolean(),
});
export type AccessStatus = z.infer<typeof accessStatusSchema>;

/** `POST /api/joining`: what those who join next may do. */
export const joiningAskSchema = z.strictObject({ role: accessRoleSchema });

/** One line of the list of devices. */
export const listedDeviceSchema = z.object({
  id: idSchema,
  kind: z.enum(['wall', 'phone', 'script']),
  name: z.string(),
  stationId: z.string().nullable(),
  /** Null: not let in (any more). */
  role: accessRoleSchema.nullable(),
  firstSeenMs: z.number().int(),
  lastSeenMs: z.number().int(),
  isConnected: z.boolean(),
  /** Whoever asks. */
  isThis: z.boolean(),
});
export type ListedDevice = z.infer<typeof listedDeviceSchema>;

/** `GET /api/devices`. */
export const deviceListSchema = z.object({ devices: z.array(listedDeviceSchema) });

/** `PUT /api/devices/:id/role`. */
export const roleAskSchema = z.strictObject({ role: accessRoleSchema });
