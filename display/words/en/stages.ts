import type { Stage } from '../../../shared/floor/stage.ts';

/** What stands after the count in a group row: "2 proving". */
export const STAGES: Readonly<Record<Stage, string>> = {
  planned: 'to start',
  mixing: 'mixing',
  bulk: 'in bulk',
  cold: 'cold',
  makeUp: 'make-up',
  proving: 'proving',
  oven: 'in the oven',
  cooling: 'cooling',
  prep: 'prep',
};

/** A group row that holds several stages. */
export const OTHER_STAGES = 'others';
