import type { TemplateResult } from 'lit';
import '../../../../display/records/trace-picture.ts';
import '../../../../display/records/trace-search.ts';
import '../../../../display/records/trace-view.ts';
import type { Asked } from '../../../../display/records/records-store.ts';
import type { NamesAnswer, PieceRow } from '../../../../shared/records/answers.ts';
import type { LotsAnswer, TraceAnswer, TraceEdge, TraceLot, TraceNode } from '../../../../shared/records/trace-answer.ts';
import { made } from '../made.ts';
import { section, shelf, specimen } from '../specimen.ts';
import { answering, LEVEL, piece, RECORD_NAMES } from './records.ts';

const NOW_MS = Date.UTC(2026, 2, 7, 9, 20, 0);
const DAY_MS = 86_400_000;

const NAMES: NamesAnswer = {
  ...RECORD_NAMES,
  formulas: [...RECORD_NAMES.formulas, { id: 'levain', name: 'Liquid levain' }],
  ingredients: [
    { id: 'wheat-flour', name: 'Wheat flour' },
    { id: 'rye-flour', name: 'Rye flour' },
  ],
};

function node(given: Partial<PieceRow>, rest: Partial<TraceNode> = {}): TraceNode {
  return { piece: piece(given), via: 'draw', hops: 1, feeds: 0, fedSince: 0, isInIt: true, atMs: NOW_MS - DAY_MS, ...rest };
}

function edge(kind: TraceEdge['kind'], fromId: string, toId: string): TraceEdge {
  return { kind, fromId, toId, grams: 1_800, times: 1, firstMs: NOW_MS, lastMs: NOW_MS };
}

function lot(given: Partial<TraceLot>): TraceLot {
  return {
    ingredient: 'wheat-flour',
    lot: 'WF26-0301-7',
    pieceId: 'pieceL1',
    tag: 'L1',
    serviceDate: '2026-03-05',
    formula: 'levain',
    grams: 2_000,
    times: 2,
    firstMs: NOW_MS - 2 * DAY_MS,
    lastMs: NOW_MS,
    feeds: 0,
    isReplaced: false,
    ...given,
  };
}

const POT = node(
  { tag: 'L1', kind: 'ferment', formula: 'levain', product: null, ending: null, serviceDate: '2026-03-05' },
  { via: 'weighed', hops: 0, fedSince: 2 },
);
const DOUGHS = [
  node({ tag: 'C1', product: null, ending: 'divided' }),
  node({ tag: 'C2', serviceDate: '2026-03-06', product: null, ending: 'discarded' }, { feeds: 1, via: 'putBack' }),
];
const CUTS = [
  node({ tag: 'C1a', kind: 'cut' }, { via: 'divide', hops: 2 }),
  node({ tag: 'C1b', kind: 'cut', ending: null }, { via: 'divide', hops: 2 }),
];

const ONWARD: TraceAnswer = {
  direction: 'onward',
  lots: [lot({}), lot({ pieceId: 'pieceC2', tag: 'C2', formula: 'country', isReplaced: true })],
  lotsLeftOut: 3,
  lotsG: 12_000,
  nodes: [POT, ...DOUGHS, ...CUTS],
  nodesLeftOut: 40,
  edges: [
    edge('draw', 'pieceL1', 'pieceC1'),
    edge('putBack', 'pieceC1a', 'pieceC2'),
    edge('divide', 'pieceC1', 'pieceC1a'),
    edge('divide', 'pieceC1', 'pieceC1b'),
  ],
  products: [
    {
      product: 'country-loaf',
      serviceDate: '2026-03-07',
      finished: 14,
      discarded: 0,
      here: 14,
      feeds: 0,
      hops: 2,
      pieceIds: ['pieceC1a', 'pieceC1b'],
      orders: [
        { label: 'Market stall', pieces: 10, readyMs: NOW_MS },
        { label: null, pieces: 4, readyMs: NOW_MS },
      ],
    },
    {
      product: 'country-loaf',
      serviceDate: '2026-03-08',
      finished: 0,
      discarded: 3,
      here: 0,
      feeds: 2,
      hops: 2,
      pieceIds: ['pieceC2'],
      orders: [],
    },
  ],
  total: { products: 1, days: 2, finished: 14, discarded: 3, here: 14, carried: 3 },
  stillHere: [POT],
  after: '2 2026-03-08 country-loaf',
};

