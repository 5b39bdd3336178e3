import type { Step } from '../../shared/documents/method.ts';

type Phases = NonNullable<Step['bake']>;

/** Minutes are typed to hundredths: sums of them have no other decimals. */
const round = (minutes: number): number => Math.round(minutes * 100) / 100;

/** How long the phases are together, in minutes. NaN while one is half typed. */
export function phasesMin(phases: Phases): number {
  return round(phases.reduce((sum, phase) => sum + phase.minutes, 0));
}

/** A step with other phases: its target is what they are together. */
export function withPhases(step: Step, phases: Phases): Step {
  return { ...step, bake: phases, minutes: { ...step.minutes, target: phasesMin(phases) } };
}

/** A bake with another target: its last phases are made longer or shorter, so that the programme lasts as long. */
export function withBakeTarget(step: Step, targetMin: number): Step {
  const minutes = { ...step.minutes, target: targetMin };
  const phases = step.bake ?? [];
  const sumMin = phasesMin(phases);
  if (phases.length === 0 || !Number.isFinite(targetMin) || !Number.isFinite(sumMin) || targetMin < 0) return { ...step, minutes };
  let leftMin = round(targetMin - sumMin);
  const fitted = phases.toReversed().map((phase, index) => {
    // Longer: all of it in the last phase. Shorter: from the last one on as far as each of them reaches.
    const changed = leftMin > 0 && index > 0 ? phase.minutes : Math.max(0, round(phase.minutes + leftMin));
    leftMin = round(leftMin - (changed - phase.minutes));
    return changed === phase.minutes ? phase : { ...phase, minutes: changed };
  });
  return { ...step, minutes, bake: fitted.toReversed() };
}
