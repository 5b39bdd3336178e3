import type { EventOf } from '../../shared/floor/events.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { clockText } from '../parts/clock-text.ts';
import { blockedWords } from '../words/wall.ts';

type Resource = EventOf<'resourceBlocked'>['resource'];

/** Something that cannot be used at an instant, in words, and until when where somebody said. */
export interface Block {
  readonly resource: Resource;
  readonly why: EventOf<'resourceBlocked'>['why'];
  /** "cleaning till 05:10" */
  readonly words: string;
  readonly untilMs: number | null;
}

/** What of one kind cannot be used at an instant. */
export function blocksOf(state: FloorState, kind: Resource['kind'], nowMs: number): readonly Block[] {
  const zone = state.house?.document.zone ?? 'UTC';
  return state.blocked
    .filter(({ resource, untilMs }) => resource.kind === kind && (untilMs === undefined || untilMs > nowMs))
    .map(({ resource, why, untilMs }) => ({
      resource,
      why,
      words: blockedWords(why, untilMs === undefined ? null : clockText(untilMs, zone)),
      untilMs: untilMs ?? null,
    }));
}

/**
 * The mixers that cannot be used, one after another: "Spiral cleaning till 05:10". Empty where all can. `fitName` may
 * shorten a name, so that what follows is not lost.
 */
export function blockedMixers(state: FloorState, nowMs: number, fitName: (name: string) => string = (name) => name): readonly string[] {
  const mixers = state.kitchen?.document.mixers ?? [];
  return blocksOf(state, 'mixer', nowMs).map(
    ({ resource, words }) => `${fitName(mixers.find((mixer) => mixer.id === resource.id)?.name ?? resource.id)} ${words}`,
  );
}
