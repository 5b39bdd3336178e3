import type { Kitchen } from '../../documents/kitchen.ts';
import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { blockOn, resourceName, type Resource } from '../resources.ts';
import { decksOf } from '../slots.ts';
import type { FloorState } from '../state.ts';
import type { Decision } from './decision.ts';

/** Nobody can have it from the tap on, for so many minutes or until it is freed. Replaces what blocked it before. */
export function decideBlockResource(state: FloorState, command: CommandOf<'blockResource'>, context: CommandContext): Decision {
  const resource = asNamed(command.resource);
  if (!isThere(state, resource)) return refused({ code: 'resourceUnknown', resource: command.resource });
  const atMs = context.tapMs;
  const until = command.minutes === undefined ? {} : { untilMs: atMs + command.minutes * 60_000 };
  return accepted([{ type: 'resourceBlocked', resource, why: command.why, ...until, atMs }]);
}

/** It can be had again. One whose time is over needs no freeing. */
export function decideFreeResource(state: FloorState, command: CommandOf<'freeResource'>, context: CommandContext): Decision {
  if (!isThere(state, command.resource)) return refused({ code: 'resourceUnknown', resource: command.resource });
  const block = blockOn(state, command.resource, context.nowMs);
  if (block === null) return refused({ code: 'notBlocked', resource: command.resource });
  // A tap kept by a phone cannot free it before it was blocked.
  return accepted([{ type: 'resourceFreed', resource: block.resource, atMs: Math.max(block.atMs, context.tapMs) }]);
}

/** A deck is set to another temperature, °C, until it is set again. */
export function decideSetDeck(state: FloorState, command: CommandOf<'setDeck'>, context: CommandContext): Decision {
  const { deckId, temperatureC } = command;
  const deck = state.kitchen === null ? undefined : deckIn(state.kitchen.document, deckId);
  if (deck === undefined) return refused({ code: 'deckUnknown', deckId });
  if ((state.deckC[deckId] ?? deck.temperatureC) === temperatureC) return refused({ code: 'nothingChanges' });
  return accepted([{ type: 'deckSet', deckId, temperatureC, atMs: context.tapMs }]);
}

function isThere(state: FloorState, resource: Resource): boolean {
  return state.kitchen !== null && resourceName(state.kitchen.document, resource) !== null;
}

function deckIn(kitchen: Kitchen, deckId: string): ReturnType<typeof decksOf>[number] | undefined {
  return decksOf(kitchen).find((deck) => deck.id === deckId);
}

/** A bench is a rest place; told as one, it is blocked once and not twice. */
function asNamed(resource: Resource): Resource {
  return resource.kind === 'bench' ? { kind: 'restPlace', id: resource.id } : resource;
}
