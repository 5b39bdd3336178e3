/** A deck on its way to what it is set to. */
export interface DeckCourse {
  /** When its course begins, in minutes, and how hot it is then. */
  readonly fromMin: number;
  readonly fromC: number;
  readonly setC: number;
  /** How fast it heats and cools, in kelvin a minute; missing: at once. */
  readonly heatKPerMin?: number | undefined;
  readonly coolKPerMin?: number | undefined;
  /** What loads and steam take from it at an instant, in kelvin. */
  readonly drops: readonly { readonly atMin: number; readonly byK: number }[];
}

/** How hot a deck is at an instant, and when it will be as it is set: by its rates, less what was loaded into it. */
export function deckAt(course: DeckCourse, atMin: number): { readonly celsius: number; readonly readyMin: number } {
  const { setC, fromMin } = course;
  const drops = course.drops.filter((drop) => drop.atMin >= fromMin && drop.atMin <= atMin).sort((a, b) => a.atMin - b.atMin);
  let [celsius, reachedMin] = [course.fromC, fromMin];
  for (const { atMin: dropMin, byK } of drops) {
    celsius = toward(course, celsius, dropMin - reachedMin) - byK;
    reachedMin = dropMin;
  }
  celsius = toward(course, celsius, atMin - reachedMin);
  return { celsius, readyMin: atMin + minutesTo(course, celsius, setC) };
}

/** How many minutes a deck takes from one temperature to another, by its rates; 0 where they are not known. */
export function minutesTo(
  { heatKPerMin, coolKPerMin }: Pick<DeckCourse, 'heatKPerMin' | 'coolKPerMin'>,
  fromC: number,
  toC: number,
): number {
  const rate = toC > fromC ? heatKPerMin : coolKPerMin;
  return rate === undefined || rate === 0 ? 0 : Math.abs(toC - fromC) / rate;
}

function toward(course: DeckCourse, fromC: number, minutes: number): number {
  const { setC } = course;
  const needMin = minutesTo(course, fromC, setC);
  return needMin <= minutes ? setC : fromC + ((setC - fromC) * minutes) / needMin;
}
