import { z } from 'zod';
import { serviceDateSchema } from '../documents/names.ts';
import { TABLE_NAMES } from './tables.ts';

/** How a table is written: RFC 4180, or JSON Lines. */
export const EXPORT_FORMATS = ['csv', 'jsonl'] as const;
export type ExportFormat = (typeof EXPORT_FORMATS)[number];

/** What `GET /api/records-export` takes: a table, how it is written, and of which days, the last with them. */
export const exportAskedSchema = z
  .strictObject({
    table: z.string().refine((name) => TABLE_NAMES.includes(name), { error: `there are the tables ${TABLE_NAMES.join(', ')}` }),
    format: z.enum(EXPORT_FORMATS).default('csv'),
    from: serviceDateSchema.optional(),
    to: serviceDateSchema.optional(),
  })
  .refine(({ from, to }) => from === undefined || to === undefined || from <= to, {
    path: ['to'],
    error: 'a period ends on its first day or after it',
  });
export type ExportAsked = z.infer<typeof exportAskedSchema>;

/** The name of the file that a table is downloaded as. */
export function exportFileName({ table, format, from, to }: ExportAsked): string {
  const period = [from, to].flatMap((date) => date ?? []).join('-to-');
  return `ovenward-${table.replaceAll('_', '-')}${period === '' ? '' : `-${period}`}.${format}`;
}
