import type { Stage } from '../../../shared/floor/stage.ts';

/** What stands after the count in a group row: "2 en apprêt". */
export const STAGES: Readonly<Record<Stage, string>> = {
  planned: 'à lancer',
  mixing: 'au pétrin',
  bulk: 'pointage',
  cold: 'au froid',
  makeUp: 'façonnage',
  proving: 'en apprêt',
  oven: 'au four',
  cooling: 'ressuage',
  prep: 'prépa',
};

/** A group row that holds several stages. */
export const OTHER_STAGES = 'autres';
