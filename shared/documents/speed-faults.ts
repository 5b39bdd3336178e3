import type { BookLookup } from './book-lookup.ts';
import type { Fault } from './kitchen-faults.ts';
import type { Step } from './method.ts';

/** Steps at second speed for which none of the mixers that they may have has a second speed. */
export function checkSpeeds(steps: readonly Step[], path: string, { speeds }: BookLookup, fault: Fault): void {
  steps.forEach((step, index) => {
    if (step.verb !== 'secondSpeed') return;
    const claims = mixerClaimsAt(steps, index);
    if (claims.length === 0) return;
    const ids = claims.flatMap((claim) => (claim.ids.length === 0 ? [...speeds.keys()] : claim.ids)).filter((id) => speeds.has(id));
    if (ids.length > 0 && ids.every((id) => speeds.get(id) === 1))
      fault(`${path}[${index}].verb`, { code: 'secondSpeedMissing', mixers: [...new Set(ids)] });
  });
}

/** What a step has of mixers: its own claims, or those of earlier steps that last until it or beyond. */
function mixerClaimsAt(steps: readonly Step[], index: number): Step['claims'] {
  return steps.slice(0, index + 1).flatMap((step, at) =>
    step.claims.filter((claim) => {
      if (claim.kind !== 'mixer') return false;
      return at === index || (claim.until !== undefined && steps.findIndex((other) => other.id === claim.until) >= index);
    }),
  );
}
