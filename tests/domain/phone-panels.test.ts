import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { dayTag } from '../../display/parts/day-tag.ts';
import { zonedDate, zonedInstantMs } from '../../display/parts/zoned-instant.ts';
import { countables, countedCuts, neededG } from '../../display/phone/count-model.ts';
import { carriesOver } from '../../display/phone/day-end-model.ts';
import { feedTimes, usualFeed } from '../../display/phone/feed-model.ts';
import { factsOf } from '../../display/phone/floor-facts.ts';
import { historyOf, lastEdges, tagParts } from '../../display/phone/history-model.ts';
import { correctionWords, pastClock, pastNotes } from '../../display/phone/history-words.ts';
import { joinChoices, loadParts, putBackChoices } from '../../display/phone/more-model.ts';
import { obstacleModel } from '../../display/phone/obstacle-model.ts';
import { quietWords, standingWords, whoIds } from '../../display/phone/row-words.ts';
import { heldBackG, sourcesOf, takeChoices } from '../../display/phone/takes-model.ts';
import { whereChoice } from '../../display/phone/where-model.ts';
import { canHelp, equalLoads, handOverTo, quarterCounts } from '../../display/phone/work-model.ts';
import { madeG } from '../../shared/documents/amounts.ts';
import { rowOf, type Row } from '../../shared/floor/board.ts';
import { productOf, wayOf } from '../../shared/floor/way.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { boardRow } from './support/board-row.ts';
import { Floor } from './support/floor.ts';
import { PHONE } from './support/ids.ts';
import { COUNTRY_20, levainFloor, POT } from './support/levain-house.ts';

const MINUTE_MS = 60_000;
const row = (more: Partial<Row> = {}): Row => boardRow(1, { helperIds: [], shortPieces: 0, stock: null, joins: null, ...more });

function actionOf(floor: Floor, tag: string): ReturnType<typeof floor.due>['action'] {
  return floor.due(tag).action;
}

/** The state with one workpiece as said. */
function withPiece(state: FloorState, piece: Workpiece): FloorState {
  return { ...state, workpieces: { ...state.workpieces, [piece.id]: piece } };
}

describe('tags of other days', () => {
  test('say their weekday, those of the floor’s own day do not', () => {
    expect(dayTag('C1', '2026-03-06', '2026-03-07')).toBe('Fri C1');
    expect(dayTag('C1b·2', '2026-03-07', '2026-03-07')).toBe('C1b·2');
    expect(dayTag('C1', '2026-03-06', null)).toBe('C1');
  });
});

describe('clock times in the house’s zone', () => {
  // Checked against another implementation, temporal-polyfill, whose `compatible` is ECMAScript Temporal's rule for gaps and repeats.
  test.each([
    ['Europe/London', '2026-03-07'],
    ['Europe/London', '2026-03-29'],
    ['Europe/London', '2026-10-25'],
    ['Australia/Lord_Howe', '2026-04-05'],
    ['Australia/Lord_Howe', '2026-10-04'],
    ['America/St_Johns', '2026-03-08'],
    ['Asia/Kathmandu', '2026-07-01'],
  ])('%s on %s, every quarter of an hour', (zone, date) => {
    for (let minutes = 0; minutes < 24 * 60; minutes += 15) {
      const wanted = Temporal.PlainDate.from(date)
        .toPlainDateTime({ hour: Math.floor(minutes / 60), minute: minutes % 60 })
        .toZonedDateTime(zone, { disambiguation: 'compatible' });
      expect(zonedInstantMs(date, minutes, zone), `${minutes} min`).toBe(wanted.epochMilliseconds);
    }
  });

  test('a date is the zone’s own', () => {
    const lateMs = Date.UTC(2026, 5, 30, 23, 30);
    expect(zonedDate(lateMs, 'Europe/London')).toBe('2026-07-01');
    expect(zonedDate(lateMs, 'UTC', 1)).toBe('2026-07-01');
  });

  test('feeds are offered at 22:00 and 05:00 through the night when summer time ends', () => {
    const saturdayMs = zonedInstantMs('2026-10-24', 15 * 60, 'Europe/London');
    const [tonight, morning] = feedTimes(saturdayMs, 'Europe/London');
    expect(tonight?.feedMs).toBe(Date.UTC(2026, 9, 24, 21));
    expect(morning?.feedMs).toBe(Date.UTC(2026, 9, 25, 5));
  });
});

