import type { NamesAnswer } from '../../shared/records/answers.ts';
import type { Lesson, LessonAbout, LessonGroup } from '../../shared/records/lessons-answer.ts';
import { verbSchema } from '../../shared/documents/method.ts';
import { weightText } from '../parts/weight-text.ts';
import { minutesWords } from '../words/clock.ts';
import { LESSONS } from '../words/lessons.ts';
import { numberWords } from '../words/numbers.ts';
import { VERBS } from '../words/verbs.ts';
import { nameIn, type NameList } from './records-tools.ts';

/** Kelvins to degrees Fahrenheit, of differences. */
const F_OF_K = 1.8;

/** A figure of a lesson as bakers say it: whole minutes, tenths of a degree, whole per cent. */
export function figureText(about: LessonAbout, value: number, units: NamesAnswer['units']): string {
  switch (about) {
    case 'minutes':
      return minutesWords(Math.round(value));
    case 'rise':
      return units.temperature === 'F' ? `${numberWords(value * F_OF_K)} °F` : `${numberWords(value)} K`;
    case 'leftOver':
    case 'piecesLost':
      return LESSONS.percent(numberWords(value));
    default:
      return LESSONS.percent(numberWords(Math.round(value)));
  }
}

/** Minutes a piece have parts of a minute in them. */
export function pieceMinutesText(value: number): string {
  return minutesWords(Math.round(value * 10) / 10);
}

/** What a step does, as words of the trade, with its number where there are several; its own key where its verb is none of ours. */
export function verbText(verb: string, stepId: string, nth: number | null): string {
  const known = verbSchema.safeParse(verb);
  if (!known.success) return stepId;
  return nth === null ? VERBS[known.data].running : `${VERBS[known.data].running} ${nth}`;
}

/** What a lesson is about: the dough or product and its step, the mixer, the place. */
export function subjectText({ subject, step }: Lesson, names: NamesAnswer): string {
  const lists: Readonly<Record<Lesson['subject']['kind'], NameList>> = {
    formula: 'formulas',
    product: 'products',
    mixer: 'mixers',
    deck: 'decks',
    slot: 'slots',
  };
  const name = nameIn(names, lists[subject.kind], subject.id);
  return step === null ? name : `${name}, ${verbText(step.verb, step.id, step.nth)}`;
}

/** One part of a lesson: its station, deck, formula or sizes, with what it is drawn to. */
export function groupText({ by, id = '', sizes, n, estimate }: LessonGroup, about: LessonAbout, names: NamesAnswer): string {
  const lists = { station: 'stations', deck: 'decks', formula: 'formulas', size: 'formulas' } as const;
  const size = (value: number): string => (sizes?.unit === 'pieces' ? LESSONS.pieces(value) : weightText(value, names.units));
  const name = sizes === undefined ? nameIn(names, lists[by], id) : LESSONS.sizes(size(sizes.from), size(sizes.to));
  return LESSONS.part(name, figureText(about, estimate, names.units), n);
}

/** How it moves in a month, in words; none where zero lies within what it may be. */
export function trendText({ about, trend }: Lesson, units: NamesAnswer['units']): string {
  if (trend === null) return LESSONS.tooFew;
  if (trend.low <= 0 && trend.high >= 0) return LESSONS.steady;
  const by = figureText(about, Math.abs(trend.perMonth), units);
  return trend.perMonth > 0 ? LESSONS.more(by) : LESSONS.less(by);
}
