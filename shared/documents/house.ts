import { z } from 'zod';
import { clockTimeSchema, nameSchema } from './names.ts';

/** Rule sets for holding and cooling that the house may name; local codes and licensed advice come before any of them. */
export const ruleSetSchema = z.enum(['us-food-code', 'england', 'australia']);

/** Times of day at which the volume may change. */
export const MOST_VOLUMES = 24;
/** How loud the house calls, in percent of what its loudspeakers give. Never nothing: quiet hours say when calls are silent. */
export const VOLUME_PCT = { least: 5, most: 100 } as const;

/** How the house sounds. Clock times are its zone's. */
export const soundSettingsSchema = z
  .strictObject({
    /** Each holds from its time on, the last of the day over midnight. */
    volumes: z
      .array(z.strictObject({ from: clockTimeSchema, volumePct: z.number().int().min(VOLUME_PCT.least).max(VOLUME_PCT.most) }))
      .min(1)
      .max(MOST_VOLUMES)
      .default([{ from: '00:00', volumePct: 100 }]),
    /** When what is only a call makes no sound; over midnight where it ends earlier than it begins. */
    quiet: z.strictObject({ from: clockTimeSchema, to: clockTimeSchema }).nullable().default(null),
    /** When the loudspeakers are tried every day. */
    testAt: clockTimeSchema.default('05:00'),
  })
  .prefault({});
export type SoundSettings = z.infer<typeof soundSettingsSchema>;

/**
 * By which custom the house speaks of the mixer's warming, at the screens alone: kelvins that the dough rises, a friction
 * factor subtracted once, or a base temperature. What is kept is the rise.
 */
export const waterFormSchema = z.enum(['rise', 'friction', 'base']);
export type WaterForm = z.infer<typeof waterFormSchema>;

/** Water and ice for the dough. */
export const waterSettingsSchema = z
  .strictObject({
    form: waterFormSchema.default('rise'),
    /** How cold the ice is when it goes in, in °C. */
    iceC: z.number().min(-30).max(0).default(0),
  })
  .prefault({});
export type WaterSettings = z.infer<typeof waterSettingsSchema>;

/** What holds for the whole bakehouse. Each adoption is an event with the next version number. */
export const houseSchema = z.strictObject({
  name: nameSchema,
  /** IANA time zone name; screens show clock times in it. */
  zone: z.string().min(1).max(64),
  units: z.strictObject({
    temperature: z.enum(['C', 'F']),
    weight: z.enum(['g', 'lb']),
  }),
  altitudeM: z.number().min(-430).max(5500).default(0),
  ruleSet: ruleSetSchema,
  /** Divisions of the scales in use, in grams. */
  scalesG: z.strictObject({ bench: z.number().positive().max(100), fine: z.number().positive().max(10) }).default({ bench: 5, fine: 0.1 }),
  sound: soundSettingsSchema,
  water: waterSettingsSchema,
});

export type House = z.infer<typeof houseSchema>;