describe('work under way', () => {
  test('can be helped with from another station, handed to any other', () => {
    const work = row({ phase: 'working', stationId: 'bench' });
    expect(canHelp(work, 'oven')).toBe(true);
    expect(canHelp(work, 'bench')).toBe(false);
    expect(canHelp(work, null)).toBe(false);
    expect(canHelp({ ...work, helperIds: ['oven'] }, 'oven')).toBe(false);
    expect(canHelp(row({ phase: 'resting', stationId: 'bench' }), 'oven')).toBe(false);
    const stations = Floor.harbour().state.kitchen?.document.stations ?? [];
    expect(handOverTo(work, stations).map((station) => station.id)).toEqual(
      stations.map((station) => station.id).filter((id) => id !== 'bench'),
    );
    expect(whoIds({ ...work, helperIds: ['oven'] })).toEqual(['bench', 'oven']);
  });

  test('counts by quarters, and loads as equal as they can be', () => {
    expect(quarterCounts(10)).toEqual([3, 5, 8, 10]);
    expect(quarterCounts(2)).toEqual([1, 2]);
    for (let pieces = 1; pieces < 60; pieces += 1) {
      for (const loads of [2, 3, 4]) {
        const split = equalLoads(pieces, loads);
        expect(split.reduce((sum, count) => sum + count, 0)).toBe(pieces);
        expect(Math.max(...split) - Math.min(...split)).toBeLessThanOrEqual(1);
      }
    }
  });

  test('tells a shortfall, a ripe window, what a prep joins and from when it may be begun', () => {
    expect(quietWords(row({ pieces: 8, shortPieces: 2 }), 'UTC')).toContain('2 short');
    const stock = { grams: 1, seedG: 1, ripeFromMs: 260 * MINUTE_MS, ripeToMs: 480 * MINUTE_MS };
    expect(standingWords(row({ stock }), 'UTC', 0)).toEqual(['ripe 04:20–08:00']);
    const joins = { tag: 'O1', joinsMs: 350 * MINUTE_MS, notBeforeMs: 320 * MINUTE_MS };
    expect(standingWords(row({ phase: 'planned', joins }), 'UTC', 0)).toEqual(['joins O1 05:50', 'not before 05:20']);
    expect(standingWords(row({ phase: 'planned', joins }), 'UTC', 330 * MINUTE_MS)).toEqual(['joins O1 05:50']);
  });
});

describe('where a dough really is', () => {
  test('further: all steps ahead of the one under way; not so far: those behind, the nearest first', () => {
    const floor = Floor.harbour().bringTo('M1', 'bulk');
    const piece = floor.piece('M1');
    const ids = wayOf(floor.state, piece).map((step) => step.id);
    const { ahead, behind } = whereChoice(floor.state, piece);
    expect(ahead.map((step) => step.stepId)).toEqual(ids.slice(ids.indexOf('bulk') + 1));
    expect(behind.map((step) => step.stepId)).toEqual(ids.slice(0, ids.indexOf('bulk')).reverse());
    const speeds = behind.filter((step) => step.verb === 'secondSpeed');
    expect(speeds.map((step) => step.nth)).toEqual([2, 1]);
  });

  test('a step not begun can be the one it is at', () => {
    const floor = Floor.harbour();
    expect(whereChoice(floor.state, floor.piece('M1')).ahead[0]?.stepId).toBe('weigh');
  });
});

