import type { LimitWhy } from '../../../shared/floor/holding.ts';
import type { RuleSetName } from '../../../shared/trade/holding-rules.ts';

/** Les règlements par leur nom, tel que la maison en a choisi un. */
export const RULE_SET_NAMES: Readonly<Record<RuleSetName, string>> = {
  'us-food-code': 'FDA Food Code 2022 (États-Unis)',
  england: 'SI 2013/2996, annexe 4 (Angleterre)',
  australia: 'Food Standards Code 3.2.2 (Australie)',
};

/** Pourquoi la limite vient. */
export const LIMIT_WHY: Readonly<Record<LimitWhy, string>> = {
  time: 'temps hors du froid ou du chaud',
  secondSpell: 'sorti une seconde fois',
  wentBackLate: 'remis trop tard',
  cooling: 'pas refroidi à temps',
};

/** Ce qui se garde au froid ou au chaud, sur sa carte. */
export const HOLDING = {
  title: 'Conservation',
  out: (minutes: string): string => `Dehors jusqu’ici\u00a0: ${minutes}`,
  isIn: { cold: 'au froid', hot: 'au chaud', cooling: 'refroidit', none: 'hors du froid' },
  limit: (clock: string): string => `À utiliser ou à jeter avant ${clock}`,
  past: (clock: string): string => `Limite dépassée depuis ${clock}\u00a0: à jeter`,
  noLimit: 'Aucun temps ne court en ce moment.',
  backBy: (clock: string): string => `Peut retourner au froid jusqu’à ${clock}`,
  decided: (clock: string, reason: string): string => `Décidé\u00a0: utilisable jusqu’à ${clock}. Raison\u00a0: ${reason}`,
  step: (degrees: string, by: string, then: string): string => `${degrees} avant ${by}\u00a0: ${then}`,
  seen: 'mesuré',
  willPass: (clock: string): string => `prévu ${clock}`,
  willNotPass: (clock: string): string => `ne passera pas, prévu ${clock}`,
  never: 'ne passera pas ici',
  advice:
    'Pas un avis juridique\u00a0: la règle des autorités locales et vos propres conseils agréés passent avant. Une prévision n’est pas une mesure.',
  curve: (last: string, steps: string): string => `Refroidissement\u00a0: ${last}. ${steps}`,
  unread: 'pas encore mesuré',
  decideTitle: (tag: string): string => `${tag} au-delà de la limite\u00a0: pourquoi l’utiliser\u202f?`,
  decideReasons: ['Toujours mesuré froid', 'Chauffé à cœur aussitôt', 'Limite mal notée'],
  decideMinutes: 'Pour tant de minutes',
  decideDo: (tag: string): string => `Décider pour ${tag}`,
  decideNote: 'Pour la personne responsable seule. Raison, règle et heure restent dans le registre.',
} as const;
