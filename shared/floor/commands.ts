import { z } from 'zod';
import { formulaSchema, ingredientSchema, productSchema } from '../documents/formula.ts';
import { houseSchema } from '../documents/house.ts';
import { kitchenSchema } from '../documents/kitchen.ts';
import {
  celsiusSchema,
  gramsSchema,
  instantMsSchema,
  keySchema,
  piecesSchema,
  remarkSchema,
  serviceDateSchema,
} from '../documents/names.ts';
import { idSchema } from '../ids.ts';
import { callKeySchema, callLevelSchema } from './events.ts';

/** Minutes that "a little more" offers; any whole number within its range is accepted. */
export const MORE_TIME_MINUTES = [1, 2, 5] as const;
/** Minutes for which a call may be held. */
export const HOLD_MINUTES = [5, 10, 20] as const;

const onStep = { workpieceId: idSchema, stepId: keySchema };

// What a thumb can say. Each names the step that it believes in.
export const startStep = z.strictObject({ type: z.literal('startStep'), ...onStep, mixerId: keySchema.optional() });
export const finishStep = z.strictObject({
  type: z.literal('finishStep'),
  ...onStep,
  /** For a load: where it went in. Missing: the first free slots of the decks that will do. */
  slotIds: z.array(keySchema).min(1).max(40).optional(),
  /** For a divide: what it really became. Missing: as planned. */
  cuts: z
    .array(z.strictObject({ productId: keySchema, pieces: piecesSchema }))
    .min(1)
    .max(20)
    .optional(),
  piecesDone: z.number().int().min(0).max(100_000).optional(),
});
export const giveMoreTime = z.strictObject({ type: z.literal('giveMoreTime'), ...onStep, minutes: z.number().int().min(1).max(720) });
export const hearCall = z.strictObject({ type: z.literal('hearCall'), ...onStep });
/** Everything that sounds at the moment: a foot pedal, a key on the wall. */
export const hearAllCalls = z.strictObject({ type: z.literal('hearAllCalls') });
export const holdWorkpiece = z.strictObject({ type: z.literal('holdWorkpiece'), ...onStep, minutes: z.number().int().min(1).max(120) });
export const releaseWorkpiece = z.strictObject({ type: z.literal('releaseWorkpiece'), ...onStep });
export const skipStep = z.strictObject({ type: z.literal('skipStep'), ...onStep, reason: remarkSchema });
export const discardWorkpiece = z.strictObject({ type: z.literal('discardWorkpiece'), workpieceId: idSchema, reason: remarkSchema });
export const readTemperature = z.strictObject({
  type: z.literal('readTemperature'),
  workpieceId: idSchema,
  where: z.enum(['dough', 'core', 'water', 'filling', 'room']),
  celsius: celsiusSchema,
});
export const undoCommand = z.strictObject({ type: z.literal('undoCommand'), commandId: idSchema });

// What the house says of itself.
export const bringInDay = z.strictObject({
  type: z.literal('bringInDay'),
  house: houseSchema,
  kitchen: kitchenSchema,
  ingredients: z.array(ingredientSchema),
  formulas: z.array(formulaSchema),
  products: z.array(productSchema),
  serviceDate: serviceDateSchema,
  batches: z.array(
    z.strictObject({
      formulaId: keySchema,
      plannedStartMs: instantMsSchema,
      grams: gramsSchema,
      cuts: z.array(z.strictObject({ productId: keySchema, pieces: piecesSchema, grams: gramsSchema })),
    }),
  ),
});

// What the server says of time and calls; never taken from a client.
export const raiseCall = z.strictObject({ type: z.literal('raiseCall'), ...onStep, level: callLevelSchema });
export const noteSounded = z.strictObject({ type: z.literal('noteSounded'), burst: callLevelSchema, calls: z.array(callKeySchema).min(1) });
export const anchorClock = z.strictObject({
  type: z.literal('anchorClock'),
  houseMs: instantMsSchema,
  realMs: instantMsSchema,
  pace: z.number().min(1).max(3600),
});
export const noteClockJump = z.strictObject({ type: z.literal('noteClockJump'), byMs: z.number().int() });

/** What clients may send. */
export const clientCommandSchema = z.discriminatedUnion('type', [
  startStep,
  finishStep,
  giveMoreTime,
  hearCall,
  hearAllCalls,
  holdWorkpiece,
  releaseWorkpiece,
  skipStep,
  discardWorkpiece,
  readTemperature,
  undoCommand,
]);
/** What only the server itself gives. */
export const houseCommandSchema = z.discriminatedUnion('type', [bringInDay, raiseCall, noteSounded, anchorClock, noteClockJump]);

export type ClientCommand = z.infer<typeof clientCommandSchema>;
export type HouseCommand = z.infer<typeof houseCommandSchema>;
export type FloorCommand = ClientCommand | HouseCommand;
export type CommandOf<Type extends FloorCommand['type']> = Extract<FloorCommand, { type: Type }>;

/**
 * When a tap was, as its phone can tell: how long ago by the clock that only runs forward (null after a reload, when
 * that clock has begun anew) and by the wall clock. Real milliseconds, whatever the house's pace.
 */
export const tapTimeSchema = z.strictObject({
  agoMonotonicMs: z
    .number()
    .min(0)
    .max(7 * 86_400_000)
    .nullable(),
  agoWallMs: z
    .number()
    .min(-366 * 86_400_000)
    .max(366 * 86_400_000),
});
export type TapTime = z.infer<typeof tapTimeSchema>;

/** What the decider is told beside the command. All instants are house time. */
export interface CommandContext {
  readonly commandId: string;
  readonly deviceId: string;
  /** Where the device says it stands; stations stand for people. */
  readonly stationId: string | null;
  /** When the server has it. */
  readonly nowMs: number;
  /** When the thumb was there: at most nowMs. */
  readonly tapMs: number;
  readonly tapUncertain: boolean;
}
