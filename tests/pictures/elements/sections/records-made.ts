import { NO_NAMES, type RecordsTools } from '../../../../display/records/records-tools.ts';
import type { Asked } from '../../../../display/records/records-store.ts';
import type { NamesAnswer, PieceRow } from '../../../../shared/records/answers.ts';
import type { QuestionName } from '../../../../shared/records/questions.ts';

export const NOW_MS = Date.UTC(2026, 2, 7, 9, 20, 0);
export const HOUR_MS = 3_600_000;

/** Names in the records of an invented house. */
export const RECORD_NAMES: NamesAnswer = {
  ...NO_NAMES,
  house: 'Harbour bakehouse',
  formulas: [
    { id: 'country', name: 'Country sourdough' },
    { id: 'milk-buns', name: 'Milk buns with a name that goes on for longer than others' },
  ],
  products: [{ id: 'country-loaf', name: 'Country loaf' }],
  places: [{ id: 'warm', name: 'Warm shelf' }],
  devices: [{ id: 'bench', name: 'Bench phone' }],
  firstDate: '2026-03-01',
  lastDate: '2026-03-07',
};

/** A workpiece of its records. */
export function piece(given: Partial<PieceRow>): PieceRow {
  return {
    id: `piece${given.tag ?? ''}`,
    kind: 'batch',
    tag: 'C1',
    serviceDate: '2026-03-07',
    formula: 'country',
    formulaVersion: 2,
    product: 'country-loaf',
    productVersion: 1,
    parentId: null,
    plannedStartMs: NOW_MS - 9 * HOUR_MS,
    startedMs: NOW_MS - 9 * HOUR_MS,
    endedMs: NOW_MS,
    ending: 'finished',
    grams: 11_240,
    scaledToG: 12_600,
    scrapG: 0,
    pieces: 14,
    plannedPieces: 14,
    allergens: ['wheat'],
    ...given,
  };
}

export const LEVEL = { sequence: 3_120, of: 3_120 };

/** Tools that answer questions with what is given, and do nothing else. */
export function answering(given: Partial<Record<QuestionName, Asked<unknown>>>): RecordsTools {
  return {
    ask: async (name, _asked, schema) => {
      const asked = given[name] ?? { phase: 'missing' };
      return asked.phase === 'here' ? { ...asked, answer: schema.parse(asked.answer) } : asked;
    },
    command: async () => null,
    goTo: () => {},
    wallMs: () => NOW_MS,
  };
}
