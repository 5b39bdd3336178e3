import type { z } from 'zod';
import type { stepSchema, Verb } from '../documents/method.ts';
import { REMARK_CHARACTERS } from '../documents/names.ts';
import { folded } from './folded.ts';
import { inFigures } from './recipe-text.ts';

export type StepWritten = z.input<typeof stepSchema>;

/** Which verb of the trade a sentence in English, German or French speaks of: the one named first in it. */
const VERBS: readonly (readonly [RegExp, Verb])[] = [
  [/\b(?:combine|mix(?!ture)\w*|stir|vermisch\w*|vermeng\w*|verruhr\w*|misch\w*|melang\w*)\b/, 'firstSpeed'],
  [/\b(?:knead|knet\w*|verknet\w*|auskneten|petri\w*)\b/, 'secondSpeed'],
  [/\b(?:autolys\w*)\b/, 'stand'],
  [/\b(?:bulk|ferment\w*|first (?:rise|proof)|let (?:it |the dough )?rise|rise|double[ds]?|gehen|stockgare|gare|lever|pointage)\b/, 'bulk'],
  [/\b(?:second (?:rise|proof)|final (?:rise|proof)|proof|prove|stuckgare|appret)\b/, 'prove'],
  [/\b(?:fold|folds|stretch and fold|dehnen und falten|falten|falte|rabat\w*)\b/, 'fold'],
  [/\b(?:rest|rests|stand|ruhen|rasten|repos\w*|detente)\b/, 'benchRest'],
  [/\b(?:divide|portion|teilen|abteilen|abstechen|divis\w*)\b/, 'divide'],
  [/\b(?:preshape|pre shape|round up|rundwirken|boul\w*)\b/, 'round'],
  [/\b(?:shape|form|formen|langwirken|faconn\w*)\b/, 'shape'],
  [/\b(?:refrigerat\w*|retard|kuhlschrank|refrigerateur|frigo)\b/, 'retard'],
  [/\b(?:score|slash|einschneiden|einschneide|incis\w*|grign\w*)\b/, 'score'],
  [/\b(?:bake|bakes|backen|backe|ausbacken|cuire|cuis\w*|enfourn\w*)\b/, 'bake'],
  [/\b(?:cool|abkuhlen|auskuhlen|refroid\w*)\b/, 'cool'],
  [/\b(?:brush|bestreichen|badigeonn\w*|dor(?:er|ez))\b/, 'wash'],
  [/\b(?:sprinkle|bestreuen|saupoudr\w*|parsem\w*)\b/, 'top'],
  [/\b(?:add|incorporate|zugeben|dazugeben|hinzufugen|unterkneten|ajout\w*|incorpor\w*)\b/, 'add'],
  [/\b(?:simmer|boil|cook|kochen|koche|aufkochen|bouillir|porter a ebullition)\b/, 'cook'],
];
const PREHEATING = /\b(?:preheat|vorheizen|prechauff\w*)\b/;
const RESTS: ReadonlySet<Verb> = new Set(['stand', 'bulk', 'prove', 'benchRest', 'retard', 'cool']);
/** From the first of these on a step belongs to a product's way. */
const MAKE_UP: ReadonlySet<Verb> = new Set(['round', 'shape', 'prove', 'retard', 'score', 'bake', 'cool', 'wash', 'top']);
const AMOUNT = String.raw`\d+(?:[.,]\d+)?(?: \d+\/\d+)?|\d+\/\d+`;
const TIMES = new RegExp(
  String.raw`(${AMOUNT})(?: ?(?:-|–|—|to|bis|à|or|oder|ou) ?(${AMOUNT}))? ?(hours?|hrs?|h|stunden?|std|heures?|minutes?|mins?|minuten|mn|m)\b`,
  'giu',
);
const DEGREES = /(\d{2,3}) ?(?:°|º|degrees?|grad|degrés?)? ?(C|F|Celsius|Fahrenheit)\b/gi;
const LONGEST_MIN = 7 * 24 * 60;
const HOTTEST_C = 600;

