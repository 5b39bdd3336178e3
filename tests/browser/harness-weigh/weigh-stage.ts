import type { AnsweredTap, FloorView } from '../../../display/link/floor-link.ts';
import { weighOutOf } from '../../../shared/floor/weigh-out.ts';
import type { Workpiece } from '../../../shared/floor/state.ts';
import { assert } from '../../../shared/result.ts';
import { Floor } from '../../domain/support/floor.ts';
import { bringInCommand, demoFile } from '../../domain/support/harbour.ts';
import { idOf, SERVER_DEVICE } from '../../domain/support/ids.ts';
import { phoneView } from '../harness-phone/phone-stage.ts';

/** The demo day at its beginning: nothing is weighed yet. */
export function weighFloor(units: { temperature: 'C' | 'F'; weight: 'g' | 'lb' } = { temperature: 'C', weight: 'g' }): Floor {
  const floor = new Floor();
  const file = demoFile();
  floor.ok(bringInCommand({ ...file, house: { ...file.house, units } }, floor.nowMs), { deviceId: SERVER_DEVICE });
  return floor;
}

/** The first workpiece of a formula on a floor. Throws where there is none. */
export function firstOf(floor: Floor, formulaId: string): Workpiece {
  const found = Object.values(floor.state.workpieces).find((workpiece) => workpiece.formulaId === formulaId);
  assert(found !== undefined, `nothing is made by ${formulaId}`);
  return found;
}

/** Weighs the first lines of a workpiece, all of one lot. */
export function weighFirst(floor: Floor, workpieceId: string, count: number, lot: string): void {
  const workpiece = floor.state.workpieces[workpieceId];
  const out = workpiece === undefined ? null : weighOutOf(floor.state, workpiece);
  for (const line of (out?.parts ?? []).flatMap((part) => part.lines).slice(0, count)) {
    const lotNumbers = line.kind === 'ingredient' && line.ingredientId !== 'water' ? [lot] : [];
    floor.ok({ type: 'weighIngredient', workpieceId, lineId: line.id, grams: line.grams, lotNumbers });
  }
}

/** What a phone in good order is told, with a reading that was refused as wild. */
export function wildView(floor: Floor, workpieceId: string, celsius: number, expectedC: number): FloorView {
  const refused: AnsweredTap = {
    commandId: idOf(77),
    command: { type: 'readTemperature', workpieceId, where: 'dough', celsius },
    outcome: { ok: false, refusal: { code: 'wildReading', celsius, expectedC } },
  };
  return phoneView(floor.state, { lastAnswer: refused });
}

/** The view of a dough that is being weighed, of one whose water is in and that is mixed, and of one in pounds. */
export function weighScenes(): Readonly<
  Record<string, { readonly view: FloorView; readonly nowMs: number; readonly workpieceId: string }>
> {
  const half = halfIn(weighFloor());
  const mixed = mixedFloor();
  const pounds = halfIn(weighFloor({ temperature: 'F', weight: 'lb' }));
  const wildId = mixed.workpieceId;
  return {
    'half in': { view: phoneView(half.floor.state), nowMs: half.floor.nowMs, workpieceId: half.workpieceId },
    mixed: { view: phoneView(mixed.floor.state), nowMs: mixed.floor.nowMs, workpieceId: wildId },
    wild: { view: wildView(mixed.floor, wildId, 34, 26), nowMs: mixed.floor.nowMs, workpieceId: wildId },
    pounds: { view: phoneView(pounds.floor.state), nowMs: pounds.floor.nowMs, workpieceId: pounds.workpieceId },
  };
}

/** A floor with one dough half weighed, on a warm day with a warm tap: ice is wanted. */
export function halfIn(floor: Floor): { readonly floor: Floor; readonly workpieceId: string } {
  const workpieceId = firstOf(floor, 'country').id;
  weighFirst(floor, workpieceId, 2, 'WF-2231');
  const warm = { flour: 27, room: 26, tap: 18 } as const;
  for (const where of ['flour', 'room', 'tap'] as const) floor.ok({ type: 'readTemperature', workpieceId, where, celsius: warm[where] });
  return { floor, workpieceId };
}

/** A floor with one dough that was weighed and watered, and whose first speed runs. */
function mixedFloor(): { readonly floor: Floor; readonly workpieceId: string } {
  const floor = weighFloor();
  const { id: workpieceId, tag } = firstOf(floor, 'olive-flatbread');
  weighFirst(floor, workpieceId, 99, 'WF-2231');
  const model = { workpieceId, waterC: 17, waterG: 905, iceG: 0, flourC: 21, roomC: 22 };
  floor.ok({ type: 'takeWater', ...model });
  while (weighOutOf(floor.state, floor.piece(tag))?.isMixed !== true) floor.finishWhenDue(tag);
  return { floor, workpieceId };
}
