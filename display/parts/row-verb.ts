import type { Row, RowPrompt } from '../../shared/floor/board.ts';
import type { PromptAsk } from '../../shared/floor/bake-phases.ts';
import { PAST_LIMIT, PROMPTS, setWords } from '../words/prompts.ts';
import { CHECK_CALL, VERBS, type VerbWords } from '../words/verbs.ts';
import { temperatureText } from './temperature-text.ts';

/** The verb as a row says it: a call loud, what runs quietly, a judged step that is due as a check; of a bake, what its phase asks for. */
export function rowVerb(row: Row): string {
  if (isToBeDiscarded(row)) return PAST_LIMIT.call;
  if (row.isCheck) return CHECK_CALL;
  const words = row.prompt === null ? VERBS[row.verb] : promptWords(row.prompt);
  return row.role === 'running' ? words.running : words.call;
}

/** Food past its limit, that nothing uses until somebody has decided; what is in the oven comes out of it first. */
export function isToBeDiscarded({ holding, verb, role }: Row): boolean {
  return holding !== null && holding.isPast && verb !== 'takeOut' && role === 'lost';
}

/** The most pressing of what a phase asks for. */
export function promptWords(prompt: RowPrompt): VerbWords {
  const [first] = prompt.asks;
  return first === undefined ? VERBS.bake : askWords(first, prompt);
}

/** What a phase asks for beside that, quietly. */
export function promptNotes(prompt: RowPrompt | null): readonly string[] {
  return prompt === null ? [] : prompt.asks.slice(1).map((ask) => askWords(ask, prompt).running);
}

function askWords(ask: PromptAsk, { setC, unit }: RowPrompt): VerbWords {
  return ask === 'set' ? setWords(temperatureText(setC ?? 0, unit)) : PROMPTS[ask];
}
