import { z } from 'zod';
import { bookFaultMessage, bookFaultOptions } from './book-fault-facts.ts';

const count = z.number().int().min(0);

/**
 * What is wrong with a house, a kitchen or the book, in facts: files, the api and the command line tell them in English by
 * `faultMessage`, screens in their own language.
 */
export const faultFactsSchema = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('idTwice'), id: z.string() }),
  /** Decks and slots have ids of their own in the whole house; `path` is where the other one stands. */
  z.strictObject({ code: z.literal('idElsewhere'), id: z.string(), path: z.string() }),
  z.strictObject({ code: z.literal('stationUnknown'), id: z.string() }),
  z.strictObject({ code: z.literal('mixerUnknown'), id: z.string() }),
  z.strictObject({ code: z.literal('leastOverMost') }),
  /** Taken out, and methods or doughs by these names still need it. */
  z.strictObject({ code: z.literal('stillNeeded'), name: z.string(), by: z.array(z.string()).min(1) }),
  /** Fewer vessels than doughs hold; `name` where the vessel itself was taken out. */
  z.strictObject({ code: z.literal('vesselsHeld'), name: z.string().nullable(), heldCount: count }),
  z.strictObject({ code: z.literal('zoneUnknown'), zone: z.string() }),
  /** From a clock time to the same. */
  z.strictObject({ code: z.literal('hoursEmpty'), at: z.string() }),
  z.strictObject({ code: z.literal('cleaningTooLong'), minutes: z.number(), windowMin: z.number() }),
  ...bookFaultOptions,
]);

export type FaultFacts = z.infer<typeof faultFactsSchema>;
export type FaultCode = FaultFacts['code'];

/** A fault in English, for files, the api and the command line. */
export function faultMessage(facts: FaultFacts): string {
  switch (facts.code) {
    case 'idTwice':
      return `"${facts.id}" is used twice`;
    case 'idElsewhere':
      return `"${facts.id}" is already used at ${facts.path}; decks and slots have ids of their own in the whole house`;
    case 'stationUnknown':
      return `there is no station "${facts.id}"`;
    case 'mixerUnknown':
      return `there is no mixer "${facts.id}"`;
    case 'leastOverMost':
      return 'the least load is more than the most';
    case 'stillNeeded':
      return `${facts.name} is still needed by ${facts.by.join(', ')}`;
    case 'vesselsHeld':
      return `${facts.name === null ? '' : `${facts.name}: `}doughs hold ${facts.heldCount} of them`;
    case 'zoneUnknown':
      return `there is no time zone "${facts.zone}"; zones are named like Europe/London`;
    case 'hoursEmpty':
      return `from ${facts.at} to ${facts.at} is no time at all; a whole day is two shifts`;
    case 'cleaningTooLong':
      return `it takes ${facts.minutes} min, and there are ${facts.windowMin} min for it`;
    default:
      return bookFaultMessage(facts);
  }
}