describe('what was said', () => {
  test('stands with its times, the newest first, and says what nobody tapped', () => {
    const floor = Floor.harbour().bringTo('M1', 'bulk');
    const pasts = historyOf(floor.state, floor.piece('M1'));
    expect(pasts[0]).toMatchObject({ stepId: 'bulk', status: 'started', isInferred: false });
    expect(pasts.at(-1)?.stepId).toBe('weigh');
    const [bulk] = pasts;
    if (bulk === undefined) expect.fail('no history');
    expect(pastClock(bulk, 'UTC')).toMatch(/^\d\d:\d\d–$/);
    expect(pastNotes(floor.state, { ...bulk, isInferred: true, despite: ['changeOver'] })).toEqual(
      expect.arrayContaining(['(not tapped)', 'mixer not cleaned between']),
    );
    expect(lastEdges(pasts).map((edge) => [edge.stepId, edge.edge])).toEqual([
      ['bulk', 'start'],
      ['turn-out', 'end'],
    ]);
  });

  test('corrections read as before and after', () => {
    const floor = Floor.harbour();
    const at = { atMs: 0, deviceId: PHONE };
    const say = (correction: Parameters<typeof correctionWords>[2]): string =>
      correctionWords(floor.state, floor.id('M1'), correction, 'UTC');
    expect(say({ what: 'end', stepId: 'weigh', from: 260 * MINUTE_MS, to: 255 * MINUTE_MS, ...at })).toBe('weigh out done 04:20 → 04:15');
    expect(say({ what: 'count', stepId: null, from: 30, to: 28, ...at })).toBe('pieces 30 → 28');
    expect(say({ what: 'tag', stepId: null, from: 'M1', to: 'M2', ...at })).toBe('tag M1 → M2');
  });

  test('a tag keeps its letters and its cut', () => {
    expect(tagParts('Ch12b·2')).toEqual({ letters: 'Ch', number: 12, rest: 'b·2' });
    expect(tagParts('?')).toBeNull();
  });
});

describe('counting at the divide', () => {
  test('of several products and of one, planned beforehand; weights agree with the products', () => {
    const floor = Floor.harbour().bringTo('M1', 'bulk');
    const items = countables(floor.state, floor.piece('M1'), actionOf(floor, 'M1'));
    expect(items.map((item) => item.planned)).toEqual([30, 30]);
    const counts = new Map([[items[0]?.productId ?? '', 27]]);
    expect(neededG(items, new Map()) - neededG(items, counts)).toBe(3 * (items[0]?.pieceG ?? 0));
    const cuts = countedCuts(items, new Map([[items[0]?.productId ?? '', 0]]));
    expect(cuts).toEqual([{ productId: items[1]?.productId, pieces: 30 }]);
    floor.ok({ type: 'finishStep', workpieceId: floor.id('M1'), stepId: 'divide', cuts: countedCuts(items, counts) });
    expect(floor.piece('M1a').pieces).toBe(27);
  });

  test('of one product: the tap is accepted and the count is what was said', () => {
    const floor = Floor.harbour().bringTo('R1', 'bulk');
    const items = countables(floor.state, floor.piece('R1'), actionOf(floor, 'R1'));
    expect(items).toHaveLength(1);
    const pieces = (items[0]?.planned ?? 0) - 1;
    const cuts = countedCuts(items, new Map([[items[0]?.productId ?? '', pieces]]));
    floor.ok({ type: 'finishStep', workpieceId: floor.id('R1'), stepId: 'divide', cuts });
    expect(floor.piece('R1').pieces).toBe(pieces);
  });

  test('nothing is counted elsewhere', () => {
    const floor = Floor.harbour();
    expect(countables(floor.state, floor.piece('M1'), actionOf(floor, 'M1'))).toEqual([]);
  });
});

