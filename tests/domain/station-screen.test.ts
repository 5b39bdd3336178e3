import { describe, expect, test, vi } from 'vitest';
import { SteadyRows } from '../../display/parts/steady-rows.ts';
import { unsentIds } from '../../display/parts/unsent-ids.ts';
import { IDLE_MS, isLeftAlone } from '../../display/station/idle.ts';
import { stationFor } from '../../display/station/kept-station.ts';
import { deckLines, mixerLines, stationList } from '../../display/station/station-model.ts';
import { StayLit, type Lit, type ScreenLocks } from '../../display/station/stay-lit.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { boardRow } from './support/board-row.ts';
import { Floor } from './support/floor.ts';
import { idOf } from './support/ids.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

describe('T2 a station’s screen shows what the station has to do, the most pressing opened', () => {
  const lost = boardRow(1, { stationIds: ['oven'], role: 'lost' });
  const late = boardRow(2, { stationIds: ['bench'], role: 'late' });
  const anybodys = boardRow(3, { role: 'call' });
  const mixing = boardRow(4, { stationIds: ['mixer'] });
  const shared = boardRow(5, { stationIds: ['mixer', 'bench'] });
  const rows = [lost, late, anybodys, mixing, shared];

  test('its own rows and what is anybody’s, in the order of the wall', () => {
    const { open, rest } = stationList(rows, 'mixer', null);
    expect([open, ...rest]).toEqual([anybodys, mixing, shared]);
  });

  test('what a thumb asked for stands open as long as it is on the floor, also from elsewhere', () => {
    const asked = stationList(rows, 'mixer', shared.workpieceId);
    expect([asked.open, asked.rest]).toEqual([shared, [anybodys, mixing]]);
    const helping = stationList(rows, 'mixer', late.workpieceId);
    expect([helping.open, helping.rest]).toEqual([late, [anybodys, mixing, shared]]);
    expect(stationList([mixing], 'mixer', late.workpieceId).open).toBe(mixing);
  });

  test('one line for what is late or being lost elsewhere, in the strongest of its roles', () => {
    expect(stationList(rows, 'mixer', null).elsewhere).toEqual({ first: lost, role: 'lost', more: 1 });
    expect(stationList(rows, 'oven', null).elsewhere).toEqual({ first: late, role: 'late', more: 0 });
    expect(stationList([lost, mixing], 'oven', null).elsewhere).toBeNull();
    expect(stationList(rows, 'oven', late.workpieceId).elsewhere).toBeNull();
  });

  test('a station without work has nothing open', () => {
    expect(stationList([late], 'oven', null)).toMatchObject({ open: null, rest: [] });
  });
});

describe('T3 a station’s machines are told as the floor has them', () => {
  test('mixers with what is in them, at the station that works them and at no other', () => {
    const floor = Floor.harbour().bringTo('C1', 'first-speed');
    floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'planetary' }, why: 'cleaning', minutes: 20 });
    const lines = mixerLines(floor.state, 'mixer', floor.nowMs);
    expect(lines.map(({ mixer, row, block }) => [mixer.id, row?.tag ?? null, block?.why ?? null])).toEqual([
      ['spiral', 'C1', null],
      ['planetary', null, 'cleaning'],
    ]);
    expect(mixerLines(floor.state, 'mixer', floor.nowMs + 20 * MINUTE_MS).map(({ block }) => block)).toEqual([null, null]);
    expect(mixerLines(floor.state, 'bench', floor.nowMs)).toEqual([]);
  });

  test('decks with what is in each slot and when it comes out, and what goes in next', () => {
    const floor = Floor.harbour().bringTo('R1', 'load');
    floor.ok({ type: 'finishStep', workpieceId: floor.id('R1'), stepId: 'load', slotIds: ['bottom-left'] });
    const bottom = deckLines(floor.state, 'oven', floor.nowMs, 3 * HOUR_MS).find((deck) => deck.deckId === 'bottom');
    expect(bottom?.freeMs).toBe(floor.due('R1').dueMs);
    expect(bottom?.slots[0]?.inside).toEqual({ tag: 'R1', outMs: floor.due('R1').dueMs });
    expect(bottom?.slots[1]?.inside).toBeNull();
    const nexts = deckLines(floor.state, 'oven', floor.nowMs, 12 * HOUR_MS).flatMap((deck) =>
      deck.slots.flatMap((slot) => slot.next ?? []),
    );
    expect(nexts.length).toBeGreaterThan(0);
    for (const { fromMs } of nexts) expect(fromMs).toBeGreaterThanOrEqual(floor.nowMs);
    const soon = deckLines(floor.state, 'oven', floor.nowMs, MINUTE_MS).flatMap((deck) => deck.slots.flatMap((slot) => slot.next ?? []));
    for (const { fromMs } of soon) expect(fromMs - floor.nowMs).toBeLessThanOrEqual(MINUTE_MS);
    expect(soon.length).toBeLessThan(nexts.length);
  });

  test('no decks where nobody loads or takes out', () => {
    const floor = Floor.harbour();
    expect(deckLines(floor.state, 'mixer', floor.nowMs, 3 * HOUR_MS)).toEqual([]);
    expect(deckLines(floor.state, 'oven', floor.nowMs, 3 * HOUR_MS).map((deck) => deck.deckId)).toEqual(['top', 'bottom', 'hearth']);
  });
});

