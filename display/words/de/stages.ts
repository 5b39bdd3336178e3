import type { Stage } from '../../../shared/floor/stage.ts';

/** What stands after the count in a group row: "2 auf Gare". */
export const STAGES: Readonly<Record<Stage, string>> = {
  planned: 'geplant',
  mixing: 'im Kessel',
  bulk: 'Stockgare',
  cold: 'kalt',
  makeUp: 'am Tisch',
  proving: 'auf Gare',
  oven: 'im Ofen',
  cooling: 'auskühlen',
  prep: 'Vorarbeit',
};

/** A group row that holds several stages. */
export const OTHER_STAGES = 'andere';