/** What a sentence says and what could not be told of it. */
export interface SentenceRead {
  readonly text: string;
  readonly step: StepWritten | null;
  /** A rest or a bake of which the recipe says no time. */
  readonly hasNoTime: boolean;
}

/** Sentences of an instruction, each with the step that it most likely is. Ids are still to be made unique. */
export function readInstruction(text: string): readonly SentenceRead[] {
  return sentencesOf(text).map(readSentence);
}

/** Whether a step belongs to a product's way, as the steps from make-up on do. */
export function isMakeUp(verb: Verb): boolean {
  return MAKE_UP.has(verb);
}

function sentencesOf(text: string): readonly string[] {
  return text
    .split(/\n|(?<=[.!?;])\s+(?=\p{Lu})|,?\s+(?:and )?then\s+/u)
    .map((sentence) => sentence.replace(/\s+/g, ' ').trim())
    .filter((sentence) => /\p{L}/u.test(sentence));
}

function readSentence(text: string): SentenceRead {
  const verb = verbIn(folded(text));
  if (verb === null) return { text, step: null, hasNoTime: false };
  const minutes = minutesIn(text);
  const base = { id: verb.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`), verb, check: text.slice(0, REMARK_CHARACTERS) };
  const times = minutes ?? { target: 0 };
  const hasNoTime = minutes === null && (verb === 'bake' || RESTS.has(verb));
  if (verb !== 'bake') return { text, step: { ...base, kind: RESTS.has(verb) ? 'timed' : 'hands', minutes: times }, hasNoTime };
  const temperatureC = temperatureIn(text);
  const phase = { minutes: times.target, ...(temperatureC === null ? {} : { temperatureC }) };
  return { text, step: { ...base, kind: 'bake', minutes: times, bake: [phase] }, hasNoTime };
}

function verbIn(text: string): Verb | null {
  if (PREHEATING.test(text)) return null;
  let first: { readonly at: number; readonly verb: Verb } | null = null;
  for (const [words, verb] of VERBS) {
    const at = text.search(words);
    if (at >= 0 && (first === null || at < first.at)) first = { at, verb };
  }
  return first?.verb ?? null;
}

/** The first time in a sentence; hours and minutes one behind the other are one time. */
function minutesIn(text: string): StepWritten['minutes'] | null {
  const figures = inFigures(text);
  const [first, second] = [...figures.matchAll(TIMES)];
  if (first === undefined) return null;
  const least = timeMin(first, 1);
  const most = first[2] === undefined ? least : timeMin(first, 2);
  const gap = second === undefined ? null : figures.slice(first.index + first[0].length, second.index);
  const more =
    isHours(first) && second !== undefined && !isHours(second) && gap !== null && /^[ ,]*(?:and|und|et)?[ ,]*$/.test(gap)
      ? timeMin(second, 1)
      : 0;
  if (least + more > LONGEST_MIN || most > LONGEST_MIN) return null;
  return most > least ? { earliest: least, target: least, latest: most } : { target: least + more };
}

function timeMin(match: RegExpExecArray, group: 1 | 2): number {
  const amount = (match[group] ?? '0')
    .replace(',', '.')
    .split(' ')
    .reduce((sum, part) => {
      const [over = '', under] = part.split('/');
      return sum + Number(over) / (under === undefined ? 1 : Number(under));
    }, 0);
  return isHours(match) ? amount * 60 : amount;
}

function isHours(match: RegExpExecArray): boolean {
  return /^(?:h|std)/i.test(match[3] ?? '') || /^stund/i.test(match[3] ?? '');
}

/** A temperature in °C; one in °F is only taken where no other stands beside it. */
function temperatureIn(text: string): number | null {
  const found = [...text.matchAll(DEGREES)];
  const inCelsius = found.find(([, , unit]) => /^c/i.test(unit ?? ''));
  const [, degrees, unit] = inCelsius ?? found[0] ?? [];
  if (degrees === undefined || unit === undefined) return null;
  const celsius = /^f/i.test(unit) ? Math.round(((Number(degrees) - 32) * 5) / 9) : Number(degrees);
  return celsius <= HOTTEST_C ? celsius : null;
}
