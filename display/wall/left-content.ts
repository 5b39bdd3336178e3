import { beginsByItself, endsByNext, type Step } from '../../shared/documents/method.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { OTHER_STAGES, STAGES } from '../words/stages.ts';
import { CHECK_CALL, VERBS } from '../words/verbs.ts';
import { moreWords } from '../words/wall.ts';
import { countAndWord } from './count-word.ts';
import { shortTag } from './day-tags.ts';
import type { LeftContent } from './left-columns.ts';

/** What the state may make the wall write left of NOW: the tags of open work, the verbs of all methods in force, the decks. */
export function leftContentOf(state: FloorState): LeftContent {
  const open = Object.values(state.workpieces).filter((workpiece) => workpiece.finishedMs === null);
  const calls = new Set<string>([CHECK_CALL]);
  const running = new Set<string>();
  const take = (step: Step, index: number, way: readonly Step[]): void => {
    running.add(VERBS[step.verb].running);
    if (isCalled(step, way[index - 1])) calls.add(VERBS[step.verb].call);
  };
  for (const formula of Object.values(state.formulas)) formula.method.forEach(take);
  for (const product of Object.values(state.products)) product.way.forEach(take);
  const unit = state.house?.document.units.temperature ?? 'C';
  const decks = (state.kitchen?.document.ovens ?? []).flatMap((oven) =>
    oven.decks.map((deck) => ({ name: deck.name, temperature: temperatureText(state.deckC[deck.id] ?? deck.temperatureC, unit) })),
  );
  const tags = open.map((workpiece) => shortTag(state, workpiece.tag, workpiece.serviceDate));
  const stages = [...Object.values(STAGES), OTHER_STAGES, countAndWord(moreWords(2)).word];
  return { tags, calls: [...calls], running: [...running], stages, decks };
}

/** Whether hands are called for a step by its own verb: not where it goes on by itself from the work before it. */
function isCalled(step: Step, before: Step | undefined): boolean {
  return before === undefined || endsByNext(before) || !beginsByItself(step);
}
