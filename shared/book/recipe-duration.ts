const DURATION =
  /^P(?:(\d+(?:[.,]\d+)?)W)?(?:(\d+(?:[.,]\d+)?)D)?(?:T(?:(\d+(?:[.,]\d+)?)H)?(?:(\d+(?:[.,]\d+)?)M)?(?:(\d+(?:[.,]\d+)?)S)?)?$/i;
/** Minutes in a week, a day, an hour, a minute and a second. */
const MINUTES = [7 * 24 * 60, 24 * 60, 60, 1, 1 / 60] as const;

/**
 * An ISO 8601 duration in minutes. Null for what is none, and for years and months, whose length nobody can tell.
 */
export function durationMin(text: string): number | null {
  const amounts = DURATION.exec(text.trim())?.slice(1);
  if (amounts === undefined || amounts.every((amount) => amount === undefined) || /T$/i.test(text.trim())) return null;
  return amounts.reduce((sum, amount, index) => sum + Number((amount ?? '0').replace(',', '.')) * (MINUTES[index] ?? 0), 0);
}
