import type { EventOf } from './events.ts';
import type { LeftLesson } from './state.ts';

/** What is remembered of lessons that were left, the newest; the journal has them all. */
const LEFT_KEPT = 200;

/** Whether two are about the same step of the same document. */
export function isSameLesson(a: Pick<LeftLesson, 'subject' | 'stepId'>, b: Pick<LeftLesson, 'subject' | 'stepId'>): boolean {
  return a.subject.kind === b.subject.kind && a.subject.id === b.subject.id && a.stepId === b.stepId;
}

/** With one more that was left; of each step the last word counts. */
export function withLeft(all: readonly LeftLesson[], { type: _type, ...left }: EventOf<'lessonLeft'>): readonly LeftLesson[] {
  return [...all.filter((other) => !isSameLesson(other, left)), left].slice(-LEFT_KEPT);
}
