import { Random } from '../../simulation/support/random.ts';

/** A number of the standard normal distribution, by Box and Muller's transform. */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random.share())) * Math.cos(2 * Math.PI * random.share());
}

/** Numbers of the standard normal distribution, the same for the same seed. */
export function normals(seed: number): () => number {
  const random = new Random(seed, 'normals');
  return () => normal(random);
}
