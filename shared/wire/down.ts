import { z } from 'zod';
import { VOLUME_PCT } from '../documents/house.ts';
import { idSchema } from '../ids.ts';
import { joiningStatusSchema } from './joining.ts';
import { pageKindSchema } from './page-kind.ts';
import { callKeySchema, callLevelSchema, recordedEventSchema } from '../floor/events.ts';
import { outcomeSchema } from '../floor/refusals.ts';
import type { FloorState } from '../floor/state.ts';

export const deviceSchema = z.strictObject({ id: idSchema, name: z.string(), stationId: z.string().nullable() });
export type Device = z.infer<typeof deviceSchema>;

/** House time = houseMs + pace · (real − realMs). */
export const clockSchema = z.strictObject({ houseMs: z.number(), realMs: z.number(), pace: z.number() });

export const welcomeSchema = z.strictObject({
  type: z.literal('welcome'),
  protocol: z.number().int(),
  kitchenId: idSchema,
  device: deviceSchema,
  clock: clockSchema,
  devices: z.array(deviceSchema),
  /** How phones reach this server, in the order to try. */
  addresses: z.array(z.string()),
});
/** The state is the server's own and not checked again field by field. */
export const snapshotSchema = z.strictObject({
  type: z.literal('snapshot'),
  sequence: z.number().int().min(0),
  state: z.custom<FloorState>((value) => typeof value === 'object' && value !== null),
});
export const eventsSchema = z.strictObject({ type: z.literal('events'), events: z.array(recordedEventSchema).min(1) });
/** Catching up is over: from here on everything is news. */
export const liveSchema = z.strictObject({ type: z.literal('live'), sequence: z.number().int().min(0) });
export const outcomeMessageSchema = z.strictObject({ type: z.literal('outcome'), commandId: idSchema, outcome: outcomeSchema });
/** RFC 5905's t2 and t3, in the server's real time. */
export const pongSchema = z.strictObject({ type: z.literal('pong'), t1: z.number(), t2: z.number(), t3: z.number(), clock: clockSchema });
/** Sound this burst now, and say so: this device is the one that sounds. A test is about no call. */
export const soundSchema = z.strictObject({
  type: z.literal('sound'),
  soundId: idSchema,
  burst: callLevelSchema,
  /** How loud, as heard: half of it sounds half as loud. */
  volumePct: z.number().int().min(VOLUME_PCT.least).max(VOLUME_PCT.most),
  isTest: z.boolean(),
  calls: z.array(callKeySchema),
});
/** Which device sounds at present, and on what sort of page; null and null: none can, and every screen says so. */
export const soundStatusSchema = z.strictObject({
  type: z.literal('soundStatus'),
  soundingDeviceId: idSchema.nullable(),
  page: pageKindSchema.nullable(),
});
export const devicesSchema = z.strictObject({ type: z.literal('devices'), devices: z.array(deviceSchema) });
/** The planner has something new that stands in no event: a day that is found, an offer. Who shows plans asks for them (`GET /api/plan`). */
export const planNewsSchema = z.strictObject({ type: z.literal('planNews') });
/** How the house itself is: whether the journal takes what happens, and whether backups are late. */
export const healthSchema = z.strictObject({ type: z.literal('health'), isKept: z.boolean(), areBackupsLate: z.boolean() });
/** To walls only: how letting devices in stands. */
export const joiningMessageSchema = z.strictObject({ type: z.literal('joining'), status: joiningStatusSchema });

/** Everything that the server may say. */
export const downMessageSchema = z.discriminatedUnion('type', [
  welcomeSchema,
  snapshotSchema,
  eventsSchema,
  liveSchema,
  outcomeMessageSchema,
  pongSchema,
  soundSchema,
  soundStatusSchema,
  devicesSchema,
  planNewsSchema,
  joiningMessageSchema,
  healthSchema,
]);
export type DownMessage = z.infer<typeof downMessageSchema>;
