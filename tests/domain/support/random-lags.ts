import type { Arc, Instance } from '../../../shared/plan/core/instance.ts';
import { Random } from '../../simulation/support/random.ts';
import { randomInstance, type Shape } from './random-instance.ts';

/** How an instance of lags differs from one of plain precedence. */
export interface LagShape extends Shape {
  /** How many maximum lags it has. */
  readonly maximums: number;
  /** The most that a maximum lag gives beyond the activity's duration. */
  readonly slack: number;
}

/**
 * A random instance whose arcs ask for less or more than the duration, and back from where some lead, maximum lags. Some have no
 * schedule. The same seed draws the same one.
 */
export function randomLags(seed: number, shape: LagShape): Instance {
  const random = new Random(seed, 'lags');
  const plain = randomInstance(seed, shape);
  const last = plain.durations.length - 1;
  const arcs: Arc[] = plain.arcs.map(({ from, to, lag }) =>
    from === 0 || to === last ? { from, to, lag } : { from, to, lag: random.whole(0, lag + 2) },
  );
  for (let count = 0; count < shape.maximums; count += 1) {
    const [one, other] = [random.whole(1, last - 1), random.whole(1, last - 1)];
    if (one !== other) arcs.push({ from: other, to: one, lag: -(plain.durations[one] ?? 0) - random.whole(0, shape.slack) });
  }
  return { ...plain, arcs };
}
