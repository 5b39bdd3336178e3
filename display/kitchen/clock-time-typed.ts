/** A clock time as people type it: 5:00, 05.00, 0500, 5h30, or the hour alone. */
const TYPED = /^([01]?\d|2[0-3])(?:[:.h ]?([0-5]\d))?h?$/;

/** The clock time that was typed, as documents have it (05:00); null where it is none yet. */
export function clockTimeTyped(text: string): string | null {
  const found = TYPED.exec(text.trim().toLowerCase());
  if (found === null) return null;
  const [, hour = '', minute = '00'] = found;
  return `${hour.padStart(2, '0')}:${minute}`;
}
