import { z } from 'zod';

/** Longest name or label that a document may carry, in characters. */
export const NAME_CHARACTERS = 60;
/** Longest check, reason or remark, in characters. */
export const REMARK_CHARACTERS = 240;

/** A key that documents use to point at one another: lower case, digits, hyphens. */
export const keySchema = z
  .string()
  .regex(/^[a-z][a-z0-9-]{0,39}$/, 'a key is lower case letters, digits and hyphens, at most 40, and begins with a letter');

export const nameSchema = z.string().trim().min(1, 'a name cannot be empty').max(NAME_CHARACTERS);
export const remarkSchema = z.string().trim().min(1, 'a remark cannot be empty').max(REMARK_CHARACTERS);

/** The letters of a formula's tags: one or two, the first upper case (C, Ch). */
export const tagLettersSchema = z
  .string()
  .regex(/^[A-Z][a-z]?$/, 'tag letters are one upper case letter, and one lower case letter at most');

/** A length of time in whole or part minutes, up to a week. */
export const minutesSchema = z
  .number()
  .min(0)
  .max(7 * 24 * 60);
/** A temperature that can occur in a bakehouse, freezer to hearth, in °C. */
export const celsiusSchema = z.number().min(-40).max(600);
/** A weight in grams, up to ten tonnes. */
export const gramsSchema = z.number().min(0).max(10_000_000);
/** A count of pieces. */
export const piecesSchema = z.number().int('pieces are whole').min(1).max(100_000);
/** An instant of the house's time, in milliseconds since 1970-01-01T00:00Z. */
export const instantMsSchema = z.number().int().min(0).max(8.64e15);
/** A production day, named by the date it serves (ISO 8601). */
export const serviceDateSchema = z.iso.date();
/** A clock time of the house's zone, 00:00 to 23:59 (ISO 8601's hh:mm). */
export const clockTimeSchema = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a clock time is written like 05:00');
