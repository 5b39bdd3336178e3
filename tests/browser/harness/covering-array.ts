import { Random } from '../../simulation/support/random.ts';

/** What may vary, each with its values. */
export type Factors = Readonly<Record<string, readonly unknown[]>>;

/** One choice of every factor. */
export type Case<F extends Factors> = { readonly [Name in keyof F]: F[Name][number] };

/** Cases tried for each one taken. */
const CANDIDATES = 60;

/** Every pair of two factors' values, as a key. */
export function pairsOf(factors: Factors, chosen?: Readonly<Record<string, unknown>>): string[] {
  const names = Object.keys(factors);
  const valuesOf = (name: string): readonly unknown[] => (chosen === undefined ? (factors[name] ?? []) : [chosen[name]]);
  return names.flatMap((a, index) =>
    names
      .slice(index + 1)
      .flatMap((b) => valuesOf(a).flatMap((valueA) => valuesOf(b).map((valueB) => `${a}=${String(valueA)} ${b}=${String(valueB)}`))),
  );
}

/**
 * Few cases in which every value of each factor meets every value of each other one: of some cases drawn by the seed,
 * the one with the most pairs that have not met is taken, until all have.
 */
export function coveringArray<F extends Factors>(factors: F, seed: number): Case<F>[] {
  const random = new Random(seed, 'covering array');
  const open = new Set(pairsOf(factors));
  const cases: Case<F>[] = [];
  while (open.size > 0) {
    const [wanted] = open;
    const candidates = Array.from({ length: CANDIDATES }, () => drawn(factors, random, wanted ?? ''));
    const gains = candidates.map((candidate) => pairsOf(factors, candidate).filter((pair) => open.has(pair)).length);
    const best = candidates[gains.indexOf(Math.max(...gains))];
    if (best === undefined) break;
    for (const pair of pairsOf(factors, best)) open.delete(pair);
    cases.push(best);
  }
  return cases;
}

/** A case drawn at random that has a pair which is wanted. */
function drawn<F extends Factors>(factors: F, random: Random, wanted: string): Case<F> {
  const parts = wanted.split(' ');
  const entries = Object.entries(factors).map(([name, values]) => {
    const asked = values.find((value) => parts.includes(`${name}=${String(value)}`));
    return [name, asked ?? random.pick(values)] as const;
  });
  return Object.fromEntries(entries) as Case<F>;
}
