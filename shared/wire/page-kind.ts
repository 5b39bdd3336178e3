import { z } from 'zod';

/** What a browser has open: a wall, a screen bolted to one station, or a phone of a pocket. */
export const pageKindSchema = z.enum(['wall', 'station', 'phone']);
export type PageKind = z.infer<typeof pageKindSchema>;
