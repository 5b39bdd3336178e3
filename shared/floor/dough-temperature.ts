import type { FloorState } from './state.ts';

/** The temperatures that the water's is weighed against, in °C. */
export function countedC({
  flourC,
  roomC,
  prefermentC,
}: {
  readonly flourC: number;
  readonly roomC: number;
  readonly prefermentC?: number | null | undefined;
}): readonly number[] {
  return prefermentC === null || prefermentC === undefined ? [flourC, roomC] : [flourC, roomC, prefermentC];
}

/** How warm a dough comes out of the mixer, in °C, by the rule that its water was reckoned with. */
export function expectedDoughC(temperaturesC: readonly number[], waterC: number, riseK: number): number {
  return (temperaturesC.reduce((sum, celsius) => sum + celsius, 0) + waterC) / (temperaturesC.length + 1) + riseK;
}

/** How cold the house's ice is, in °C. */
export function iceCOf(state: FloorState): number {
  return state.house?.document.water.iceC ?? 0;
}
