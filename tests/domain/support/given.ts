import { expect } from 'vitest';
import type { FloorCommand } from '../../../shared/floor/commands.ts';
import type { FloorEvent } from '../../../shared/floor/events.ts';
import type { Refusal, RefusalCode } from '../../../shared/floor/refusals.ts';
import { Floor, type Given, type Tap } from './floor.ts';

/** What a command says may depend on the floor it is given on: ids are looked up by tag. */
export type CommandOn = (floor: Floor) => FloorCommand;

/** The demo day, with whatever has happened on it: events recorded and commands given by `arrange`. */
export function given(arrange: (floor: Floor) => void = () => {}): Situation {
  const floor = Floor.harbour();
  arrange(floor);
  return new Situation(floor);
}

export class Situation {
  readonly floor: Floor;

  constructor(floor: Floor) {
    this.floor = floor;
  }

  when(command: CommandOn, tap: Tap = {}): Answer {
    return new Answer(this.floor, this.floor.give(command(this.floor), tap));
  }
}

export class Answer {
  readonly floor: Floor;
  private readonly answer: Given;

  constructor(floor: Floor, answer: Given) {
    this.floor = floor;
    this.answer = answer;
  }

  /** The very events, in their order. */
  thenEvents(expected: readonly FloorEvent[]): Floor {
    expect(this.answer.decision).toEqual({ ok: true, value: expected });
    return this.floor;
  }

  /** The types of the events in their order, where their fields are looked at elsewhere. */
  thenTypes(expected: readonly FloorEvent['type'][]): Floor {
    expect(this.answer.decision.ok ? this.answer.decision.value.map((event) => event.type) : this.answer.decision.fault).toEqual(expected);
    return this.floor;
  }

  /** The very refusal, and nothing has changed. */
  thenRefusal<Code extends RefusalCode>(expected: Extract<Refusal, { code: Code }>): Floor {
    expect(this.answer.decision).toEqual({ ok: false, fault: expected });
    return this.floor;
  }
}
