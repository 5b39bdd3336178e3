import { METHOD } from '../words/method.ts';

/** From here on hours are easier to read. */
const HOURS_FROM_MIN = 90;

/** A length of time as a method's list reads it: "12 min", "1 h 30"; empty while it is half typed. `minutes` as stored. */
export function lengthText(minutes: number): string {
  if (!Number.isFinite(minutes)) return '';
  if (minutes < HOURS_FROM_MIN) return METHOD.minutesShort(String(Number(minutes.toFixed(1))));
  const whole = Math.round(minutes);
  const over = whole % 60;
  return METHOD.hoursShort(Math.floor(whole / 60), over === 0 ? '' : String(over).padStart(2, '0'));
}
