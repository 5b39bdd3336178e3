import { z } from 'zod';
import { allergenSchema } from './allergen.ts';
import { celsiusSchema, clockTimeSchema, gramsSchema, keySchema, minutesSchema, nameSchema, remarkSchema } from './names.ts';

/** From a clock time to another, over midnight where it ends earlier than it begins; on all days, or on some (ISO 8601: Monday is 1). */
export const hoursSchema = z.strictObject({
  from: clockTimeSchema,
  to: clockTimeSchema,
  weekdays: z.array(z.number().int().min(1).max(7)).min(1).max(7).optional(),
});
export type Hours = z.infer<typeof hoursSchema>;

/** Where somebody works. Stations stand for people: names of people are never part of a document. */
export const stationSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  hands: z.number().int().min(1).max(20).default(1),
  /** When somebody is there; always where nobody said. */
  hours: z.array(hoursSchema).max(14).optional(),
  breaks: z.array(hoursSchema).max(14).optional(),
});

export const mixerSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  kind: z.enum(['spiral', 'planetary', 'fork', 'twin-arm']),
  leastG: gramsSchema,
  mostG: gramsSchema,
  /** Whether the bowl can stand elsewhere while the mixer takes another. */
  bowlComesOff: z.boolean().default(false),
  /** How long it takes to clean after a dough with allergens that the next one has not; missing where nobody changes over. */
  changeOverMin: minutesSchema.optional(),
  /** By how much a dough warms while it is mixed, in kelvin, until the house has learned it. */
  riseK: z.number().min(0).max(30).optional(),
  /** How many speeds it has; missing where nobody counted: then it has what is asked of it. */
  speeds: z.number().int().min(1).max(10).optional(),
  station: keySchema,
});

export const bowlSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  litres: z.number().positive().max(1000),
  fits: z.array(keySchema).min(1),
});

export const restPlaceSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  kind: z.enum(['bench', 'warm-shelf', 'prover', 'retarder', 'cold-room', 'freezer']),
  temperatureC: celsiusSchema,
  humidityPct: z.number().min(0).max(100).optional(),
  /** How many tubs or racks it takes; no number where nobody counts. */
  room: z.number().int().min(1).max(1000).optional(),
  /** What a retarder does once its programme is begun: its temperatures one after another, of which the last stays. */
  programme: z
    .array(z.strictObject({ minutes: minutesSchema, temperatureC: celsiusSchema }))
    .min(1)
    .max(12)
    .optional(),
});

/** Tins, bannetons, boards: counted, held by a load and given back after a turn-round. */
export const vesselSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  kind: z.enum(['tub', 'tin', 'banneton', 'board', 'tray', 'rack']),
  count: z.number().int().min(1).max(100_000),
  turnRoundMin: minutesSchema.default(0),
});

export const slotSchema = z.strictObject({ id: keySchema, name: nameSchema });

export const deckSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  temperatureC: celsiusSchema,
  slots: z.array(slotSchema).min(1).max(40),
  /** How fast it gets hotter and cools down, in kelvin a minute; missing: as hot as it is wanted at once. */
  heatKPerMin: z.number().positive().max(100).optional(),
  coolKPerMin: z.number().positive().max(100).optional(),
});

/** An oven with its decks from top to bottom, as they stand. */
export const ovenSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  decks: z.array(deckSchema).min(1).max(20),
});

/** Work that takes a machine or the bench out of use once a day. */
export const cleaningSchema = z.strictObject({
  id: keySchema,
  name: nameSchema,
  resource: z.strictObject({ kind: z.enum(['mixer', 'bench', 'deck']), id: keySchema }),
  minutes: minutesSchema,
  /** Whose hands it takes; nobody's where it is missing. */
  station: keySchema.optional(),
  /** Within these clock times. */
  from: clockTimeSchema,
  to: clockTimeSchema,
});
export type Cleaning = z.infer<typeof cleaningSchema>;

export const kitchenSchema = z.strictObject({
  stations: z.array(stationSchema).min(1).max(40),
  mixers: z.array(mixerSchema).max(40),
  bowls: z.array(bowlSchema).max(200).default([]),
  restPlaces: z.array(restPlaceSchema).min(1).max(100),
  vessels: z.array(vesselSchema).max(200).default([]),
  ovens: z.array(ovenSchema).max(20),
  /** How many doughs can be worked on the bench at once, and what cleaning it of allergens takes; missing where nobody counts. */
  bench: z.strictObject({ room: z.number().int().min(1).max(40), changeOverMin: minutesSchema.optional() }).optional(),
  cleanings: z.array(cleaningSchema).max(40).optional(),
  /** What may get into anything that is made here although no formula names it: shown with every product. */
  mayContain: z.strictObject({ allergens: z.array(allergenSchema).default([]), note: remarkSchema.optional() }).optional(),
});

export type Kitchen = z.infer<typeof kitchenSchema>;
export type Mixer = z.infer<typeof mixerSchema>;
export type RestPlace = z.infer<typeof restPlaceSchema>;
export type Oven = z.infer<typeof ovenSchema>;
export type Deck = z.infer<typeof deckSchema>;
export type Slot = z.infer<typeof slotSchema>;
export type Station = z.infer<typeof stationSchema>;