describe('what goes in', () => {
  test('water held back is its per cent of the flour', () => {
    const floor = Floor.harbour().bringTo('C1', 'stand');
    const piece = floor.piece('C1');
    const step = wayOf(floor.state, piece).find((candidate) => candidate.additions.some((addition) => addition.heldBack));
    if (step === undefined) expect.fail('no water is held back');
    const pct = step.additions.find((addition) => addition.heldBack)?.pct ?? expect.fail('no per cent');
    const heldG = heldBackG(floor.state, piece, step) ?? 0;
    // Baker's per cent are of the flour, of which a dough is the greater part but never all.
    expect(heldG).toBeGreaterThan((pct / 100) * piece.grams * 0.5);
    expect(heldG).toBeLessThan((pct / 100) * piece.grams);
    expect(heldBackG(floor.state, piece, wayOf(floor.state, piece)[0] ?? step)).toBeNull();
  });

  test('sources are pots and preps that stand on the floor, never the dough itself', () => {
    const floor = Floor.harbour();
    const dough = floor.piece('M1');
    const pot: Workpiece = { ...floor.piece('C1'), kind: 'ferment', grams: 1500 };
    const state = withPiece(floor.state, pot);
    expect(sourcesOf(state, dough).map((source) => source.workpieceId)).toContain(pot.id);
    expect(sourcesOf(state, pot).map((source) => source.workpieceId)).not.toContain(pot.id);
    expect(sourcesOf(withPiece(state, { ...pot, finishedMs: 1 }), dough).map((source) => source.workpieceId)).not.toContain(pot.id);
  });

  test('the source that the card names first is the one that a tap draws on', () => {
    const floor = levainFloor(POT, COUNTRY_20);
    floor.finish('L1', 'feed');
    floor.bringTo('C1', 'add');
    const { action } = floor.due('C1');
    const [take] = takeChoices(floor.state, floor.piece('C1'), action, floor.nowMs);
    floor.finish('C1', action.id);
    const [edge] = floor.state.edges.filter((one) => one.kind === 'draw');
    expect(take?.sources.map((source) => source.tag)).toContain('L1');
    expect(edge?.fromId).toBe(take?.sources[0]?.workpieceId);
  });

  test('a feed by the formula makes what is planned, with no more seed than the pot has', () => {
    const floor = Floor.harbour();
    const model = floor.piece('C1');
    const formula = Object.values(floor.state.formulas).find((candidate) => candidate.id === model.formulaId);
    if (formula === undefined) expect.fail('no formula');
    const first = { ...model, kind: 'ferment' as const, grams: madeG(formula), stock: { seedG: 100, fedMs: null, plannedFeeds: [] } };
    const feed = usualFeed(floor.state, first) ?? expect.fail('no feed');
    expect(Math.abs(feed.seedG + feed.flourG + feed.waterG - first.grams)).toBeLessThanOrEqual(2);
    const poor = { ...first, grams: 1, stock: { seedG: 100, fedMs: 1, plannedFeeds: [{ feedMs: 2, grams: 1000 }] } };
    const fed = usualFeed(floor.state, poor) ?? expect.fail('no feed');
    expect(fed.seedG).toBeLessThanOrEqual(1);
    expect(Math.abs(fed.seedG + fed.flourG + fed.waterG - 1000)).toBeLessThanOrEqual(2);
    expect(usualFeed(floor.state, model)).toBeNull();
  });
});

