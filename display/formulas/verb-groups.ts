import { verbSchema, type Verb } from '../../shared/documents/method.ts';
import type { VerbGroup } from '../words/method.ts';

/** To which part of the work a verb belongs. */
export const GROUP_OF: Readonly<Record<Verb, VerbGroup>> = {
  weigh: 'mixing',
  feed: 'mixing',
  ripen: 'rests',
  add: 'mixing',
  firstSpeed: 'mixing',
  secondSpeed: 'mixing',
  stand: 'mixing',
  turnOut: 'mixing',
  bulk: 'rests',
  fold: 'makeUp',
  divide: 'makeUp',
  scale: 'makeUp',
  round: 'makeUp',
  benchRest: 'rests',
  shape: 'makeUp',
  tin: 'makeUp',
  fill: 'makeUp',
  lockIn: 'makeUp',
  sheet: 'makeUp',
  turn: 'makeUp',
  chill: 'rests',
  prove: 'rests',
  retard: 'rests',
  temper: 'rests',
  top: 'finishing',
  wash: 'finishing',
  seed: 'finishing',
  dust: 'finishing',
  dock: 'finishing',
  score: 'finishing',
  load: 'oven',
  bake: 'oven',
  partBake: 'oven',
  bakeOff: 'oven',
  takeOut: 'oven',
  depan: 'oven',
  cool: 'rests',
  wait: 'rests',
  glaze: 'finishing',
  slice: 'beside',
  pack: 'beside',
  cook: 'beside',
  clean: 'beside',
};

/** The verbs of a group, in the order of the work. */
export function verbsOf(group: VerbGroup): readonly Verb[] {
  return verbSchema.options.filter((verb) => GROUP_OF[verb] === group);
}
