import { z } from 'zod';
import { nameSchema } from './names.ts';

/** Rule sets for holding and cooling that the house may name; local codes and licensed advice come before any of them. */
export const ruleSetSchema = z.enum(['us-food-code', 'england', 'australia']);

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
});

export type House = z.infer<typeof houseSchema>;
