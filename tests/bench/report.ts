import { median, significant } from './statistics.ts';

/** One measured figure, as it is printed. */
export interface Line {
  readonly bench: string;
  readonly value: number;
  readonly unit: string;
  /** The same measured on the least that could do it, interleaved in the same run. */
  readonly floor?: number;
  /** How many times the floor: the median of the rounds' own ratios. */
  readonly ratio?: number;
  readonly aim: string;
  readonly rounds: number;
}

/** One round: what was measured, and its floor right before or after it. */
export interface Round {
  readonly value: number;
  readonly floor: number;
}

/** The medians of rounds that have a floor. */
export function lineWithFloor(bench: string, unit: string, aim: string, rounds: readonly Round[]): Line {
  return {
    bench,
    value: significant(median(rounds.map((round) => round.value))),
    unit,
    floor: significant(median(rounds.map((round) => round.floor))),
    ratio: significant(median(rounds.map((round) => round.value / round.floor))),
    aim,
    rounds: rounds.length,
  };
}

/** The median of values that have no floor. */
export function lineOf(bench: string, unit: string, aim: string, values: readonly number[]): Line {
  return { bench, value: significant(median(values)), unit, aim, rounds: values.length };
}

/** Runs both sides of each round, now the one first and now the other, so that neither profits from its place. */
export async function interleaved<Value>(
  rounds: number,
  value: () => Promise<Value>,
  floor: () => Promise<Value>,
): Promise<readonly { readonly value: Value; readonly floor: Value }[]> {
  const results: { value: Value; floor: Value }[] = [];
  for (let round = 0; round < rounds; round += 1) {
    if (round % 2 === 0) {
      const measured = await value();
      results.push({ value: measured, floor: await floor() });
    } else {
      const least = await floor();
      results.push({ value: await value(), floor: least });
    }
  }
  return results;
}
