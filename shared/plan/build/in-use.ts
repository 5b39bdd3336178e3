import type { Hold, PlanResource } from '../day/problem.ts';

type Taken = Pick<Hold, 'on' | 'states'>;

/**
 * What is in use already. Where there is more of it than there should be (a shelf over its room, tins taken knowingly, what
 * lies in an oven that is out of order), it is where it is: no plan can change that, and the others must not wait for it.
 */
export class InUse {
  private readonly resources: readonly PlanResource[];
  private readonly nowS: number;
  private readonly amounts = new Map<number, number>();
  private readonly states = new Map<number, number>();

  constructor(resources: readonly PlanResource[], nowS: number) {
    this.resources = resources;
    this.nowS = nowS;
  }

  /** As much of what something has taken as the resource has, and its state unless another was there before it. */
  atMost({ on, states }: Taken): Taken {
    if ('choice' in on) return { on, states };
    const { resource } = on;
    const left = this.capacityNow(resource) - (this.amounts.get(resource) ?? 0);
    const amount = Math.max(0, Math.min(on.amount, left));
    this.amounts.set(resource, (this.amounts.get(resource) ?? 0) + amount);
    const state = states?.[0];
    if (state === undefined || amount === 0) return { on: { resource, amount }, states };
    const before = this.states.get(resource) ?? state;
    this.states.set(resource, before);
    return { on: { resource, amount }, states: before === state ? states : null };
  }

  private capacityNow(index: number): number {
    const resource = this.resources[index];
    const last = resource?.calendar?.findLast(({ fromS }) => fromS <= this.nowS);
    return last?.capacity ?? resource?.capacity ?? 0;
  }
}
