import type { Product } from '../../shared/documents/formula.ts';
import type { Addition, Step } from '../../shared/documents/method.ts';

/** What goes on each piece at a step of a product's way. */
export interface Topping {
  readonly stepIndex: number;
  readonly additionIndex: number;
  readonly addition: Addition;
}

/** Everything that goes on a piece, in the order of the way. */
export function toppingsOf(way: readonly Step[]): readonly Topping[] {
  return way.flatMap((step, stepIndex) =>
    step.additions.flatMap((addition, additionIndex) => (addition.gPerPiece === undefined ? [] : [{ stepIndex, additionIndex, addition }])),
  );
}

/** A way in which a topping is another one; null takes it away. */
export function withTopping(way: readonly Step[], topping: Topping, addition: Addition | null): readonly Step[] {
  return way.map((step, stepIndex) =>
    stepIndex === topping.stepIndex
      ? {
          ...step,
          additions: step.additions.flatMap((other, index) =>
            index !== topping.additionIndex ? [other] : addition === null ? [] : [addition],
          ),
        }
      : step,
  );
}

/** A way in which a topping goes on at the step at another index. */
export function withToppingAt(way: readonly Step[], topping: Topping, stepIndex: number): readonly Step[] {
  return stepIndex === topping.stepIndex ? way : withToppingAdded(withTopping(way, topping, null), stepIndex, topping.addition);
}

/** A way with a topping more, at the step at an index. */
export function withToppingAdded(way: readonly Step[], stepIndex: number, addition: Addition): readonly Step[] {
  return way.map((step, index) => (index === stepIndex ? { ...step, additions: [...step.additions, addition] } : step));
}

/** Where a topping usually goes on: at the topping, seeding or washing, else before the oven, else at the last step. -1 in an empty way. */
export function usualToppingStep(way: Product['way']): number {
  const finishing = way.findIndex(({ verb }) => verb === 'top' || verb === 'seed' || verb === 'wash' || verb === 'glaze');
  if (finishing !== -1) return finishing;
  const loading = way.findIndex(({ verb }) => verb === 'load');
  return loading > 0 ? loading - 1 : way.length - 1;
}
