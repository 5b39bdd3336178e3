import type { TemplateResult } from 'lit';
import type { BackupsShown } from '../../../../display/kitchen/backup-store.ts';
import type { Chosen } from '../../../../display/kitchen/chosen.ts';
import '../../../../display/kitchen/draft-bar.ts';
import type { DraftStanding } from '../../../../display/kitchen/draft-bar.ts';
import { faultsOfKitchen } from '../../../../display/kitchen/draft-faults.ts';
import { withAdded, withField } from '../../../../display/kitchen/kitchen-edits.ts';
import '../../../../display/kitchen/house-backups.ts';
import '../../../../display/kitchen/kitchen-header.ts';
import { kitchenNow } from '../../../../display/kitchen/kitchen-now.ts';
import '../../../../display/kitchen/kitchen-plan.ts';
import '../../../../display/kitchen/thing-panel.ts';
import type { Hours, Kitchen } from '../../../../shared/documents/kitchen.ts';
import { assert } from '../../../../shared/result.ts';
import { made } from '../made.ts';
import { floorOf } from '../rows.ts';
import type { Scenes } from '../scene.ts';
import { section, shelf, specimen } from '../specimen.ts';

const CHOSEN: readonly Chosen[] = [
  { kind: 'mixer', id: 'spiral' },
  { kind: 'deck', id: 'top' },
  { kind: 'slot', id: 'front' },
  { kind: 'station', id: 'bench' },
  { kind: 'cleaning', id: 'cleaning-1' },
  { kind: 'bench' },
  { kind: 'house' },
];
/** The second lasts no time at all. */
const HOURS: readonly Hours[] = [
  { from: '21:00', to: '05:00', weekdays: [5, 6] },
  { from: '08:00', to: '08:00' },
];
const MADE = { folder: '/media/stick', kept: 31, last: { madeMs: Date.UTC(2026, 2, 7, 4, 0), sequence: 812 }, fault: null, isLate: false };
const SOON_MS = Date.UTC(2026, 2, 7, 4, 20);
const BACKUPS: readonly [readonly [string, BackupsShown], ...(readonly [string, BackupsShown])[]] = [
  ['as it should be', { phase: 'here', status: MADE, atMs: SOON_MS }],
  ['none yet', { phase: 'here', status: { ...MADE, kept: 0, last: null }, atMs: SOON_MS }],
  [
    'late',
    {
      phase: 'here',
      status: { ...MADE, fault: 'ENOSPC: no space left on device, write', isLate: true },
      atMs: SOON_MS + 9 * 24 * 3_600_000,
    },
  ],
  ['being made', { phase: 'making' }],
  ['asked', { phase: 'asking' }],
  ['no answer', { phase: 'failed' }],
  ['not for this device', { phase: 'forbidden' }],
  ['no backups', { phase: 'none' }],
];
const STANDINGS: readonly DraftStanding[] = ['changed', 'overtaken', 'sent', 'kept'];

/** Every part of the kitchen's page: the plan with something chosen, something new and something wrong; panels; the draft. */
export function kitchenSection({ kitchen: { view, nowMs } }: Scenes): TemplateResult {
  const floor = floorOf({ view, nowMs });
  const inForce = floor.kitchen?.document;
  const house = floor.house?.document;
  assert(inForce !== undefined && house !== undefined, 'the scene has no house');
  const kitchen = withFault(inForce);
  const { faults } = faultsOfKitchen(kitchen, floor);
  const common = { kitchen, inForce, house, now: kitchenNow(floor, nowMs), faults };
  const plan = made('kitchen-plan', { context: { ...common, chosen: { kind: 'deck', id: 'top' } } });
  return section('kitchen', 'Parts of the kitchen page', [
    shelf('The plan', [specimen('kitchen-plan', 'whole', plan)], 'stacked'),
    shelf(
      'Panels of things',
      CHOSEN.map((chosen) =>
        specimen(
          `thing-panel, ${chosen.kind}`,
          'on-desk',
          made('thing-panel', { context: { ...common, houseInForce: house, chosen, backups: BACKUPS[0][1] } }),
        ),
      ),
    ),
    shelf(
      'Backups',
      BACKUPS.map(([name, shown]) => specimen(`house-backups, ${name}`, 'on-desk', made('house-backups', { shown, zone: house.zone }))),
    ),
    shelf(
      'The draft',
      STANDINGS.map((standing) =>
        specimen(
          `draft-bar, ${standing}`,
          'whole',
          made('draft-bar', { standing, faults: standing === 'changed' ? faults.map(({ message }) => message) : [] }),
        ),
      ),
      'stacked',
    ),
    shelf('The header', [specimen('kitchen-header', 'whole', made('kitchen-header', { view, nowMs }))], 'stacked'),
  ]);
}

/** A station more, one with hours of its own, a cleaning, and a mixer whose least load is more than its most. */
function withFault(kitchen: Kitchen): Kitchen {
  const station = withAdded(kitchen, 'station', null)?.kitchen ?? kitchen;
  const cleaning = withAdded(station, 'cleaning', null)?.kitchen ?? station;
  const more = withField(cleaning, { kind: 'station', id: 'bench' }, 'hours', HOURS);
  return { ...more, mixers: more.mixers.map((mixer, index) => (index === 0 ? { ...mixer, leastG: mixer.mostG + 1 } : mixer)) };
}
