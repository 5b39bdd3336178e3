const HOUR_MIN = 60;
const DAY_MIN = 24 * HOUR_MIN;
/** A number with what it counts, or the minutes that follow hours without a word: 36 h, 90 min, 1 h 30, 1:30, 2 days. */
const PART = /^(\d+(?:[.,]\d+)?)\s*(:|[\p{L}]*)\.?\s*/u;

/**
 * The minutes of a length of time as people type it in any of the page's languages: "36 h", "1 h 30", "1:30", "90 min",
 * "2 days"; a number alone is hours. Null where it is none yet. Nothing is said of how long it may be.
 */
export function minutesTyped(text: string): number | null {
  let rest = text.trim().toLowerCase();
  if (rest === '') return null;
  let sumMin = 0;
  let before = Infinity;
  while (rest !== '') {
    const found = PART.exec(rest);
    if (found === null) return null;
    const [whole, number = '', word = ''] = found;
    rest = rest.slice(whole.length);
    // A number alone is hours where nothing stands beside it.
    if (word === '' && before === Infinity && rest !== '') return null;
    const each = unitMin(word, before);
    // Larger units come first, each once.
    if (each === null || each >= before) return null;
    sumMin += Number(number.replace(',', '.')) * each;
    before = each;
  }
  return sumMin;
}

/** What a word counts, in minutes; a number without one is hours at first, and minutes after hours. */
function unitMin(word: string, before: number): number | null {
  if (word === '') return before === HOUR_MIN ? 1 : before === Infinity ? HOUR_MIN : null;
  if (word === ':') return HOUR_MIN;
  if (/^(?:d|days?|t|tage?n?|j|jours?)$/.test(word)) return DAY_MIN;
  if (/^(?:h|hrs?|hours?|std|stunden?|heures?)$/.test(word)) return HOUR_MIN;
  return /^(?:m|min|mins|minutes?|minuten)$/.test(word) ? 1 : null;
}
