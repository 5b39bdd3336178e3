import type { TemplateResult } from 'lit';
import '../../../../display/records/calls-view.ts';
import '../../../../display/records/lessons-view.ts';
import type { Asked } from '../../../../display/records/records-store.ts';
import type { CallsAnswer } from '../../../../shared/records/calls-answer.ts';
import type { Lesson, LessonsAnswer } from '../../../../shared/records/lessons-answer.ts';
import { made } from '../made.ts';
import { section, shelf, specimen } from '../specimen.ts';
import { answering, RECORD_NAMES } from './records.ts';

const SATURDAY_MS = Date.UTC(2026, 2, 7, 5);
const WINDOW_MS = 600_000;
const LEVEL = { sequence: 3_120, of: 3_120 };

/** A lesson of which so much is as it is where nothing is said. */
export function lesson(given: Partial<Lesson>): Lesson {
  return {
    about: 'minutes',
    subject: { kind: 'formula', id: 'country' },
    formula: 'country',
    step: { id: 'turn-out', verb: 'turnOut', kind: 'hands', nth: null },
    spread: { n: 42, median: 14, quarter: 12.5, threeQuarters: 15.5, tenth: 11, nineTenths: 19, medianLow: 13.2, medianHigh: 14.8 },
    estimate: 13.9,
    trend: { perMonth: 1.4, low: 0.4, high: 2.2 },
    assumed: 10,
    minutesPerPiece: 0,
    foundPerPiece: null,
    planned: 10,
    leftOut: 2,
    groups: [],
    proposal: { fromMin: 10, toMin: 14 },
    left: null,
    ...given,
  };
}

const PER_CENT = { n: 9, median: 108, quarter: 104, threeQuarters: 111, tenth: 101, nineTenths: 116, medianLow: 103, medianHigh: 112 };

const LESSONS: LessonsAnswer = {
  from: '2025-12-08',
  to: '2026-03-07',
  lessons: [
    lesson({
      groups: [
        { by: 'station', id: 'bench', n: 30, median: 13, estimate: 13.2 },
        { by: 'size', sizes: { from: 6_000, to: 9_200, unit: 'grams' }, n: 20, median: 12, estimate: 12.4 },
      ],
    }),
    lesson({
      subject: { kind: 'product', id: 'country-loaf' },
      step: { id: 'shape', verb: 'shape', kind: 'hands', nth: null },
      trend: { perMonth: -0.2, low: -0.9, high: 0.4 },
      minutesPerPiece: 0.75,
      foundPerPiece: { minutes: 0.6, low: 0.4, high: 0.8 },
      left: { foundMin: 14, atMs: SATURDAY_MS },
    }),
    lesson({ step: { id: 'fold-1', verb: 'fold', kind: 'hands', nth: 1 }, assumed: 14, trend: null, proposal: null, leftOut: 0 }),
    lesson({ subject: { kind: 'formula', id: 'milk-buns' }, trend: { perMonth: -2, low: -3, high: -1 }, proposal: null }),
    lesson({
      about: 'rise',
      subject: { kind: 'mixer', id: 'spiral' },
      formula: null,
      step: null,
      assumed: null,
      estimate: 4.3,
      spread: { ...PER_CENT, median: 4.3, quarter: 4, threeQuarters: 4.6, tenth: 3.6, nineTenths: 5.1 },
      trend: null,
      proposal: null,
      groups: [
        { by: 'formula', id: 'country', n: 5, median: 4.1, estimate: 4.2 },
        { by: 'formula', id: 'milk-buns', n: 4, median: 4.7, estimate: 4.5 },
      ],
    }),
    lesson({
      about: 'ripeness',
      step: { id: 'bulk-1', verb: 'bulk', kind: 'timed', nth: 1 },
      spread: PER_CENT,
      estimate: 107,
      assumed: 100,
      proposal: null,
    }),
    lesson({
      about: 'heat',
      subject: { kind: 'deck', id: 'lower' },
      step: null,
      spread: { ...PER_CENT, quarter: 108, threeQuarters: 108, tenth: 108, nineTenths: 108 },
      estimate: 108,
      assumed: null,
      proposal: null,
    }),
  ],
  changes: [{ subject: { kind: 'formula', id: 'country' }, step: 'turn-out', fromMin: 3, toMin: 10, version: 4, atMs: SATURDAY_MS }],
  losses: [
    { what: 'trim', grams: 4_200, times: 12 },
    { what: 'seed', grams: 900, times: 3 },
  ],
};

