import { readFileSync } from 'node:fs';
import { openDues } from '../../shared/floor/due.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import { readBakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { Floor } from '../domain/support/floor.ts';
import { bringInCommand } from '../domain/support/harbour.ts';
import { SERVER_DEVICE } from '../domain/support/ids.ts';
import { HARBOUR } from './places.ts';
import { lineOf, lineWithFloor, type Line, type Round } from './report.ts';
import { percentile } from './statistics.ts';

const RESTING = 60;
const PASSES = 200;
const AIM = '≤ 5 ms';
const READ_C = [18, 22, 25.5, 29];

/**
 * Due times of 60 doughs at rest that were read, moved to the cold and back: all of them reckoned anew, as after a door was left open. The
 * floor is the same 60 of which nobody has read the warmth, so that their minutes count as they are.
 */
export function dueTimes(rounds: number): Promise<readonly Line[]> {
  const { read, unread } = staged();
  const first = passMs(read);
  const measured: Round[] = [];
  const slowest: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const [ours, floors] = [[] as number[], [] as number[]];
    for (let pass = 0; pass < PASSES; pass += 1) {
      ours.push(passMs(read));
      floors.push(passMs(unread));
    }
    measured.push({ value: percentile(ours, 0.5), floor: percentile(floors, 0.5) });
    slowest.push(percentile(ours, 0.95));
  }
  return Promise.resolve([
    lineWithFloor(`due times of ${RESTING} doughs at rest, all reckoned anew`, 'ms', AIM, measured),
    lineOf('the same, 95th percentile', 'ms', AIM, slowest),
    lineOf('the same, the first time in a process', 'ms', AIM, [first]),
  ]);
}

/** One look at all due times, with nothing remembered of the doughs from the last. */
function passMs(state: FloorState): number {
  const workpieces: Record<string, Workpiece> = Object.fromEntries(
    Object.entries(state.workpieces).map(([id, workpiece]) => [id, { ...workpiece }]),
  );
  const forgotten: FloorState = { ...state, workpieces };
  const fromMs = performance.now();
  const dues = openDues(forgotten);
  const ms = performance.now() - fromMs;
  assert(dues.length === RESTING, `${RESTING} doughs rest`);
  return ms;
}

function staged(): { readonly read: FloorState; readonly unread: FloorState } {
  const json = JSON.parse(readFileSync(HARBOUR, 'utf8')) as { day: { batches: unknown[] } };
  json.day.batches = Array.from({ length: RESTING }, () => ({
    formula: 'country',
    start: { afterLoadMin: 0 },
    doughG: 9200,
    cuts: [{ product: 'country-loaf', pieces: 10 }],
  }));
  const file = readBakehouseFile(json);
  assert(file.ok, file.ok ? '' : JSON.stringify(file.fault));
  const floor = new Floor();
  floor.ok(bringInCommand(file.value, floor.nowMs), { deviceId: SERVER_DEVICE });
  const ids = Object.keys(floor.state.workpieces);
  for (const workpieceId of ids) floor.ok({ type: 'sayWhere', workpieceId, stepId: 'bulk-1' }, { deviceId: SERVER_DEVICE });
  const unread = floor.state;
  ids.forEach((workpieceId, index) => {
    const said = (celsius: number): string =>
      floor.ok({ type: 'readTemperature', workpieceId, where: 'dough', celsius, despite: ['wildReading'] });
    said(READ_C[index % READ_C.length] ?? 25);
    if (index % 3 === 0) floor.ok({ type: 'moveWorkpiece', workpieceId, placeId: 'cold-room' });
  });
  floor.wait(20).ok({ type: 'openPlace', placeId: 'cold-room', minutes: 5 });
  ids.forEach((workpieceId, index) => {
    if (index % 6 === 0) floor.ok({ type: 'moveWorkpiece', workpieceId, placeId: 'bench' });
  });
  return { read: floor.state, unread };
}