describe('what is said once in a day', () => {
  test('loads are of what has been counted as one product and is not in the oven', () => {
    const floor = Floor.harbour().bringTo('M1', 'divide');
    floor.finish('M1');
    const cut = floor.piece('M1a');
    expect(productOf(floor.state, cut)).not.toBeNull();
    expect(loadParts(cut)).toEqual([2, 3, 4]);
    expect(loadParts({ ...cut, pieces: 3 })).toEqual([2, 3]);
    expect(loadParts({ ...cut, slotIds: ['top-left'] })).toEqual([]);
    expect(loadParts({ ...cut, kind: 'load' })).toEqual([]);
  });

  test('one tub is for mixes of one formula at one step', () => {
    const floor = Floor.harbour();
    const c1 = floor.piece('C1');
    const twin: Workpiece = { ...c1, id: floor.id('M1'), tag: 'C9', serviceDate: '2026-03-06' };
    const state = withPiece(floor.state, twin);
    expect(joinChoices(state, c1)).toContainEqual({ workpieceId: twin.id, tag: 'Fri C9' });
    expect(joinChoices(withPiece(floor.state, { ...twin, formulaVersion: 99 }), c1).map((choice) => choice.tag)).not.toContain('Fri C9');
  });

  test('only scrap goes back, and only into a bowl whose formula takes it', () => {
    const floor = Floor.harbour().bringTo('C1', 'stand');
    const scrap = { ...floor.piece('R1'), scrapG: 250 };
    const formulas = Object.fromEntries(
      Object.entries(floor.state.formulas).map(([key, formula]) => [
        key,
        formula.id === floor.piece('C1').formulaId
          ? { ...formula, takesBack: [{ what: 'scrap' as const, capPct: 10, ageMin: 600 }] }
          : { ...formula, takesBack: [] },
      ]),
    );
    const state = withPiece({ ...floor.state, formulas }, scrap);
    const [choice, ...rest] = putBackChoices(state, floor.piece('C1'));
    expect(rest).toEqual([]);
    expect(choice).toMatchObject({ from: { workpieceId: scrap.id }, to: { workpieceId: floor.id('C1') }, whats: ['scrap'], mostG: 250 });
    expect(putBackChoices(withPiece(state, { ...scrap, scrapG: 0 }), floor.piece('C1'))).toEqual([]);
  });

  test('what goes over at the end of the day is all that is open', () => {
    const floor = Floor.harbour();
    const open = Object.values(floor.state.workpieces).filter((workpiece) => workpiece.finishedMs === null);
    expect(
      carriesOver(floor.state, floor.nowMs)
        .map((over) => over.workpieceId)
        .sort(),
    ).toEqual(open.map((workpiece) => workpiece.id).sort());
  });
});

describe('ways out in words', () => {
  const none = { slotIds: [], mixerId: null, placeId: null, fromTag: null };
  const effect = { delayMin: 0, roleThen: 'call', overTargetMin: 0, overLatestMin: null, placeC: null, pieces: null } as const;

  test('say what to do, and what it does to the dough', () => {
    const floor = Floor.harbour().bringTo('R1', 'load');
    const shown = rowOf(floor.state, floor.id('R1'), floor.nowMs) ?? expect.fail('no row');
    const command = { type: 'hearAllCalls' } as const;
    const model = obstacleModel(
      floor.state,
      { ...shown, pieces: 16, leaveOut: 'Bake from cold' },
      {
        refusal: { code: 'changeOverNeeded', tag: 'R1', stepId: 'load', mixerId: 'spiral', allergens: ['milk', 'egg'], cleanMin: 10 },
        waysOut: [
          { kind: 'wait', command, ...none, effect: { ...effect, delayMin: 9, overTargetMin: 4, roleThen: 'late' } },
          { kind: 'otherSlot', command, ...none, slotIds: ['top-left'], effect: { ...effect, placeC: 235 } },
          { kind: 'part', command, ...none, effect: { ...effect, pieces: 8 } },
          { kind: 'chill', command, ...none, placeId: 'cold-room', effect: { ...effect, delayMin: 30, placeC: 4 } },
          { kind: 'clean', command, ...none, mixerId: 'spiral', effect: { ...effect, delayMin: 10 } },
          { kind: 'leaveOut', command, ...none, effect },
          { kind: 'goOn', command, ...none, effect },
        ],
      },
      factsOf(floor.state, [], PHONE),
      'C',
    );
    expect(model.words).toBe('Spiral may have milk and egg in it: clean it first, 10 min.');
    expect(model.ways.map(({ act, effect: does }) => [act, does])).toEqual([
      ['Wait 9 min', '4 min over, late'],
      ['Into Top left', 'at 235 °C instead of 245 °C'],
      ['8 of 16 now', ''],
      ['Chill: Cold room', 'at 4 °C · calls in 30 min'],
      ['Clean first, 10 min', ''],
      ['Bake from cold', ''],
      ['Go on all the same', 'milk and egg may be in Spiral: allergens'],
    ]);
  });
});
