/** What one bake or test piece said of a place in an oven: the minutes it took there as a multiple of those it takes at the reference. */
export interface HeatSample {
  readonly minutesShare: number;
  readonly atMs: number;
  readonly kind: 'bake' | 'testPiece';
}

/** How hot a place in an oven is, by what was baked there. */
export interface SlotHeat {
  /** What the minutes of a bake are multiplied by there: below 1 it is hotter than the reference, above 1 cooler. */
  readonly factor: number;
  /** How sure that is: nine of ten places lie between these; null of no sample. */
  readonly between: { readonly least: number; readonly most: number } | null;
  readonly count: number;
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** A place keeps its habit for weeks: after so long a sample counts half. Our choice. */
const HABIT_HALF_MS = 21 * DAY_MS;
/** A test piece says how the oven stands now: its own weight is halved so soon. Our choice. */
const NOW_HALF_MS = 2 * HOUR_MS;
/** So many bakes weigh as much as a test piece that was just done. Our choice. */
const TEST_PIECE_COUNTS = 6;
/** So many bakes weigh as much as the reference itself: one odd bake moves little. Our choice. */
const REFERENCE_COUNTS = 2;
/** What is learned never makes a bake shorter or longer than these multiples of its minutes. Our choice. */
const LEAST_FACTOR = 0.7;
const MOST_FACTOR = 1.4;
/** What one bake scatters by in the logarithm, where too few are there to tell: a tenth. Common practice. */
const USUAL_SCATTER = 0.1;
/** 1.4826 times the median deviation is the standard deviation of a normal distribution. */
const DEVIATION_OF_MEDIAN = 1.4826;
/** The standard error of a median of normal values is so many times that of their mean. */
const ERROR_OF_MEDIAN = Math.sqrt(Math.PI / 2);
/** Nine of ten of a normal distribution lie within so many standard deviations. */
const NINE_OF_TEN = 1.645;

/**
 * The heat factor of a place in an oven at an instant: the weighted median of the logarithms of its samples, which two wild ones of ten do
 * not move far, drawn towards the reference the fewer and older they are. Common practice bakes a piece of dough in the place and compares
 * the minutes; ordinary bakes say the same more faintly.
 */
export function slotHeat(samples: readonly HeatSample[], atMs: number): SlotHeat {
  const said = samples
    .filter(({ minutesShare }) => minutesShare > 0)
    .map((sample) => ({ value: Math.log(sample.minutesShare), weight: weightOf(sample, atMs) }))
    .sort((a, b) => a.value - b.value);
  const weight = said.reduce((sum, one) => sum + one.weight, 0);
  if (said.length === 0 || weight === 0) return { factor: 1, between: null, count: 0 };
  const middle = weightedMedian(said);
  const drawn = (middle * weight) / (weight + REFERENCE_COUNTS);
  const deviations = said
    .map(({ value, weight: own }) => ({ value: Math.abs(value - middle), weight: own }))
    .sort((a, b) => a.value - b.value);
  // Few samples that happen to agree are not sure of it.
  const scatter = Math.max(USUAL_SCATTER / 2, said.length < 3 ? USUAL_SCATTER : DEVIATION_OF_MEDIAN * weightedMedian(deviations));
  const error = (NINE_OF_TEN * ERROR_OF_MEDIAN * scatter) / Math.sqrt(weight + 1);
  return { factor: held(drawn), between: { least: held(drawn - error), most: held(drawn + error) }, count: said.length };
}

function held(log: number): number {
  return Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, Math.exp(log)));
}

/** Its share of the place's habit, and of a test piece that of the oven as it is now. */
function weightOf({ atMs: thenMs, kind }: HeatSample, atMs: number): number {
  const ageMs = Math.max(0, atMs - thenMs);
  const habit = 2 ** (-ageMs / HABIT_HALF_MS);
  return kind === 'bake' ? habit : habit + (TEST_PIECE_COUNTS - 1) * 2 ** (-ageMs / NOW_HALF_MS);
}

/** Of values in order, the one at which half of the weight is reached, between neighbours in proportion. */
function weightedMedian(sorted: readonly { readonly value: number; readonly weight: number }[]): number {
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let reached = 0;
  let before: { readonly value: number; readonly at: number } | null = null;
  for (const { value, weight } of sorted) {
    const at = reached + weight / 2;
    if (at >= half) return before === null ? value : before.value + ((value - before.value) * (half - before.at)) / (at - before.at);
    before = { value, at };
    reached += weight;
  }
  return before?.value ?? 0;
}
