import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { isSameLesson } from '../left-lessons.ts';
import { versionKey, type FloorState } from '../state.ts';
import type { Decision } from './decision.ts';

/** What was found of a step's minutes is left as it is: the document says so much knowingly, until something else is found. */
export function decideLeaveLesson(state: FloorState, command: CommandOf<'leaveLesson'>, context: CommandContext): Decision {
  const { subject, stepId, assumedMin, foundMin } = command;
  const isFormula = subject.kind === 'formula';
  const version = (isFormula ? state.formulaVersions : state.productVersions)[subject.id];
  if (version === undefined) return refused({ code: 'documentMissing', kind: subject.kind, id: subject.id });
  const key = versionKey(subject.id, version);
  const way = isFormula ? state.formulas[key]?.method : state.products[key]?.way;
  if (way?.find(({ id }) => id === stepId)?.minutes.target !== assumedMin) return refused({ code: 'documentChanged', version });
  const isKnown = state.leftLessons.some(
    (left) => isSameLesson(left, command) && left.assumedMin === assumedMin && left.foundMin === foundMin,
  );
  if (isKnown) return refused({ code: 'nothingChanges' });
  return accepted([{ type: 'lessonLeft', subject, stepId, assumedMin, foundMin, atMs: context.tapMs }]);
}
