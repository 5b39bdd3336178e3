import { folded } from '../../book/folded.ts';
import { minutesSchema, piecesSchema, serviceDateSchema } from '../../documents/names.ts';
import type { OrderForm } from '../../documents/order.ts';

const CLOCK_TIME = /^(\d{1,2})(?:\s?[:.h]\s?(\d{2})(?:[:.]\d{2})?)?\s*(am|pm|a\.m\.|p\.m\.|h|uhr)?$/;
const NOON = 12;
const HOURS = 24;

/** A clock time as people and spreadsheets write it (6:30, 06:30, 6.30, 6h30, 6:30 pm, 6), as hh:mm; null where it is none. */
export function clockTimeIn(text: string): string | null {
  const found = CLOCK_TIME.exec(text.trim().toLowerCase());
  if (found === null) return null;
  const [, hourText = '', minuteText = '00', half = ''] = found;
  const hour = hourOfDay(Number(hourText), half.replaceAll('.', ''));
  return hour === null || hour >= HOURS || Number(minuteText) >= 60 ? null : `${String(hour).padStart(2, '0')}:${minuteText}`;
}

function hourOfDay(hour: number, half: string): number | null {
  if (half !== 'am' && half !== 'pm') return hour;
  if (hour < 1 || hour > NOON) return null;
  return (hour % NOON) + (half === 'pm' ? NOON : 0);
}

/** Minutes from midnight of hh:mm. */
export function minuteOfDay(clockTime: string): number {
  const [hour = '0', minute = '0'] = clockTime.split(':');
  return Number(hour) * 60 + Number(minute);
}

const PIECES = /^(\d+|\d{1,3}(?:[ \u00A0\u202F'’]\d{3})+)\s*(?:x|×|pcs?|pieces?|stk\.?|stücke?|pi[eè]ces?)?$/;

/** A count of pieces, thousands by themselves where somebody likes it so (1 200); null where it is none. */
export function piecesIn(text: string): number | null {
  const found = PIECES.exec(text.trim().toLowerCase());
  const pieces = piecesSchema.safeParse(Number(found?.[1]?.replace(/\D/g, '') ?? Number.NaN));
  return pieces.success ? pieces.data : null;
}

const MINUTES = /^(\d+)\s*(?:min\.?|minutes?|minuten|')?$/;
const HOURS_AND_MINUTES = /^(\d+)\s*(?::|h|std\.?)\s*(\d{2})?\s*(?:min\.?|h)?$/;
const PART_HOURS = /^(\d+[.,]\d+)\s*(?:h|std\.?)$/;

/** A length of time (90, 90 min, 1:30, 1h30, 2 h, 1.5 h) in minutes; null where it is none. */
export function lengthMinIn(text: string): number | null {
  const plain = text.trim().toLowerCase();
  const [minutes, hours, part] = [MINUTES, HOURS_AND_MINUTES, PART_HOURS].map((form) => form.exec(plain));
  const read = minutesSchema.safeParse(
    minutes
      ? Number(minutes[1])
      : hours
        ? Number(hours[1]) * 60 + Number(hours[2] ?? 0)
        : part
          ? Number(part[1]?.replace(',', '.')) * 60
          : Number.NaN,
  );
  return read.success ? read.data : null;
}

const FORMS: Readonly<Record<OrderForm, readonly string[]>> = {
  cooled: ['cooled', 'cold', 'cool', 'abgekühlt', 'ausgekühlt', 'kalt', 'refroidi', 'refroidie', 'refroidis', 'froid', 'froids', 'froide'],
  hot: ['hot', 'warm', 'heiß', 'ofenheiß', 'ofenwarm', 'chaud', 'chaude', 'chauds'],
};
const FORM_OF = new Map((['cooled', 'hot'] as const).flatMap((form) => FORMS[form].map((word) => [folded(word), form] as const)));

/** Cooled or hot, in English, German or French; null where it is neither. */
export function orderFormIn(text: string): OrderForm | null {
  return FORM_OF.get(folded(text)) ?? null;
}

/** From 1, as usual, to 9; null where it is none of these. */
export function weightIn(text: string): number | null {
  return /^[1-9]$/.test(text.trim()) ? Number(text) : null;
}

const DAY_FIRST = /^(\d{1,2})[./](\d{1,2})[./](\d{4})$/;

/** A date as ISO 8601 has it, or day first with points or slashes; null where it is none. */
export function dateIn(text: string): string | null {
  const plain = text.trim();
  const [, day = '', month = '', year = ''] = DAY_FIRST.exec(plain) ?? [];
  const date = serviceDateSchema.safeParse(year === '' ? plain : `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
  return date.success ? date.data : null;
}