/** A house that is called too often on one morning. */
export const CALLS: CallsAnswer = {
  from: '2025-12-08',
  to: '2026-03-07',
  health: {
    calls: 214,
    windows: {
      worked: 160,
      mean: 1.34,
      peak: { calls: 12, fromMs: SATURDAY_MS },
      inFlood: 1,
      calling: [1, 3, 12, 2, 0, 4, 1].map((calls, index) => ({ fromMs: SATURDAY_MS + (index - 2) * WINDOW_MS, calls })),
    },
    levels: { call: 171, late: 36, lost: 7 },
    heard: { n: 90, medianMin: 1.2, ninetiethMin: 6.4 },
    done: { n: 180, medianMin: 3.2, ninetiethMin: 11.8 },
    neverHeard: 60,
    neverAnswered: 2,
    undone: 1,
    repeats: 3,
    standing: 2,
    shelved: { times: 5, minutes: 55 },
    offenders: [
      {
        formula: 'country',
        subject: { kind: 'formula', id: 'country' },
        step: 'turn-out',
        verb: 'turnOut',
        nth: null,
        calls: 40,
        late: 12,
        lost: 1,
        share: 0.187,
        lateMin: 6,
        advice: { by: 'coming', fromMin: 10, toMin: 16 },
      },
      {
        formula: 'milk-buns',
        subject: { kind: 'formula', id: 'milk-buns' },
        step: 'divide',
        verb: 'divide',
        nth: null,
        calls: 22,
        late: 2,
        lost: 0,
        share: 0.103,
        lateMin: null,
        advice: { by: 'work', fromMin: 8, toMin: 13 },
      },
      {
        formula: 'country',
        subject: { kind: 'product', id: 'country-loaf' },
        step: 'load',
        verb: 'load',
        nth: null,
        calls: 20,
        late: 0,
        lost: 0,
        share: 0.093,
        lateMin: 1,
        advice: { by: 'work', fromMin: 8, toMin: 5 },
      },
    ],
  },
  days: [
    { date: '2026-03-06', calls: 14, peak: 3, worked: 60 },
    { date: '2026-03-07', calls: 200, peak: 12, worked: 100 },
  ],
};

const LESSON_STATES: readonly (readonly [string, Asked<LessonsAnswer>])[] = [
  ['here', { phase: 'here', answer: LESSONS, progress: LEVEL }],
  [
    'nothing off',
    { phase: 'here', answer: { ...LESSONS, lessons: LESSONS.lessons.slice(2, 4), changes: [], losses: [] }, progress: LEVEL },
  ],
  ['nothing timed', { phase: 'here', answer: { ...LESSONS, lessons: [], changes: [], losses: [] }, progress: LEVEL }],
  ['not let in', { phase: 'forbidden' }],
];

const CALL_STATES: readonly (readonly [string, Asked<CallsAnswer>])[] = [
  ['here', { phase: 'here', answer: CALLS, progress: LEVEL }],
  ['nothing called', { phase: 'here', answer: { ...CALLS, health: { ...CALLS.health, calls: 0 } }, progress: LEVEL }],
  ['none kept', { phase: 'unavailable' }],
];

/** What the days teach, and how the calls were, in every state. */
export function recordsLearnedSection(): TemplateResult {
  return section('records-learned', 'Lessons and calls', [
    shelf(
      'What the days teach',
      LESSON_STATES.map(([name, asked]) =>
        specimen(`lessons-view, ${name}`, 'whole', made('lessons-view', { tools: answering({ lessons: asked }), names: RECORD_NAMES })),
      ),
      'stacked',
    ),
    shelf(
      'Calls',
      CALL_STATES.map(([name, asked]) =>
        specimen(`calls-view, ${name}`, 'whole', made('calls-view', { tools: answering({ calls: asked }), names: RECORD_NAMES })),
      ),
      'stacked',
    ),
  ]);
}
