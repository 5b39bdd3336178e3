/** Sets of rules for holding and cooling, by the names under which a house chooses one. */
export type RuleSetName = 'us-food-code' | 'england' | 'australia';

/** A figure and where it stands. */
export interface Ruled {
  readonly clause: string;
}

/** One step of cooling: at or below `toC` so many minutes after the food passed the rule's upper temperature. */
export interface CoolingRuleStep extends Ruled {
  readonly toC: number;
  readonly withinMin: number;
}

export interface CoolingRule {
  /** From this down the minutes count, in °C. */
  readonly fromC: number;
  readonly steps: readonly CoolingRuleStep[];
}

/**
 * How time out of control counts. fromFirst: from when the food first left it, whatever came after; once: a single spell, and a second is one
 * too many; sum: all spells together.
 */
export type Counting = 'fromFirst' | 'once' | 'sum';

/** How long food may be out of control, from when it came out of the cold, or out of the heat. */
export interface TimeRule extends Ruled {
  readonly counting: Counting;
  /** At the latest then it is used or discarded. */
  readonly discardMin: number;
  /** A longer time for food that came out of the cold and was never above a temperature. */
  readonly neverAbove?: Ruled & { readonly warmestC: number; readonly discardMin: number };
  /** Up to then it may go back under control; missing where it may not. */
  readonly backWithinMin?: number;
}

/** What food with raw egg in it is cooked to: a core temperature, held so many seconds. */
export interface CookingRule extends Ruled {
  readonly coreC: number;
  readonly heldSeconds: number;
  /** Only for what is served at once, made to order. */
  readonly forImmediateService: boolean;
}

/**
 * A set of rules as figures, each with its clause. Not legal advice: the local authority's rule comes first.
 */
export interface RuleSet {
  readonly name: RuleSetName;
  readonly source: string;
  /** Cold food is kept at or below this. */
  readonly cold: Ruled & { readonly mostC: number };
  /** Hot food is kept at or above this. */
  readonly hot: Ruled & { readonly leastC: number };
  readonly outOfCold: TimeRule;
  readonly outOfHot: TimeRule;
  /** Null where the rule says no figures: as quickly as possible. */
  readonly cooling: CoolingRule | null;
  /** Mixtures with raw egg; none where the rule has no figure. */
  readonly rawEgg: readonly CookingRule[];
}

const US_TIME: TimeRule = { counting: 'fromFirst', discardMin: 240, clause: '3-501.19(B)' };
const AUSTRALIA_TIME: TimeRule = {
  counting: 'sum',
  discardMin: 240,
  backWithinMin: 120,
  clause: '3.2.2 clause 25, two-hour/four-hour rule',
};

/**
 * The sets. US: FDA Food Code 2022 (its wording read in states' adoptions of it). England: SI 2013/2996, schedule 4 (paragraph 2 read; 5 to 7 read
 * in the like-numbered ones of England 2005/2059, Wales 2006/31 and Northern Ireland 2006/3). Australia: Food Standards Code 3.2.2 (clause 7(3) read as
 * quoted; the two-hour/four-hour rule as state guidance gives it, its clause from memory).
 */
export const RULE_SETS: Readonly<Record<RuleSetName, RuleSet>> = {
  'us-food-code': {
    name: 'us-food-code',
    source: 'FDA Food Code 2022',
    cold: { mostC: 5, clause: '3-501.16(A)(2)' },
    hot: { leastC: 57, clause: '3-501.16(A)(1)' },
    outOfCold: { ...US_TIME, neverAbove: { warmestC: 21, discardMin: 360, clause: '3-501.19(C)' } },
    outOfHot: US_TIME,
    cooling: {
      fromC: 57,
      steps: [
        { toC: 21, withinMin: 120, clause: '3-501.14(A)(1)' },
        { toC: 5, withinMin: 360, clause: '3-501.14(A)(2)' },
      ],
    },
    rawEgg: [
      { coreC: 68, heldSeconds: 17, forImmediateService: false, clause: '3-401.11(A)(2)' },
      { coreC: 63, heldSeconds: 15, forImmediateService: true, clause: '3-401.11(A)(1)(a)' },
    ],
  },
  england: {
    name: 'england',
    source: 'SI 2013/2996, schedule 4',
    cold: { mostC: 8, clause: 'paragraph 2(1)' },
    hot: { leastC: 63, clause: 'paragraph 6' },
    outOfCold: { counting: 'once', discardMin: 240, clause: 'paragraph 5(1)' },
    outOfHot: { counting: 'once', discardMin: 120, clause: 'paragraph 7(2)' },
    cooling: null,
    rawEgg: [],
  },
  australia: {
    name: 'australia',
    source: 'FSANZ Food Standards Code, standard 3.2.2',
    cold: { mostC: 5, clause: '3.2.2 clause 6(2)' },
    hot: { leastC: 60, clause: '3.2.2 clause 6(2)' },
    outOfCold: AUSTRALIA_TIME,
    outOfHot: AUSTRALIA_TIME,
    cooling: {
      fromC: 60,
      steps: [
        { toC: 21, withinMin: 120, clause: '3.2.2 clause 7(3)(a)' },
        // "Within a further four hours": six in all, as its guidance reckons.
        { toC: 5, withinMin: 360, clause: '3.2.2 clause 7(3)(b)' },
      ],
    },
    rawEgg: [],
  },
};
