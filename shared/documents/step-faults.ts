import type { BookLookup } from './book-lookup.ts';
import type { Formula } from './formula.ts';
import { uniqueIds, type Fault } from './kitchen-faults.ts';
import type { Step } from './method.ts';
import { checkSpeeds } from './speed-faults.ts';
import { checkTaken } from './taken.ts';
import { areCardinals } from '../trade/rate-model.ts';

/**
 * What is impossible in the steps of a method or of a product's way. `formula` is the one that they are steps of; null
 * where a product names one that is not there.
 */
export function checkSteps(steps: readonly Step[], formula: Formula | null, path: string, lookup: BookLookup, fault: Fault): void {
  uniqueIds(path, steps, fault);
  const earlier = new Set<string>();
  steps.forEach((step, index) => {
    const at = `${path}[${index}]`;
    checkPlaces(step, at, lookup, fault);
    checkAdditions(step, at, formula, lookup, fault);
    checkClaims(step, at, steps, earlier, lookup, fault);
    checkLags(step, at, earlier, fault);
    checkRipening(step, at, fault);
    if (step.yieldPct !== undefined && formula?.kind !== 'prep') fault(`${at}.yieldPct`, { code: 'yieldOfOther' });
    earlier.add(step.id);
  });
  checkSpeeds(steps, path, lookup, fault);
  if (steps.at(-1)?.kind === 'bake') fault(`${path}[${steps.length - 1}].kind`, { code: 'bakeLast' });
}

function checkPlaces(step: Step, at: string, lookup: BookLookup, fault: Fault): void {
  if (step.station !== undefined && !lookup.stationIds.has(step.station))
    fault(`${at}.station`, { code: 'stationUnknown', id: step.station });
  if (step.place !== undefined && !lookup.placeIds.has(step.place)) fault(`${at}.place`, { code: 'placeUnknown', id: step.place });
}

function checkAdditions(step: Step, at: string, formula: Formula | null, lookup: BookLookup, fault: Fault): void {
  step.additions.forEach((addition, index) => {
    const path = `${at}.additions[${index}]`;
    if (addition.item !== undefined && !lookup.ingredientIds.has(addition.item))
      fault(`${path}.item`, { code: 'ingredientUnknown', id: addition.item });
    if (addition.formula === undefined || formula === null) return;
    checkTaken(addition.formula, `${path}.formula`, formula.id, lookup, fault);
    const isWritten = formula.parts.some((part) => part.items.some((line) => 'formula' in line && line.formula === addition.formula));
    if (addition.pct === undefined && addition.gPerPiece === undefined && !isWritten)
      fault(`${path}.formula`, { code: 'amountUnwritten', formula: formula.id, id: addition.formula });
  });
}

function checkClaims(step: Step, at: string, steps: readonly Step[], earlier: ReadonlySet<string>, lookup: BookLookup, fault: Fault): void {
  step.claims.forEach((claim, claimIndex) => {
    const path = `${at}.claims[${claimIndex}]`;
    claim.ids.forEach((id, idIndex) => {
      if (!lookup.claimIds[claim.kind].has(id)) fault(`${path}.ids[${idIndex}]`, { code: 'claimUnknown', kind: claim.kind, id });
    });
    if (claim.kind === 'vessel' && claim.ids.length === 0) fault(`${path}.ids`, { code: 'vesselsUnnamed' });
    const { until } = claim;
    if (until === undefined) return;
    if (!steps.some((other) => other.id === until)) fault(`${path}.until`, { code: 'stepUnknown', id: until });
    else if (earlier.has(until)) fault(`${path}.until`, { code: 'untilBefore', id: until });
  });
}

function checkLags(step: Step, at: string, earlier: ReadonlySet<string>, fault: Fault): void {
  (step.after ?? []).forEach(({ step: id, earliestMin, latestMin }, index) => {
    if (!earlier.has(id)) fault(`${at}.after[${index}].step`, { code: 'stepNotBefore', id });
    if (latestMin !== undefined && latestMin < earliestMin)
      fault(`${at}.after[${index}].latestMin`, { code: 'lagOrder', earliestMin, latestMin });
  });
}

/** The cardinal model of growth has its three temperatures in their order, the best in the upper half. */
function checkRipening({ ripening }: Step, at: string, fault: Fault): void {
  if (ripening?.model !== 'cardinal') return;
  if (!areCardinals(ripening)) fault(`${at}.ripening.optC`, { code: 'ripeningOrder' });
}
