import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { type Step, type Verb } from '../../shared/documents/method.ts';
import { CHECK_BY_HAND, USUAL_CAUTIONS, USUAL_CHECKS } from '../words/method.ts';
import { takenKeys, withStepsAt } from './step-edits.ts';
import { stepKey } from './step-key.ts';
import { usualClaims, usualPlace, usualStation } from './usual-place.ts';
import { USUAL_TIMES } from './usual-times.ts';

/** Among which steps a new one is put in, in which kitchen. */
export interface StepSurroundings {
  readonly kitchen: Kitchen;
  readonly steps: readonly Step[];
  /** Keys that steps of the same way have elsewhere: a product's cannot be its formula's. */
  readonly otherKeys: readonly string[];
}

/** A step as it usually is, at a place in the order: right as it stands, to be put right for the dough. */
export function usualStep(verb: Verb, index: number, { kitchen, steps, otherKeys }: StepSurroundings): Step {
  const { kind, targetMin, earliestMin, latestMin, perPieceMin, lateMin, lostMin } = USUAL_TIMES[verb];
  const isHandled = kind === 'hands' || kind === 'judged';
  const station = isHandled ? usualStation(verb, index, steps, kitchen) : undefined;
  const place = usualPlace(verb, kitchen);
  const check = USUAL_CHECKS[verb] ?? (kind === 'judged' ? CHECK_BY_HAND : undefined);
  const caution = USUAL_CAUTIONS[verb];
  return {
    id: stepKey(verb, takenKeys(steps, otherKeys)),
    verb,
    kind,
    ...given({ station }),
    minutes: { ...given({ earliest: earliestMin }), target: targetMin, ...given({ latest: latestMin }) },
    ...given({ minutesPerPiece: perPieceMin }),
    toleranceMin: { late: lateMin ?? 5, ...given({ lost: lostMin }) },
    ...given({ check, caution }),
    claims: usualClaims(verb, index, steps, kitchen),
    ...given({ place }),
    additions: [],
    ...(kind === 'bake' ? { bake: [{ minutes: targetMin }] } : {}),
  };
}

/** Several usual steps one behind the other. `changes` puts each right before the next one is made. */
export function usualSteps(
  verbs: readonly Verb[],
  index: number,
  surroundings: StepSurroundings,
  changes: Partial<Record<Verb, Partial<Step>>> = {},
): readonly Step[] {
  const added: Step[] = [];
  for (const verb of verbs) {
    const steps = withStepsAt(surroundings.steps, index, added);
    added.push({ ...usualStep(verb, index + added.length, { ...surroundings, steps }), ...changes[verb] });
  }
  return added;
}

type Given<Values> = { [Key in keyof Values]?: Exclude<Values[Key], undefined> };

/** What is there of some values: a document has no key without a value. */
function given<Values extends object>(values: Values): Given<Values> {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Given<Values>;
}
