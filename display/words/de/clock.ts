/** How this language writes clock times and weekdays. */
export const LOCALE = 'de-DE';

/** Whole minutes of a countdown. */
export function minutesWords(minutes: number): string {
  return `${minutes} min`;
}

/** The marks of the time axis, with the minutes at which they stand. */
export const AXIS_MARKS: readonly { readonly minutes: number; readonly text: string }[] = [
  { minutes: 5, text: '5' },
  { minutes: 15, text: '15' },
  { minutes: 30, text: '30' },
  { minutes: 60, text: '1 h' },
  { minutes: 120, text: '2 h' },
  { minutes: 240, text: '4 h' },
  { minutes: 480, text: '8 h' },
];

/** What the axis is, for a screen reader. */
export const AXIS_LABEL = 'Minuten und Stunden ab jetzt';

/** Whole hours left, "24 h". */
export function hoursWords(hours: number): string {
  return `${hours} h`;
}
