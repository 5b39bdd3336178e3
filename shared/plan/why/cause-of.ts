import type { BuiltDay } from '../build/built-day.ts';
import type { DaySolution } from '../day/problem.ts';
import type { DayNetwork } from './day-network.ts';
import type { Cause } from './reason.ts';
import { placeOf, type FoundTrouble } from './troubles.ts';
import { whatHoldsIn } from './what-holds.ts';

/** What is behind a trouble, in the things of the kitchen; null where nothing that has a name is. */
export function causeOf(built: BuiltDay, solution: DaySolution, network: DayNetwork, { activity, trouble }: FoundTrouble): Cause | null {
  const holding = whatHoldsIn(network, activity, trouble.byMin * 60);
  const step = holding === null ? undefined : built.steps[holding.at];
  if (holding === null || step === undefined) return null;
  const at = placeOf(step);
  const startMs = built.originMs + (solution.startsS[holding.at] ?? 0) * 1000;
  switch (holding.kind) {
    case 'busy': {
      const resource = built.problem.resources[holding.resource];
      const by = built.steps[holding.by];
      if (resource === undefined || by === undefined) return null;
      const { kind, id } = resource;
      return { kind: 'busy', at, resource: { kind, id }, by: placeOf(by), untilMs: built.originMs + holding.untilS * 1000 };
    }
    case 'closed': {
      const resource = built.problem.resources[holding.resource];
      if (resource === undefined) return null;
      const { kind, id } = resource;
      return { kind: 'closed', at, resource: { kind, id }, untilMs: built.originMs + holding.untilS * 1000 };
    }
    case 'released':
      return { kind: 'tooShort', at, beginsMs: startMs };
    case 'pinned':
      return { kind: 'pinned', at, atMs: startMs };
    case 'begun':
      return { kind: 'begun', at };
  }
}

/** What two troubles have in common if they have one cause; null for a cause that is nobody else's. */
export function causeKey(cause: Cause | null): string | null {
  switch (cause?.kind) {
    case undefined:
      return null;
    case 'busy':
    case 'closed':
      return `${cause.kind} ${cause.resource.kind} ${cause.resource.id}`;
    case 'tooShort':
    case 'pinned':
    case 'begun':
      return `${cause.kind} ${cause.at.batchKey}`;
  }
}
