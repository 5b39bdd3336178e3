import type { LimitWhy } from '../../../shared/floor/holding.ts';
import type { RuleSetName } from '../../../shared/trade/holding-rules.ts';

/** The rule sets by name, as the house chose one. */
export const RULE_SET_NAMES: Readonly<Record<RuleSetName, string>> = {
  'us-food-code': 'FDA Food Code 2022 (US)',
  england: 'SI 2013/2996, schedule 4 (England)',
  australia: 'Food Standards Code 3.2.2 (Australia)',
};

/** Why its limit comes. */
export const LIMIT_WHY: Readonly<Record<LimitWhy, string>> = {
  time: 'time out of the cold or the heat',
  secondSpell: 'out a second time',
  wentBackLate: 'went back too late',
  cooling: 'not cooled in time',
};

/** Food that has to be kept, on its card. */
export const HOLDING = {
  title: 'Holding',
  out: (minutes: string): string => `Out so far: ${minutes}`,
  isIn: { cold: 'in the cold', hot: 'in the heat', cooling: 'cooling', none: 'out of the cold' },
  limit: (clock: string): string => `Use or discard by ${clock}`,
  past: (clock: string): string => `Past its limit since ${clock}: discard it`,
  noLimit: 'No time runs at the moment.',
  backBy: (clock: string): string => `May go back into the cold till ${clock}`,
  decided: (clock: string, reason: string): string => `Decided: may be used till ${clock}. Reason: ${reason}`,
  step: (degrees: string, by: string, then: string): string => `${degrees} by ${by}: ${then}`,
  seen: 'read',
  willPass: (clock: string): string => `expected ${clock}`,
  willNotPass: (clock: string): string => `will not pass, expected ${clock}`,
  never: 'will not pass here',
  advice: 'Not legal advice: the local authority’s rule and your own licensed advice come first. A forecast is no measurement.',
  curve: (last: string, steps: string): string => `Cooling: ${last}. ${steps}`,
  unread: 'not read yet',
  decideTitle: (tag: string): string => `${tag} beyond its limit: why may it be used?`,
  decideReasons: ['Read cold all the time', 'Heated through at once', 'Limit noted wrongly'],
  decideMinutes: 'For so many minutes',
  decideDo: (tag: string): string => `Decide for ${tag}`,
  decideNote: 'For the person responsible alone. Reason, rule and time stay in the record.',
} as const;
