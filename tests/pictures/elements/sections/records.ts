import type { TemplateResult } from 'lit';
import '../../../../display/records/batch-view.ts';
import '../../../../display/records/batches-view.ts';
import '../../../../display/records/day-view.ts';
import '../../../../display/records/weeks-view.ts';
import '../../../../display/records/out-view.ts';
import { NO_NAMES, type RecordsTools } from '../../../../display/records/records-tools.ts';
import type { Asked } from '../../../../display/records/records-store.ts';
import '../../../../display/records/records-page.ts';
import type {
  BatchAnswer,
  BatchesAnswer,
  DayAnswer,
  NamesAnswer,
  PieceRow,
  StepRow,
  WeeksAnswer,
} from '../../../../shared/records/answers.ts';
import type { QuestionName } from '../../../../shared/records/questions.ts';
import { made } from '../made.ts';
import { section, shelf, specimen } from '../specimen.ts';

const NOW_MS = Date.UTC(2026, 2, 7, 9, 20, 0);
const HOUR_MS = 3_600_000;

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

/** A workpiece of an invented house. */
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

const BATCHES: BatchesAnswer = {
  pieces: [
    piece({ tag: 'C2', endedMs: null, ending: null }),
    piece({ tag: 'C1' }),
    piece({ tag: 'M1', formula: 'milk-buns', product: null, productVersion: null, ending: 'divided' }),
    piece({ tag: 'M2', formula: 'milk-buns', ending: 'discarded' }),
  ],
  before: '2026-03-06 1',
};

/** Records that have all that there is. */
export const LEVEL = { sequence: 3_120, of: 3_120 };

/** Tools that answer questions with what is given, and do nothing else. */
export function answering(given: Partial<Record<QuestionName, Asked<unknown>>>): RecordsTools {
  return {
    ask: async (name, _asked, schema) => {
      const asked = given[name] ?? { phase: 'missing' };
      return asked.phase === 'here' ? { ...asked, answer: schema.parse(asked.answer) } : asked;
    },
    command: async () => null,
    read: async () => null,
    goTo: () => {},
    wallMs: () => NOW_MS,
  };
}

const LISTS: readonly (readonly [string, Asked<BatchesAnswer>, string])[] = [
  ['here', { phase: 'here', answer: BATCHES, progress: LEVEL }, ''],
  ['narrowed to nothing', { phase: 'here', answer: { pieces: [], before: null }, progress: LEVEL }, '?lot=W-1'],
  ['empty', { phase: 'here', answer: { pieces: [], before: null }, progress: LEVEL }, ''],
  ['being made', { phase: 'here', answer: { ...BATCHES, before: null }, progress: { sequence: 1_200, of: 3_120 } }, ''],
  ['asking', { phase: 'asking' }, ''],
  ['failed', { phase: 'failed' }, ''],
  ['not let in', { phase: 'forbidden' }, ''],
  ['missing', { phase: 'missing' }, ''],
  ['none kept', { phase: 'unavailable' }, ''],
];

const MINUTE_MS = 60_000;

function step(given: Partial<StepRow>): StepRow {
  return {
    pieceId: 'pieceC1',
    round: 0,
    step: 'bulk-1',
    position: 3,
    verb: 'bulk',
    kind: 'timed',
    status: 'done',
    startedMs: NOW_MS - 8 * HOUR_MS,
    endedMs: NOW_MS - 7 * HOUR_MS,
    plannedStartMs: NOW_MS - 8 * HOUR_MS - 12 * MINUTE_MS,
    plannedEndMs: NOW_MS - 7 * HOUR_MS - 12 * MINUTE_MS,
    targetMin: 60,
    factor: 1.06,
    moreMin: 0,
    station: 'bench',
    helpers: [],
    startedBy: 'bench',
    endedBy: 'unknown',
    pieces: null,
    isInferred: false,
    place: 'warm',
    ...given,
  };
}

const BATCH: BatchAnswer = {
  pieces: [piece({ pieces: 14, ending: 'divided' }), piece({ id: 'cut', tag: 'C1a', kind: 'cut', parentId: 'pieceC1', pieces: 13 })],
  sources: [],
  steps: [step({}), step({ step: 'divide', verb: 'divide', kind: 'hands', isInferred: true, startedMs: null, moreMin: 2 })],
  calls: [
    {
      pieceId: 'pieceC1',
      step: 'divide',
      level: 'late',
      dueMs: NOW_MS - 7 * HOUR_MS,
      raisedMs: NOW_MS - 7 * HOUR_MS,
      heardMs: null,
      endedMs: NOW_MS - 6 * HOUR_MS,
      became: 'done',
      soundedCount: 3,
    },
  ],
  lots: [
    {
      ingredient: 'wheat-flour',
      lot: 'WF26-0301-7',
      weighedInto: 'pieceC1',
      weighedTag: 'C1',
      weighedMs: NOW_MS - 9 * HOUR_MS,
      grams: 6_000,
    },
  ],
  events: [],
};

