import type { LimitWhy } from '../../../shared/floor/holding.ts';
import type { RuleSetName } from '../../../shared/trade/holding-rules.ts';

/** Die Regelwerke mit ihren Namen, wie der Betrieb eines gewählt hat. */
export const RULE_SET_NAMES: Readonly<Record<RuleSetName, string>> = {
  'us-food-code': 'FDA Food Code 2022 (USA)',
  england: 'SI 2013/2996, Anhang 4 (England)',
  australia: 'Food Standards Code 3.2.2 (Australien)',
};

/** Warum die Frist endet. */
export const LIMIT_WHY: Readonly<Record<LimitWhy, string>> = {
  time: 'Zeit außerhalb von Kälte oder Hitze',
  secondSpell: 'ein zweites Mal draußen',
  wentBackLate: 'zu spät zurückgestellt',
  cooling: 'nicht rechtzeitig abgekühlt',
};

/** Was kalt oder heiß bleiben muss, auf seiner Karte. */
export const HOLDING = {
  title: 'Aufbewahrung',
  out: (minutes: string): string => `Bisher draußen: ${minutes}`,
  isIn: { cold: 'in der Kälte', hot: 'in der Hitze', cooling: 'kühlt ab', none: 'nicht in der Kälte' },
  limit: (clock: string): string => `Verwenden oder wegwerfen bis ${clock}`,
  past: (clock: string): string => `Über der Frist seit ${clock}: wegwerfen`,
  noLimit: 'Im Augenblick läuft keine Zeit.',
  backBy: (clock: string): string => `Darf bis ${clock} zurück in die Kälte`,
  decided: (clock: string, reason: string): string => `Entschieden: darf bis ${clock} verwendet werden. Grund: ${reason}`,
  step: (degrees: string, by: string, then: string): string => `${degrees} bis ${by}: ${then}`,
  seen: 'gemessen',
  willPass: (clock: string): string => `erwartet ${clock}`,
  willNotPass: (clock: string): string => `reicht nicht, erwartet ${clock}`,
  never: 'reicht hier nicht',
  advice:
    'Keine Rechtsberatung: die Regel der örtlichen Behörde und der Rat der eigenen Fachleute gehen vor. Eine Vorhersage ist keine Messung.',
  curve: (last: string, steps: string): string => `Abkühlen: ${last}. ${steps}`,
  unread: 'noch nicht gemessen',
  decideTitle: (tag: string): string => `${tag} über der Frist: warum darf es verwendet werden?`,
  decideReasons: ['Immer kalt gemessen', 'Gleich durcherhitzt', 'Frist falsch notiert'],
  decideMinutes: 'Für so viele Minuten',
  decideDo: (tag: string): string => `Für ${tag} entscheiden`,
  decideNote: 'Nur für die verantwortliche Person. Grund, Regel und Zeit bleiben im Protokoll.',
} as const;