const BACK: TraceAnswer = {
  ...ONWARD,
  direction: 'back',
  lots: [lot({}), lot({ ingredient: 'rye-flour', lot: 'RY-19', feeds: 12 })],
  lotsLeftOut: 0,
  nodesLeftOut: 0,
  nodes: [node({ tag: 'C1', ending: 'finished' }, { via: null, hops: 0 }), POT],
  edges: [edge('draw', 'pieceL1', 'pieceC1')],
  products: ONWARD.products.slice(0, 1),
  total: { products: 1, days: 1, finished: 14, discarded: 0, here: 0, carried: 0 },
  stillHere: [],
  after: null,
};

/** Twenty doughs of a day and of another: drawn as one box each. */
const MANY: TraceAnswer = {
  ...ONWARD,
  nodes: [
    POT,
    ...Array.from({ length: 20 }, (_, index) =>
      node({ tag: `C${index + 10}`, serviceDate: index % 2 === 0 ? '2026-03-07' : '2026-03-08' }),
    ),
    ...Array.from({ length: 12 }, (_, index) => node({ tag: `M${index + 10}`, formula: `dough-${index}`, kind: 'batch' })),
  ],
  edges: Array.from({ length: 20 }, (_, index) => edge('draw', 'pieceL1', `pieceC${index + 10}`)),
};

const LOTS: LotsAnswer = {
  lots: [
    { ingredient: 'wheat-flour', lot: 'WF26-0301-7', firstMs: NOW_MS - 9 * DAY_MS, lastMs: NOW_MS, times: 12 },
    { ingredient: 'rye-flour', lot: 'RY-19', firstMs: NOW_MS - 30 * DAY_MS, lastMs: NOW_MS - DAY_MS, times: 3 },
  ],
};

function here<Answer>(answer: Answer): Asked<Answer> {
  return { phase: 'here', answer, progress: LEVEL };
}

const VIEWS: readonly (readonly [string, Asked<TraceAnswer>, Asked<LotsAnswer>, string])[] = [
  ['a lot onward', here(ONWARD), here(LOTS), 'lot=WF26-0301-7&ingredient=wheat-flour'],
  ['a product back', here(BACK), here(LOTS), 'product=country-loaf&date=2026-03-07'],
  ['a batch back, nothing noted', here({ ...BACK, lots: [] }), here(LOTS), 'id=pieceC1'],
  ['a beginning', { phase: 'missing' }, here(LOTS), ''],
  ['a beginning, no lots yet', { phase: 'missing' }, here({ lots: [] }), ''],
  ['not in the records', { phase: 'missing' }, here(LOTS), 'lot=X'],
];

/** The trace of lots in every state; the picture by itself with few boxes and with many. */
export function traceSection(): TemplateResult {
  return section('records-trace', 'Trace of lots', [
    shelf(
      'Both ways',
      VIEWS.map(([name, trace, lots, query]) =>
        specimen(
          `trace-view, ${name}`,
          'whole',
          made('trace-view', { tools: answering({ trace, lots }), names: NAMES, query: new URLSearchParams(query) }),
        ),
      ),
      'stacked',
    ),
    shelf(
      'Parts of it',
      [
        specimen(
          'trace-search',
          'whole',
          made('trace-search', { tools: answering({ lots: here(LOTS) }), names: NAMES, isBeginning: true }),
        ),
        specimen('trace-picture, many', 'whole', made('trace-picture', { answer: MANY, names: NAMES })),
      ],
      'stacked',
    ),
  ]);
}
