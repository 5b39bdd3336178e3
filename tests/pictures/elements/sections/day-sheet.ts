import type { TemplateResult } from 'lit';
import type { DaySheetDetails } from '../../../../display/day/day-sheet-details.ts';
import '../../../../display/day/day-sheet.ts';
import { sheetModel } from '../../../../display/day/sheet-model.ts';
import type { SheetContext } from '../../../../display/day/sheet-texts.ts';
import '../../../../display/day/station-list.ts';
import { stationDays } from '../../../../display/day/station-model.ts';
import '../../../../display/day/station-sheet.ts';
import '../../../../display/day/try-panel.ts';
import type { TryResult } from '../../../../shared/plan/try/try-result.ts';
import { assert } from '../../../../shared/result.ts';
import { made } from '../made.ts';
import type { Scenes } from '../scene.ts';
import { section, shelf, specimen } from '../specimen.ts';

/** The day sheet by dough and by resource, what opens in it, the stations' lists, and the day played many times. */
export function daySheetSection(scenes: Scenes): TemplateResult {
  const { sheets } = scenes;
  const { busy } = sheets;
  const { state } = busy;
  const given = { ...busy, serviceDate: state.serviceDate };
  const sheet = Object.entries(sheets).map(([name, scene]) => specimen(`day-sheet, ${name}`, 'whole', made('day-sheet', scene)));
  const oven = stationDays(given).find(({ id }) => id === 'oven');
  assert(oven !== undefined, 'the kitchen has no oven station');
  const station = { zone: 'Europe/London', nowMs: busy.nowMs, date: state.serviceDate };
  return section('day-sheet', 'The day sheet', [
    shelf('The sheet', sheet, 'stacked'),
    shelf('What is open', details(scenes), 'stacked'),
    shelf('What the shapes mean', [specimen('day-sheet-legend', 'whole', made('day-sheet-legend'))], 'stacked'),
    shelf(
      'By station',
      [
        specimen('station-list', 'whole', made('station-list', busy)),
        specimen('station-sheet, fixed', 'whole', made('station-sheet', { station: oven, ...station })),
        specimen('station-sheet, no hands wanted', 'whole', made('station-sheet', { station: { ...oven, bars: [] }, ...station })),
      ],
      'stacked',
    ),
    shelf('The day played many times', tries(scenes), 'stacked'),
  ]);
}

function details({ sheets: { busy } }: Scenes): readonly TemplateResult[] {
  const { state, nowMs } = busy;
  const model = sheetModel({ ...busy, serviceDate: null }, 'dough');
  assert(model !== null, 'the day is empty');
  const context: SheetContext = { kitchen: state.kitchen?.document ?? null, zone: 'Europe/London', nowMs, grouping: 'dough' };
  const bars = model.lines.flatMap((line) => line.bars);
  const serves = model.orders.flatMap(({ orders }) => orders);
  const open = (name: string, shown: DaySheetDetails['shown']): TemplateResult =>
    specimen(`day-sheet-details, ${name}`, 'whole', made('day-sheet-details', { shown, context }));
  const fixed = bars.find((bar) => bar.pin !== null);
  const moved = bars.find((bar) => bar.wasMs !== null);
  const begun = bars.find((bar) => bar.standing === 'begun');
  const cleaned = bars.find((bar) => bar.step.verb === 'clean');
  const row = model.rows[0];
  const mark = model.orders.find(({ isLate }) => isLate);
  assert(
    fixed !== undefined && moved !== undefined && begun !== undefined && cleaned !== undefined && row !== undefined && mark !== undefined,
    'the day is too calm',
  );
  const step = (bar: typeof fixed): DaySheetDetails['shown'] => ({
    kind: 'bar',
    bar,
    isOnFloor: true,
    isCleaning: false,
    clashes: model.clashes.filter((clash) => clash.barKeys.includes(bar.key)),
    serves: serves.slice(0, 2),
  });
  return [
    open('fixed, and not kept', step(fixed)),
    open('moved', step(moved)),
    open('under way', step(begun)),
    open('cleaned', { kind: 'bar', bar: cleaned, isOnFloor: false, isCleaning: true, clashes: [], serves: [] }),
    open('a row', { kind: 'row', row }),
    open('orders', { kind: 'orders', mark }),
  ];
}

function tries({ sheets: { busy } }: Scenes): readonly TemplateResult[] {
  const { state } = busy;
  const orders = Object.keys(state.orders).map((orderId, index) => ({
    orderId,
    lateShare: [0, 0.004, 0.12, 0.47, 0.9, 1][index % 6] ?? 0,
    medianLateMin: 4 * index,
    p90LateMin: 9 * index,
  }));
  const result: TryResult = {
    runs: 1000,
    orders,
    resources: [
      { kind: 'deck', id: 'top', share: 0.61 },
      { kind: 'station', id: 'bench', share: 0.27 },
      { kind: 'dough', id: '', share: 0.12 },
    ],
    spoilShare: 0.03,
    spreads: [
      { kind: 'hands', mean: 1.01, spread: 0.15, learnedFrom: 0 },
      { kind: 'rest', mean: 0.97, spread: 0.08, learnedFrom: 64 },
    ],
  };
  return [
    specimen('try-panel, before', 'whole', made('try-panel', { state })),
    specimen('try-panel, while it is played', 'whole', made('try-panel', { state, progress: { done: 320, of: 1000 } })),
    specimen('try-panel, played', 'whole', made('try-panel', { state, result })),
    specimen(
      'try-panel, never late',
      'whole',
      made('try-panel', { state, result: { ...result, orders: [], resources: [], spoilShare: 0 } }),
    ),
    specimen('try-panel, failed', 'whole', made('try-panel', { state, fault: 'no plan' })),
  ];
}
