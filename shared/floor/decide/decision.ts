import type { Result } from '../../result.ts';
import type { FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';

/** What a decider answers: the facts that follow from a command, or why there are none. */
export type Decision = Result<readonly FloorEvent[], Refusal>;