const RECORDS_OF_ONE: readonly (readonly [string, Asked<BatchAnswer>])[] = [
  ['here', { phase: 'here', answer: BATCH, progress: LEVEL }],
  ['missing', { phase: 'missing' }],
];

const DAY: DayAnswer = {
  date: '2026-03-07',
  previous: '2026-03-06',
  next: null,
  isClosed: false,
  pieces: [piece({}), piece({ id: 'pieceC2', tag: 'C2' })],
  steps: [
    step({}),
    step({ step: 'bake', verb: 'bake', kind: 'bake', position: 9, startedMs: NOW_MS - 6.5 * HOUR_MS, endedMs: NOW_MS - 5.7 * HOUR_MS }),
    step({ pieceId: 'pieceC2', startedMs: NOW_MS - 6 * HOUR_MS, endedMs: NOW_MS - 5 * HOUR_MS }),
    step({
      pieceId: 'pieceC2',
      step: 'round',
      verb: 'round',
      kind: 'hands',
      position: 7,
      startedMs: NOW_MS - 4.8 * HOUR_MS,
      endedMs: NOW_MS - 4.6 * HOUR_MS,
    }),
  ],
  uses: [{ pieceId: 'pieceC1', step: 'bake', kind: 'slot', resource: 'top-left' }],
  orders: [{ id: 'order', product: 'country-loaf', pieces: 12, readyMs: NOW_MS, isWithdrawn: false }],
  decks: [{ deck: 'top', slots: 2, slotMin: 90, spanMin: 240 }],
  spoiled: [{ pieceId: 'pieceC1', tag: 'C1', what: 'pieces', reason: null, grams: 900, pieces: 1 }],
  saved: [{ pieceId: 'pieceC1', tag: 'C1', what: 'usedPastLimit', reason: 'Read cold all the time', grams: 1_200, pieces: 2 }],
  calls: { call: 41, late: 6, lost: 1 },
};

const WEEKS: WeeksAnswer = {
  weeks: ['2026-02-16', '2026-02-23', '2026-03-02'].map((monday, index) => ({
    monday,
    days: 6,
    batches: 38 + index,
    finishedPieces: 540 + 10 * index,
    discardedPieces: 8,
    offMin: 12 - 4 * index,
    lateShare: 0.4 - 0.1 * index,
    lateCalls: 60,
    lostCalls: 2,
    ovenShare: index === 0 ? null : 0.31,
  })),
};

const OUT: readonly (readonly [string, string])[] = [
  ['a table', ''],
  ['a period', '?table=temperatures&from=2026-03-01&to=2026-03-31'],
  ['a period that ends before it begins', '?from=2026-03-31&to=2026-03-01'],
  ['always whole', '?table=documents_adopted'],
];

/** What happened: the page, and each of its views in every state. */
export function recordsSection(): TemplateResult {
  return section('records', 'Records', [
    shelf(
      'The page',
      [
        specimen(
          'records-page',
          'whole',
          made('records-page', {
            tools: answering({
              names: { phase: 'here', answer: RECORD_NAMES, progress: LEVEL },
              batches: { phase: 'here', answer: BATCHES, progress: LEVEL },
            }),
          }),
        ),
      ],
      'stacked',
    ),
    shelf(
      'Batches',
      LISTS.map(([name, asked, query]) =>
        specimen(
          `batches-view, ${name}`,
          'whole',
          made('batches-view', { tools: answering({ batches: asked }), names: RECORD_NAMES, query: new URLSearchParams(query) }),
        ),
      ),
      'stacked',
    ),
    shelf(
      'One batch',
      RECORDS_OF_ONE.map(([name, asked]) =>
        specimen(`batch-view, ${name}`, 'whole', made('batch-view', { tools: answering({ batch: asked }), names: RECORD_NAMES })),
      ),
      'stacked',
    ),
    shelf(
      'Days and weeks',
      [
        specimen(
          'day-view',
          'whole',
          made('day-view', { tools: answering({ day: { phase: 'here', answer: DAY, progress: LEVEL } }), names: RECORD_NAMES }),
        ),
        specimen(
          'day-view, nothing begun',
          'whole',
          made('day-view', {
            tools: answering({ day: { phase: 'here', answer: { ...DAY, pieces: [], steps: [] }, progress: LEVEL } }),
            names: RECORD_NAMES,
          }),
        ),
        specimen(
          'weeks-view',
          'whole',
          made('weeks-view', { tools: answering({ weeks: { phase: 'here', answer: WEEKS, progress: LEVEL } }), names: RECORD_NAMES }),
        ),
      ],
      'stacked',
    ),
    shelf(
      'Out',
      OUT.map(([name, query]) => specimen(`out-view, ${name}`, 'whole', made('out-view', { query: new URLSearchParams(query) }))),
      'stacked',
    ),
  ]);
}
