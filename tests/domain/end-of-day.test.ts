import { describe, expect, test } from 'vitest';
import { Floor } from './support/floor.ts';
import { given } from './support/given.ts';
import { bringInCommand, harbourFile, SERVICE_DATE } from './support/harbour.ts';
import { SERVER_DEVICE } from './support/ids.ts';

const NEXT_DATE = '2026-03-08';

function carriedTags(floor: Floor): string[] {
  const closed = floor.recorded.map((recorded) => recorded.event).findLast((event) => event.type === 'dayClosed');
  return (closed?.carriedOver ?? []).map((id) => floor.state.workpieces[id]?.tag ?? '?');
}

/** The same day again on the next date, beside what is there. */
function nextDay(floor: Floor): void {
  const file = harbourFile();
  const [first, ...others] = bringInCommand(file, floor.nowMs, NEXT_DATE).batches;
  floor.ok(
    { ...bringInCommand(file, floor.nowMs, NEXT_DATE), batches: first === undefined ? others : [first] },
    { deviceId: SERVER_DEVICE },
  );
}

describe('D28 the end of a day', () => {
  test('what is open carries over, begun or not, sorted by tag; what is off the floor does not', () => {
    const floor = Floor.harbour();
    const tags = Object.values(floor.state.workpieces).map((workpiece) => workpiece.tag);
    floor.only('C3', 'R2', 'C1', 'Ch1').bringTo('C1', 'bulk-1');
    floor.ok({ type: 'closeDay', serviceDate: SERVICE_DATE });
    expect(tags.length).toBeGreaterThan(4);
    expect(carriedTags(floor)).toEqual(['C1', 'C3', 'Ch1', 'R2']);
    expect(floor.state.openDates).toEqual([]);
  });

  test('what carries over goes on as it was', () => {
    const floor = Floor.harbour().bringTo('C1', 'bulk-1');
    const before = floor.state.workpieces;
    floor.ok({ type: 'closeDay', serviceDate: SERVICE_DATE });
    expect(floor.state.workpieces).toEqual(before);
    floor.bringTo('C1', 'pack').finish('C1', 'pack');
    expect(floor.piece('C1')).toMatchObject({ ending: 'finished', serviceDate: SERVICE_DATE });
  });

  test('a day that is over is not planned again', () => {
    const floor = Floor.harbour();
    floor.ok({ type: 'closeDay', serviceDate: SERVICE_DATE });
    expect(floor.give(bringInCommand(harbourFile(), floor.nowMs)).decision).toEqual({
      ok: false,
      fault: { code: 'dayAlreadyOpen', serviceDate: SERVICE_DATE },
    });
  });

  test('of days before too, but not of the day after', () => {
    const floor = Floor.harbour().only('R1');
    nextDay(floor);
    floor.ok({ type: 'closeDay', serviceDate: SERVICE_DATE });
    expect(carriedTags(floor)).toEqual(['R1']);
    expect(floor.state.openDates).toEqual([NEXT_DATE]);
    floor.ok({ type: 'closeDay', serviceDate: NEXT_DATE });
    const ofNext = Object.values(floor.state.workpieces).filter((workpiece) => workpiece.serviceDate === NEXT_DATE);
    expect(ofNext.length).toBeGreaterThan(0);
    expect(carriedTags(floor)).toEqual(expect.arrayContaining(['R1', ...ofNext.map((workpiece) => workpiece.tag)]));
    expect(carriedTags(floor)).toHaveLength(ofNext.length + 1);
  });

  test('a day is closed once, and only when it was opened', () => {
    given()
      .when(() => ({ type: 'closeDay', serviceDate: NEXT_DATE }))
      .thenRefusal<'dayNotOpen'>({ code: 'dayNotOpen', serviceDate: NEXT_DATE });
    given((floor) => {
      floor.ok({ type: 'closeDay', serviceDate: SERVICE_DATE });
    })
      .when(() => ({ type: 'closeDay', serviceDate: SERVICE_DATE }))
      .thenRefusal<'dayNotOpen'>({ code: 'dayNotOpen', serviceDate: SERVICE_DATE });
  });
});
