import type { Step, Verb } from '../../shared/documents/method.ts';
import { CHECK_BY_HAND, USUAL_CAUTIONS, USUAL_CHECKS } from '../words/method.ts';
import { USUAL_TIMES } from './usual-times.ts';

/** A step that ends otherwise: a bake gets a programme, other kinds have none; a judged step gets a check. */
export function withKind(step: Step, kind: Step['kind']): Step {
  const { bake, ...others } = step;
  const next: Step = { ...others, kind };
  if (kind === 'bake') return { ...next, bake: bake ?? [{ minutes: step.minutes.target }] };
  if (kind === 'judged' && step.check === undefined) return { ...next, check: USUAL_CHECKS[step.verb] ?? CHECK_BY_HAND };
  return next;
}

/**
 * A step that does something else. What was the usual of the verb before becomes the usual of the new one; what somebody has
 * written stays, and so does the key.
 */
export function withVerb(step: Step, verb: Verb): Step {
  const { caution, check, ...others } = step;
  const kept: Step = { ...others, verb };
  const nextCaution = caution === undefined || caution === USUAL_CAUTIONS[step.verb] ? USUAL_CAUTIONS[verb] : caution;
  const nextCheck = check === undefined || check === USUAL_CHECKS[step.verb] ? USUAL_CHECKS[verb] : check;
  const next: Step = {
    ...kept,
    ...(nextCheck === undefined ? {} : { check: nextCheck }),
    ...(nextCaution === undefined ? {} : { caution: nextCaution }),
  };
  return step.kind === USUAL_TIMES[step.verb].kind || USUAL_TIMES[verb].kind === 'bake' ? withKind(next, USUAL_TIMES[verb].kind) : next;
}
