import { hoursWords, minutesWords } from '../words/clock.ts';

/** From here on hours are plain enough. */
const IN_HOURS_FROM_MIN = 180;

/** By how far something is due later or earlier, with its sign: "+12 min", "−5 min", "+7 h". */
export function movedText(byMin: number): string {
  return `${byMin < 0 ? '−' : '+'}${lengthText(Math.abs(byMin))}`;
}

/** A length of time in whole minutes, or whole hours where it is long: "12 min", "7 h". */
export function lengthText(lengthMin: number): string {
  const minutes = Math.round(lengthMin);
  return minutes < IN_HOURS_FROM_MIN ? minutesWords(minutes) : hoursWords(Math.round(minutes / 60));
}

/** How long a phase of a programme is, exactly: "8 h", "210 min". Nothing is rounded away that a retarder would do. */
export function phaseLengthText(minutes: number): string {
  return minutes % 60 === 0 ? hoursWords(minutes / 60) : minutesWords(minutes);
}
