import { assert, unreachable } from '../result.ts';
import type { RuleSet, TimeRule } from './holding-rules.ts';

/** What keeps food while it stands somewhere: the cold, the heat, a cooling that has its own rule, or nothing. */
export type Control = 'cold' | 'hot' | 'cooling' | 'none';

/** Food that stood somewhere, in minutes; `toMin` null for where it stands now. */
export interface HoldingSpell {
  readonly fromMin: number;
  readonly toMin: number | null;
  readonly control: Control;
  /** The warmest that the food became meanwhile, in °C; null where nobody measured. */
  readonly warmestC: number | null;
}

/** Why food is past its limit: time, a second spell where only one is allowed, or gone back under control later than it may. */
export type PastLimit = 'time' | 'secondSpell' | 'wentBackLate';

/** How long food has been out of control by a rule set. Not legal advice: the local authority's rule comes first. */
export interface HoldingTime {
  /** When it first left control; null where it has not. */
  readonly outSinceMin: number | null;
  /** Minutes that count until now. */
  readonly outMin: number;
  /** When its limit is, if it stays where it is; null while no minutes run. */
  readonly discardAtMin: number | null;
  /** Until when it may go back under control; null where it is there, or may not go back. */
  readonly backByMin: number | null;
  readonly pastLimit: PastLimit | null;
  readonly clause: string;
}

/** What keeps food at a temperature by a rule set: where it is neither cold nor hot enough, nothing does. */
export function controlAtC(rules: RuleSet, foodC: number): Extract<Control, 'cold' | 'hot' | 'none'> {
  if (foodC <= rules.cold.mostC) return 'cold';
  return foodC >= rules.hot.leastC ? 'hot' : 'none';
}

/** Time out of control, from where the food stood (spells in the order of time, without gaps), until `nowMin`. */
export function holdingTime(rules: RuleSet, spells: readonly HoldingSpell[], nowMin: number): HoldingTime {
  const begun = spells.filter(({ fromMin }) => fromMin <= nowMin);
  const first = begun.find(({ control }) => control === 'none');
  const rule = ruleFor(rules, begun);
  const resting = { outSinceMin: null, outMin: 0, discardAtMin: null, backByMin: null, pastLimit: null, clause: rule.clause };
  if (first === undefined) return resting;
  switch (rule.counting) {
    case 'fromFirst':
      return fromFirst(rule, begun, first.fromMin, nowMin);
    case 'once':
      return once(rule, outings(begun, nowMin), nowMin);
    case 'sum':
      return summed(rule, outings(begun, nowMin), nowMin);
    default:
      return unreachable(rule.counting);
  }
}

/** A time out of control from end to end, over however many places. */
interface Outing {
  readonly fromMin: number;
  readonly lastedMin: number;
  /** Whether it is back under control. */
  readonly isBack: boolean;
}

function outings(spells: readonly HoldingSpell[], nowMin: number): readonly Outing[] {
  const found: Outing[] = [];
  let isOut = false;
  for (const { fromMin, toMin, control } of spells) {
    const last = found[found.length - 1];
    const lastedMin = Math.min(toMin ?? nowMin, nowMin) - fromMin;
    if (control !== 'none') {
      if (isOut && last !== undefined) found[found.length - 1] = { ...last, isBack: true };
    } else if (isOut && last !== undefined) found[found.length - 1] = { ...last, lastedMin: last.lastedMin + lastedMin };
    else found.push({ fromMin, lastedMin, isBack: false });
    isOut = control === 'none';
  }
  return found;
}

/** The rule for what it came out of; where it was never under control, the one that allows least. */
function ruleFor({ outOfCold, outOfHot }: RuleSet, spells: readonly HoldingSpell[]): TimeRule {
  const firstOut = spells.findIndex(({ control }) => control === 'none');
  const before = spells.slice(0, firstOut === -1 ? undefined : firstOut).findLast(({ control }) => control === 'cold' || control === 'hot');
  if (before?.control === 'cold') return outOfCold;
  if (before?.control === 'hot') return outOfHot;
  const { neverAbove: _needsCold, ...cold } = outOfCold;
  return cold.discardMin < outOfHot.discardMin ? cold : outOfHot;
}

function fromFirst(rule: TimeRule, spells: readonly HoldingSpell[], sinceMin: number, nowMin: number): HoldingTime {
  const discardAtMin = sinceMin + allowedMin(rule, spells, sinceMin);
  return {
    outSinceMin: sinceMin,
    outMin: nowMin - sinceMin,
    discardAtMin,
    backByMin: null,
    pastLimit: nowMin >= discardAtMin ? 'time' : null,
    clause: rule.clause,
  };
}

/** The longer time ends when the food becomes too warm for it, or nobody knows how warm it was, but not before the shorter one does. */
function allowedMin({ discardMin, neverAbove }: TimeRule, spells: readonly HoldingSpell[], sinceMin: number): number {
  if (neverAbove === undefined) return discardMin;
  const isTooWarm = ({ warmestC }: HoldingSpell): boolean => warmestC === null || warmestC > neverAbove.warmestC;
  const tooWarm = spells.find((spell) => spell.fromMin >= sinceMin && spell.control === 'none' && isTooWarm(spell));
  if (tooWarm === undefined) return neverAbove.discardMin;
  return Math.min(neverAbove.discardMin, Math.max(discardMin, tooWarm.fromMin - sinceMin));
}

function once(rule: TimeRule, [first, second]: readonly Outing[], nowMin: number): HoldingTime {
  assert(first !== undefined, 'food that is out has an outing');
  const limitMin = first.isBack ? null : first.fromMin + rule.discardMin;
  const isSpent = first.lastedMin >= rule.discardMin;
  return {
    outSinceMin: first.fromMin,
    outMin: first.lastedMin,
    // A second outing is one too many from its first minute on.
    discardAtMin: second?.fromMin ?? limitMin,
    backByMin: limitMin !== null && nowMin < limitMin ? limitMin : null,
    pastLimit: isSpent ? 'time' : second === undefined ? null : 'secondSpell',
    clause: rule.clause,
  };
}

function summed({ discardMin, backWithinMin = 0, clause }: TimeRule, out: readonly Outing[], nowMin: number): HoldingTime {
  const outMin = sumOfMin(out);
  const isOut = out.some(({ isBack }) => !isBack);
  const isBackLate = sumOfMin(out.filter(({ isBack }) => isBack)) > backWithinMin;
  return {
    outSinceMin: out[0]?.fromMin ?? null,
    outMin,
    discardAtMin: isOut ? nowMin + discardMin - outMin : null,
    backByMin: isOut && outMin <= backWithinMin ? nowMin + backWithinMin - outMin : null,
    pastLimit: outMin >= discardMin ? 'time' : isBackLate ? 'wentBackLate' : null,
    clause,
  };
}

function sumOfMin(out: readonly Outing[]): number {
  return out.reduce((sum, { lastedMin }) => sum + lastedMin, 0);
}
