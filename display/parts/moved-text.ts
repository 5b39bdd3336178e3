import { hoursWords, minutesWords } from '../words/clock.ts';

/** From here on hours are plain enough. */
const IN_HOURS_FROM_MIN = 180;

/** By how far something is due later or earlier, with its sign: "+12 min", "−5 min", "+7 h". */
export function movedText(byMin: number): string {
  const sign = byMin < 0 ? '−' : '+';
  const minutes = Math.round(Math.abs(byMin));
  return `${sign}${minutes < IN_HOURS_FROM_MIN ? minutesWords(minutes) : hoursWords(Math.round(minutes / 60))}`;
}
