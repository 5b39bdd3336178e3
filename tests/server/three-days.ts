import { assert } from '../../shared/result.ts';
import type { Floor } from '../domain/support/floor.ts';
import { bringInCommand, SERVICE_DATE } from '../domain/support/harbour.ts';
import { SERVER_DEVICE } from '../domain/support/ids.ts';
import { COUNTRY_20, feedPot, levainFile, levainFloor, POT, type Listed } from '../domain/support/levain-house.ts';

export const SECOND_DAY = '2026-03-08';
export const THIRD_DAY = '2026-03-09';

/** The workpiece with a tag on a day: tags begin anew every day, a pot keeps its own. */
export function idOn(floor: Floor, serviceDate: string, tag: string): string {
  const found = Object.values(floor.state.workpieces).find((workpiece) => workpiece.tag === tag && workpiece.serviceDate === serviceDate);
  assert(found !== undefined, `${tag} is there on ${serviceDate}`);
  return found.id;
}

/** What is weighed for a pot's next feed is weighed once that has begun. */
export function startFeed(floor: Floor): void {
  floor.ok({ type: 'startStep', workpieceId: floor.id('L1'), stepId: 'feed' });
}

/** Weighs a line from lots. */
export function weigh(floor: Floor, tag: string, lineId: string, ...lotNumbers: readonly string[]): void {
  const grams = 100;
  floor.ok({ type: 'weighIngredient', workpieceId: floor.id(tag), lineId, grams, lotNumbers: [...lotNumbers] });
}

/** Takes of a pot or filling for what is made on a day. */
export function draw(floor: Floor, from: string, to: string, serviceDate = SERVICE_DATE): void {
  const into = { fromWorkpieceId: floor.id(from), toWorkpieceId: idOn(floor, serviceDate, to) };
  floor.ok({ type: 'drawFrom', ...into, grams: 200, despite: ['lastOfFerment'] });
}

function nextDay(floor: Floor, serviceDate: string, ...listed: readonly Listed[]): void {
  floor.wait(600);
  floor.ok(bringInCommand(levainFile(listed), floor.nowMs, serviceDate), { deviceId: SERVER_DEVICE });
}

/** A pot kept over three days, fed on each; on each a dough takes of it. The second day's flour is weighed after that day's draw. */
export function threeDays(): Floor {
  const floor = levainFloor(POT, COUNTRY_20);
  weigh(floor, 'L1', '0-1', 'FLOUR-1');
  feedPot(floor, 'L1');
  draw(floor, 'L1', 'C1');
  nextDay(floor, SECOND_DAY, POT, COUNTRY_20);
  draw(floor, 'L1', 'C1', SECOND_DAY);
  startFeed(floor);
  weigh(floor, 'L1', '0-1', 'FLOUR-2');
  feedPot(floor, 'L1');
  nextDay(floor, THIRD_DAY, POT, COUNTRY_20);
  feedPot(floor, 'L1');
  draw(floor, 'L1', 'C1', THIRD_DAY);
  return floor;
}