describe('T4 a station’s screen goes back to its work by itself', () => {
  test('after sixty seconds without a touch, not before', () => {
    expect(IDLE_MS).toBe(60_000);
    expect([isLeftAlone(5_000, 64_999), isLeftAlone(5_000, 65_000)]).toEqual([false, true]);
  });

  test('time alone changes no place in its list', () => {
    const floor = Floor.harbour().bringTo('C1', 'stand');
    const rows = new SteadyRows();
    const before = rows.at(floor.state, floor.nowMs).map((row) => row.workpieceId);
    const later = rows.at(floor.state, floor.nowMs + 90 * MINUTE_MS);
    expect(later.map((row) => row.workpieceId)).toEqual(before);
    // The roles have changed meanwhile: a list that was sorted anew would stand otherwise.
    expect(new SteadyRows().at(floor.state, floor.nowMs + 90 * MINUTE_MS).map((row) => row.workpieceId)).not.toEqual(before);
  });

  test.each([
    ['?station=oven', 'bench', 'oven'],
    ['', 'bench', 'bench'],
    ['?station=NO%20KEY', 'bench', 'bench'],
    ['', '<b>', null],
    ['', null, null],
  ])('opened as %s where %s is kept it stands at %s', (query, keptId, stationId) => {
    expect(stationFor(new URLSearchParams(query), keptId)).toBe(stationId);
  });
});

describe('T4 taps that the server has not got are told at their doughs', () => {
  test('at the one that a tap is about, at all that are joined, at the one that takes', () => {
    const [a, b, c, d, sent] = [1, 2, 3, 4, 5].map(idOf) as [string, string, string, string, string];
    const tap = (command: ClientCommand, isSent = false) => ({ commandId: idOf(9), command, tapMs: 0, isSent });
    const kept = [
      tap({ type: 'hearCall', workpieceId: a, stepId: 'fold-1' }),
      tap({ type: 'joinWorkpieces', workpieceIds: [b, c] }),
      tap({ type: 'drawFrom', fromWorkpieceId: sent, toWorkpieceId: d, grams: 100 }),
      tap({ type: 'hearCall', workpieceId: sent, stepId: 'fold-1' }, true),
      tap({ type: 'hearAllCalls' }),
    ];
    expect([...unsentIds({ kept })].toSorted()).toEqual([a, b, c, d].toSorted());
  });
});

describe('T5 the screen is kept lit where the browser can, and the page says where it cannot', () => {
  /** A browser with its screen wake lock, which can be released and refused. */
  function browser(answer: 'grants' | 'refuses' = 'grants') {
    const told: Lit[] = [];
    const world = { isVisible: true, answer, asked: 0, release: (): void => undefined };
    const locks: ScreenLocks = {
      request: (type) => {
        expect(type).toBe('screen');
        world.asked += 1;
        // The name by the W3C Screen Wake Lock API, "request() method".
        if (world.answer === 'refuses') return Promise.reject(new DOMException('not now', 'NotAllowedError'));
        return Promise.resolve({ addEventListener: (_type: 'release', listener: () => void) => void (world.release = listener) });
      },
    };
    const screen = new StayLit({ locks, isVisible: () => world.isVisible, changed: (lit) => void told.push(lit) });
    return { world, told, screen };
  }

  test('it is asked for once, and again when the page comes back into sight', async () => {
    const { world, told, screen } = browser();
    await Promise.all([screen.look(), screen.look()]);
    await screen.look();
    expect([world.asked, told]).toEqual([1, ['lit']]);
    world.isVisible = false;
    world.release();
    await screen.look();
    expect([world.asked, told]).toEqual([1, ['lit', 'unknown']]);
    world.isVisible = true;
    await screen.look();
    expect([world.asked, told]).toEqual([2, ['lit', 'unknown', 'lit']]);
  });

  test('a browser that refuses is asked again at the next look', async () => {
    const { world, told, screen } = browser('refuses');
    await screen.look();
    world.answer = 'grants';
    await screen.look();
    expect([world.asked, told]).toEqual([2, ['mayDim', 'lit']]);
  });

  test('a screen that is taken back while the page is seen may dim', async () => {
    const { world, told, screen } = browser();
    await screen.look();
    world.release();
    expect(told).toEqual(['lit', 'mayDim']);
  });

  test('a browser without the lock says so, and nothing is thrown', async () => {
    const changed = vi.fn<(lit: Lit) => void>();
    await new StayLit({ locks: null, isVisible: () => true, changed }).look();
    expect(changed.mock.calls).toEqual([['mayDim']]);
  });
});
