import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readBakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { decide } from '../../shared/floor/decide.ts';
import { projectionOf } from '../../shared/floor/projection.ts';
import type { Workpiece } from '../../shared/floor/state.ts';
import { obstacleOf, type Obstacle, type WayOut } from '../../shared/floor/ways-out.ts';
import { assert } from '../../shared/result.ts';
import { Floor } from './support/floor.ts';
import { bringInCommand, harbourJson } from './support/harbour.ts';
import { idOf, PHONE, SERVER_DEVICE } from './support/ids.ts';
import { COUNTRY_20, feedPot, levainFloor, POT, type Listed } from './support/levain-house.ts';
import { deedArbitrary, meant } from './support/random-day.ts';

const MINUTE_MS = 60_000;

interface KitchenJson {
  mixers: { id: string; leastG: number; mostG: number; changeOverMin?: number }[];
  vessels: { id: string; count: number; turnRoundMin?: number }[];
  restPlaces: { id: string; kind: string; temperatureC: number; room?: number }[];
  ovens: { decks: { id: string; name: string; temperatureC: number; slots: { id: string; name: string }[] }[] }[];
}

interface ProductJson {
  id: string;
  way: { id: string; leaveOut?: string; claims?: { kind: string; ids?: string[]; count?: number; perPieces?: number }[] }[];
}

interface FormulaJson {
  id: string;
  method: { id: string; leaveOut?: string }[];
}

/** The demo day in a kitchen, and with products, that are not quite the demo's. */
function harbourWith(change: (kitchen: KitchenJson, products: readonly ProductJson[], formulas: readonly FormulaJson[]) => void): Floor {
  const json = harbourJson();
  change(json['kitchen'] as KitchenJson, json['products'] as ProductJson[], json['formulas'] as FormulaJson[]);
  const read = readBakehouseFile(json);
  assert(read.ok, read.ok ? '' : JSON.stringify(read.fault));
  const floor = new Floor();
  floor.ok(bringInCommand(read.value, floor.nowMs), { deviceId: SERVER_DEVICE });
  return floor;
}

function obstacle(floor: Floor, tag: string): Obstacle {
  const found = obstacleOf(floor.state, floor.id(tag), floor.nowMs);
  assert(found !== null, `nothing is in the way of ${tag}`);
  return found;
}

function way(floor: Floor, tag: string, kind: WayOut['kind']): WayOut {
  const { waysOut } = obstacle(floor, tag);
  const found = waysOut.find((one) => one.kind === kind);
  assert(found !== undefined, `${tag} is offered ${waysOut.map((one) => one.kind).join(', ')}, not ${kind}`);
  return found;
}

function kinds(floor: Floor, tag: string): readonly string[] {
  return obstacle(floor, tag).waysOut.map((one) => one.kind);
}

/** Takes a way out, as the tap on it does. */
function follow(floor: Floor, taken: WayOut): Floor {
  floor.ok(taken.command);
  return floor;
}

/** Both countries have gone into the deck oven one after the other, it is full, and the rye stands before it. */
function fullOven(floor = Floor.harbour()): Floor {
  floor.only('C1', 'C2', 'R1').bringTo('R1', 'seed').bringTo('C1', 'score').bringTo('C2', 'score');
  floor.bringTo('C1', 'bake').wait(4).bringTo('C2', 'bake').bringTo('R1', 'load');
  return floor;
}

/** What stands in the mixer has begun its first speed, and another dough is weighed and waits for it. */
function busyMixer(first: string, second: string, floor = Floor.harbour()): Floor {
  return floor.only(first, second).bringTo(second, 'fill-bowl').bringTo(first, 'first-speed');
}

/** Boats for two slots stand before an oven in which one is free. */
function oneSlotFree(): Floor {
  const floor = Floor.harbour().only('C1', 'R1', 'Ch1');
  for (const tag of ['C1', 'R1']) floor.bringTo(tag, 'load');
  return floor.bringTo('Ch1', 'top').bringTo('C1', 'bake').bringTo('R1', 'bake').bringTo('Ch1', 'load');
}

/** A rye of eight has its tins in the oven, and another one wants one tin a loaf. */
function fewTins(count: number): Floor {
  const floor = harbourWith((kitchen, products) => {
    for (const vessel of kitchen.vessels) if (vessel.id === 'tin') Object.assign(vessel, { count, turnRoundMin: 20 });
    const tin = products.find((product) => product.id === 'rye-tin')?.way.find((step) => step.id === 'tin');
    assert(tin !== undefined, 'rye goes into tins');
    tin.claims = [{ kind: 'vessel', ids: ['tin'], perPieces: 1 }];
    tin.leaveOut = 'Bake it free';
  });
  return floor.only('R1', 'R2').bringTo('R2', 'tin').bringTo('R1', 'bake').wait(30);
}

/** Milk has been in the planetary, and a dough without wants it. */
function milkBefore(changeOverMin: number): Floor {
  const floor = harbourWith((kitchen) => {
    for (const mixer of kitchen.mixers) if (mixer.id === 'planetary') mixer.changeOverMin = changeOverMin;
  });
  return floor.only('M1', 'O1').bringTo('M1', 'bulk').bringTo('O1', 'fill-bowl');
}

/** The pot has what a country dough takes only with its seed. */
function lastOfPot(): Floor {
  const floor = levainFloor({ ...POT, doughG: 2200 }, COUNTRY_20);
  feedPot(floor, 'L1');
  return floor.wait(480).bringTo('C1', 'add');
}

/** The soaker of the first buns has been spilt; that of the second ones is planned and not begun. */
function spiltSoaker(otherG = 10_000): Floor {
  const buns = (min: number, doughG: number): Listed => ({
    formula: 'buns',
    min,
    doughG,
    cuts: [{ product: 'bun', pieces: doughG / 100 }],
  });
  const floor = levainFloor(buns(200, 10_000), buns(260, otherG));
  const own = soakers(floor).find((one) => one.serves?.workpieceId === floor.id('B1'));
  assert(own !== undefined, 'each batch has its soaker');
  floor.ok({ type: 'discardWorkpiece', workpieceId: own.id, reason: 'spilt' });
  return floor.bringTo('B1', 'add');
}

function soakers(floor: Floor): readonly Workpiece[] {
  return Object.values(floor.state.workpieces).filter((one) => one.formulaId === 'soaker');
}

describe('D36 what is in the way of a due step is told, with the ways out', () => {
  test('where the step can be done nothing is in the way', () => {
    const floor = Floor.harbour().only('R1').bringTo('R1', 'load');
    expect(obstacleOf(floor.state, floor.id('R1'), floor.nowMs)).toBeNull();
  });

  test('a tap that means something else is no obstacle: what is finished, and what nobody knows', () => {
    const floor = Floor.harbour().only('R1');
    expect(obstacleOf(floor.state, floor.id('C1'), floor.nowMs)).toBeNull();
    expect(obstacleOf(floor.state, idOf(77), floor.nowMs)).toBeNull();
  });

  test('a full oven: the refusal as the tap would have it, and what waiting does, by the dough’s own tolerances', () => {
    const floor = fullOven();
    expect(obstacle(floor, 'R1').refusal).toMatchObject({ code: 'noFreeSlot', tag: 'R1', stepId: 'load', takenByTags: ['C1', 'C2'] });
    // The rye wants one slot, and the first country comes out first.
    const outMs = floor.due('C1').dueMs;
    expect(floor.due('C2').dueMs).toBeGreaterThan(outMs);
    const minutes = Math.ceil((outMs - floor.nowMs) / MINUTE_MS);
    expect(minutes).toBeGreaterThan(15);
    const wait = way(floor, 'R1', 'wait');
    expect(wait.command).toEqual({ type: 'holdWorkpiece', workpieceId: floor.id('R1'), stepId: 'load', minutes });
    // The loading of the rye is lost a quarter of an hour after it is due.
    expect(wait.effect).toEqual({
      delayMin: minutes,
      roleThen: 'lost',
      overTargetMin: minutes,
      overLatestMin: minutes - 15,
      placeC: null,
      pieces: null,
    });
  });

  test('another deck with room is offered with its slots and its heat as it is set now', () => {
    const floor = fullOven();
    floor.record({ type: 'deckSet', deckId: 'hearth', temperatureC: 260, atMs: floor.nowMs });
    const other = way(floor, 'R1', 'otherSlot');
    expect(other.slotIds).toEqual(['back']);
    expect(other.effect).toMatchObject({ delayMin: 0, roleThen: 'call', overTargetMin: 0, placeC: 260 });
    follow(floor, other);
    expect(floor.piece('R1').slotIds).toEqual(['back']);
    expect(obstacleOf(floor.state, floor.id('R1'), floor.nowMs)).toBeNull();
  });

  test('a wait that loses the dough stands behind all that do not', () => {
    const floor = fullOven();
    expect(kinds(floor, 'R1')).toEqual(['chill', 'otherSlot', 'wait']);
  });

  test('the milder the heat, the sooner a deck is offered', () => {
    const floor = fullOven(
      harbourWith((kitchen) => {
        kitchen.ovens[1]?.decks.push(
          { id: 'mild', name: 'Mild', temperatureC: 240, slots: [{ id: 'mild-1', name: '1' }] },
          { id: 'warm', name: 'Warm', temperatureC: 270, slots: [{ id: 'warm-1', name: '1' }] },
        );
      }),
    );
    const decks = obstacle(floor, 'R1').waysOut.filter((one) => one.kind === 'otherSlot');
    expect(decks.map((one) => one.effect.placeC)).toEqual([240, 270, 390]);
    expect(kinds(floor, 'R1')[0]).toBe('otherSlot');
  });

  test('the cold takes dough that only waits, and its call is set aside for half an hour', () => {
    const floor = fullOven();
    const chill = way(floor, 'R1', 'chill');
    expect(chill).toMatchObject({ placeId: 'cold-room', effect: { delayMin: 30, placeC: 4 } });
    follow(floor, chill);
    expect(floor.piece('R1')).toMatchObject({ placeId: 'cold-room', heldUntilMs: floor.nowMs + 30 * MINUTE_MS });
    expect(obstacleOf(floor.state, floor.id('R1'), floor.nowMs)).toBeNull();
  });

  test('a cold room that is full takes nothing more', () => {
    const floor = fullOven(
      harbourWith((kitchen) => {
        for (const place of kitchen.restPlaces) if (place.id === 'cold-room') place.room = 1;
      }),
    );
    floor.record({ type: 'workpieceMoved', workpieceId: floor.id('C1'), placeId: 'cold-room', atMs: floor.nowMs });
    expect(kinds(floor, 'R1')).not.toContain('chill');
  });

  test('as much of it as there is room for goes in, and the rest stays', () => {
    const floor = oneSlotFree();
    expect(obstacle(floor, 'Ch1').refusal).toMatchObject({ code: 'noFreeSlot', tag: 'Ch1' });
    const part = way(floor, 'Ch1', 'part');
    // Sixteen boats want two slots of eight, and one is free.
    expect(part).toMatchObject({ command: { loadPieces: 8 }, effect: { delayMin: 0, pieces: 8 } });
    expect(part.slotIds).toHaveLength(1);
    follow(floor, part);
    const parts = floor.piece('Ch1').childIds.map((id) => floor.state.workpieces[id]);
    expect(parts.map((one) => [one?.pieces, one?.slotIds])).toEqual([[8, part.slotIds]]);
    expect(floor.piece('Ch1').pieces).toBe(8);
  });

  test('a deck that is out of order is told as that, and the others are offered', () => {
    const floor = Floor.harbour().only('M1').bringTo('M1', 'divide');
    floor.finish('M1');
    floor.bringTo('M1a', 'load');
    floor.record({ type: 'resourceBlocked', resource: { kind: 'deck', id: 'top' }, why: 'outOfOrder', atMs: floor.nowMs });
    expect(obstacle(floor, 'M1a').refusal).toMatchObject({ code: 'resourceBlocked', resource: { kind: 'deck', id: 'top' } });
    expect(kinds(floor, 'M1a')).not.toContain('wait');
    expect(way(floor, 'M1a', 'otherSlot')).toMatchObject({ slotIds: ['bottom-left'], effect: { placeC: 245 } });
  });

  test('what is being cleaned until an instant is waited for until then', () => {
    const floor = Floor.harbour().only('M1').bringTo('M1', 'divide');
    floor.finish('M1');
    floor.bringTo('M1a', 'load');
    const untilMs = floor.nowMs + 4.5 * MINUTE_MS;
    floor.record({ type: 'resourceBlocked', resource: { kind: 'deck', id: 'top' }, why: 'cleaning', untilMs, atMs: floor.nowMs });
    const wait = way(floor, 'M1a', 'wait');
    expect(wait.effect).toMatchObject({ delayMin: 5, roleThen: 'late', overTargetMin: 5, overLatestMin: 0 });
    follow(floor, wait).wait(5);
    expect(obstacleOf(floor.state, floor.id('M1a'), floor.nowMs)).toBeNull();
  });

  test('a busy mixer is waited for until the dough in it is expected out', () => {
    const floor = busyMixer('C1', 'C2');
    expect(obstacle(floor, 'C2').refusal).toMatchObject({ code: 'mixerBusy', mixerId: 'spiral', busyWithTag: 'C1' });
    // First speed, stand, salt, second speed, turn out: 4 + 20 + 1 + 14 + 3 minutes, and 9 200 g are too much for the planetary.
    expect(way(floor, 'C2', 'wait').effect.delayMin).toBe(42);
    expect(kinds(floor, 'C2')).toEqual(['wait']);
  });

  test('another mixer is offered that takes so much dough, and does nothing to it', () => {
    const floor = busyMixer('C1', 'Ch1');
    const [first] = obstacle(floor, 'Ch1').waysOut;
    expect(first).toMatchObject({ kind: 'otherMixer', mixerId: 'planetary', effect: { delayMin: 0, placeC: null } });
    follow(floor, way(floor, 'Ch1', 'otherMixer'));
    expect(floor.piece('Ch1').mixerId).toBe('planetary');
    expect(obstacleOf(floor.state, floor.id('Ch1'), floor.nowMs)).toBeNull();
  });

  test.each([
    ['too small', 1000, 3399, false],
    ['just large enough', 1000, 3400, true],
    ['just small enough', 3400, 7000, true],
    ['too large', 3401, 7000, false],
  ])('a mixer that is %s for the dough', (_how, leastG, mostG, isOffered) => {
    const floor = busyMixer(
      'C1',
      'Ch1',
      harbourWith((kitchen) => {
        for (const mixer of kitchen.mixers) if (mixer.id === 'planetary') Object.assign(mixer, { leastG, mostG });
      }),
    );
    expect(kinds(floor, 'Ch1').includes('otherMixer')).toBe(isOffered);
  });

  test('a mixer that is being cleaned is not offered', () => {
    const floor = busyMixer('C1', 'Ch1');
    floor.record({ type: 'resourceBlocked', resource: { kind: 'mixer', id: 'planetary' }, why: 'cleaning', atMs: floor.nowMs });
    expect(kinds(floor, 'Ch1')).toEqual(['wait']);
  });

  test('allergens of the dough before: clean first, or go on knowingly', () => {
    const floor = milkBefore(14.5);
    const { refusal } = obstacle(floor, 'O1');
    assert(refusal.code === 'changeOverNeeded', refusal.code);
    expect(refusal.allergens).toContain('milk');
    expect(kinds(floor, 'O1')).toEqual(['clean', 'goOn']);
    expect(way(floor, 'O1', 'goOn')).toMatchObject({ command: { type: 'finishStep', despite: ['changeOver'] }, mixerId: 'planetary' });
    const clean = way(floor, 'O1', 'clean');
    expect(clean).toMatchObject({ mixerId: 'planetary', effect: { delayMin: 15 } });
    follow(floor, clean);
    // Until then the same mixer is in the way as one that is being cleaned.
    expect(obstacle(floor, 'O1').refusal).toMatchObject({ code: 'resourceBlocked', why: 'allergenChangeOver' });
    expect(way(floor, 'O1', 'wait').effect.delayMin).toBe(15);
    floor.wait(15);
    expect(obstacleOf(floor.state, floor.id('O1'), floor.nowMs)).toBeNull();
  });

  test('too few tins: waits until the loaf before is depanned and they are clean again, or goes on without', () => {
    const floor = fewTins(8);
    const { refusal } = obstacle(floor, 'R2');
    expect(refusal).toMatchObject({ code: 'vesselsShort', vesselId: 'tin', needed: 8, free: 0 });
    const depanned = projectionOf(floor.state, floor.piece('R1'), floor.nowMs)?.stretches.find((one) => one.stepId === 'depan');
    assert(depanned !== undefined, 'the rye is depanned');
    // 25 minutes more of the bake, a minute to take out, two to depan, twenty until they are clean.
    expect((depanned.toMs - floor.nowMs) / MINUTE_MS).toBe(28);
    expect(way(floor, 'R2', 'wait').effect.delayMin).toBe(48);
    follow(floor, way(floor, 'R2', 'goOn'));
    expect(floor.piece('R2').steps['tin']?.despite).toEqual(['vesselsShort']);
  });

  test('a loaf for each tin that there is, and the rest waits for more', () => {
    const floor = fewTins(11);
    expect(obstacle(floor, 'R2').refusal).toMatchObject({ code: 'vesselsShort', needed: 8, free: 3 });
    const part = way(floor, 'R2', 'part');
    expect(part).toMatchObject({ command: { loadPieces: 3 }, effect: { delayMin: 0, pieces: 3 } });
    follow(floor, part);
    expect(floor.piece('R2').pieces).toBe(5);
  });

  test('what the method allows to be left out is offered in its words', () => {
    const floor = fewTins(8);
    const leaveOut = way(floor, 'R2', 'leaveOut');
    expect(leaveOut.command).toEqual({ type: 'skipStep', workpieceId: floor.id('R2'), stepId: 'tin', reason: 'Bake it free' });
    follow(floor, leaveOut);
    expect(floor.due('R2').step.id).toBe('prove');
    expect(obstacleOf(floor.state, floor.id('R2'), floor.nowMs)).toBeNull();
  });

  test('what would only run into the same thing is not offered', () => {
    // Leaving out the filling of the bowl begins the first speed, on the mixer that is busy.
    const floor = busyMixer(
      'C1',
      'C2',
      harbourWith((_kitchen, _products, formulas) => {
        const fill = formulas.find((formula) => formula.id === 'country')?.method.find((step) => step.id === 'fill-bowl');
        assert(fill !== undefined, 'the bowl is filled');
        fill.leaveOut = 'Filled already';
      }),
    );
    expect(floor.due('C2').action.leaveOut).toBe('Filled already');
    expect(kinds(floor, 'C2')).toEqual(['wait']);
  });

  test('the last of a ferment: goes on knowingly', () => {
    const floor = lastOfPot();
    expect(obstacle(floor, 'C1').refusal).toMatchObject({ code: 'lastOfFerment', fromTag: 'L1', neededG: 2000, seedG: 500 });
    expect(kinds(floor, 'C1')).toEqual(['goOn']);
    follow(floor, way(floor, 'C1', 'goOn'));
    expect(floor.piece('L1').grams).toBe(200);
  });

  test('nothing that it takes stands anywhere: goes on without', () => {
    const floor = levainFloor(COUNTRY_20).bringTo('C1', 'add');
    expect(obstacle(floor, 'C1').refusal).toMatchObject({ code: 'nothingToDraw', formulaId: 'levain' });
    expect(way(floor, 'C1', 'goOn').command).toMatchObject({ despite: ['withoutSource'] });
    follow(floor, way(floor, 'C1', 'goOn'));
    expect(floor.due('C1').step.id).toBe('first-speed');
  });

  test('another source with too little is not offered', () => {
    const floor = spiltSoaker(1000);
    // 300 g in 10 000 g of dough, and a tenth of that is planned for the other one.
    expect(soakers(floor).find((one) => one.finishedMs === null)?.grams).toBe(30);
    expect(kinds(floor, 'B1')).toEqual(['goOn']);
  });

  test('what was planned for another dough can be taken knowingly', () => {
    const floor = spiltSoaker();
    const others = soakers(floor).find((one) => one.finishedMs === null);
    assert(others !== undefined, 'the other batch has its soaker');
    expect(obstacle(floor, 'B1').refusal).toMatchObject({ code: 'nothingToDraw', formulaId: 'soaker' });
    const other = way(floor, 'B1', 'otherSource');
    expect(other).toMatchObject({ fromTag: others.tag, effect: { delayMin: 0 } });
    follow(floor, other);
    expect(floor.state.edges).toContainEqual(expect.objectContaining({ kind: 'draw', fromId: others.id, toId: floor.id('B1') }));
  });
});

describe('D36 an obstacle is told when somebody can act on it, and not before', () => {
  /** A flatbread at rest before its oven, with both countries just loaded. */
  function flatbreadProves(): Floor {
    const floor = Floor.harbour().only('C1', 'C2', 'O1').bringTo('O1', 'sheet').bringTo('C1', 'load').bringTo('C2', 'load');
    floor.finish('O1');
    for (const tag of ['C1', 'C2']) floor.bringTo(tag, 'bake');
    return floor;
  }

  test('ten minutes before the step is due, not earlier', () => {
    const floor = flatbreadProves();
    const { dueMs, action } = floor.due('O1');
    expect(action.id).toBe('load-part-bake');
    const id = floor.id('O1');
    expect(obstacleOf(floor.state, id, dueMs - 10 * MINUTE_MS - 1)).toBeNull();
    expect(obstacleOf(floor.state, id, dueMs - 10 * MINUTE_MS)?.refusal.code).toBe('noFreeSlot');
  });

  test('before it is due, waiting counts from the due time', () => {
    const floor = flatbreadProves();
    const { dueMs, lateMs, lostMs } = floor.due('O1');
    floor.until(dueMs - 10 * MINUTE_MS);
    const { effect } = way(floor, 'O1', 'wait');
    const thenMs = floor.nowMs + effect.delayMin * MINUTE_MS;
    assert(lostMs !== null, 'a load is lost some time');
    expect(effect.overTargetMin).toBe(Math.max(0, effect.delayMin - 10));
    expect(effect.overLatestMin).toBe(Math.max(0, (thenMs - lostMs) / MINUTE_MS));
    expect(effect.roleThen).toBe(thenMs >= lostMs ? 'lost' : thenMs >= lateMs ? 'late' : 'call');
  });

  test('a dough that is planned for later is not told', () => {
    const floor = levainFloor(COUNTRY_20);
    floor.record({ type: 'resourceBlocked', resource: { kind: 'mixer', id: 'spiral' }, why: 'cleaning', atMs: floor.nowMs });
    floor.record({ type: 'resourceBlocked', resource: { kind: 'mixer', id: 'planetary' }, why: 'cleaning', atMs: floor.nowMs });
    expect(floor.due('C1').phase).toBe('planned');
    expect(obstacleOf(floor.state, floor.id('C1'), floor.nowMs)).toBeNull();
  });

  test('while its call is set aside it is quiet, and comes back with the call, also when the dough is being lost', () => {
    const floor = busyMixer('C1', 'C2');
    follow(floor, way(floor, 'C2', 'wait'));
    expect(obstacleOf(floor.state, floor.id('C2'), floor.nowMs)).toBeNull();
    expect(obstacleOf(floor.state, floor.id('C2'), floor.nowMs + 42 * MINUTE_MS)?.refusal.code).toBe('mixerBusy');
    const oven = fullOven();
    const wait = way(oven, 'R1', 'wait');
    follow(oven, wait);
    expect(obstacleOf(oven.state, oven.id('R1'), oven.nowMs + 14 * MINUTE_MS)).toBeNull();
    expect(obstacleOf(oven.state, oven.id('R1'), oven.nowMs + 15 * MINUTE_MS)?.refusal.code).toBe('noFreeSlot');
  });

  test('asking changes nothing', () => {
    const floor = fullOven();
    const before = structuredClone(floor.state);
    obstacle(floor, 'R1');
    expect(floor.state).toEqual(before);
  });
});

describe('D36 whatever is offered can be done', () => {
  /** Few mixers, few slots, few vessels: much is in the way. */
  function narrowHouse(): Floor {
    return harbourWith((kitchen) => {
      for (const mixer of kitchen.mixers) mixer.changeOverMin = 10;
      for (const vessel of kitchen.vessels) vessel.count = Math.ceil(vessel.count / 3);
      for (const oven of kitchen.ovens) oven.decks = oven.decks.map((deck) => ({ ...deck, slots: deck.slots.slice(0, 1) }));
    });
  }

  function accepts(floor: Floor, taken: WayOut): boolean {
    const { state, nowMs } = floor;
    return decide(state, taken.command, {
      commandId: idOf(5_000_000),
      deviceId: PHONE,
      stationId: 'bench',
      nowMs,
      tapMs: nowMs,
      tapUncertain: false,
    }).ok;
  }

  /** What has been in the way is gone, or has been set aside, or is being cleaned away. */
  function isSettled(floor: Floor, workpieceId: string, before: Obstacle, taken: WayOut): boolean {
    const after = new Floor(floor.state, floor.nowMs);
    after.ok(taken.command, { commandId: idOf(5_000_001) });
    const nowMs = taken.kind === 'clean' ? floor.nowMs + taken.effect.delayMin * MINUTE_MS : floor.nowMs;
    const next = obstacleOf(after.state, workpieceId, nowMs);
    const heldUntilMs = after.state.workpieces[workpieceId]?.heldUntilMs ?? null;
    const isSetAside = heldUntilMs !== null && heldUntilMs > floor.nowMs;
    return isSetAside || next === null || JSON.stringify(next.refusal) !== JSON.stringify(before.refusal);
  }

  /** Looks at what is in the way of one workpiece and at all ways out of it. Returns their kinds. */
  function lookAt(floor: Floor, workpieceId: string): readonly string[] {
    const found = obstacleOf(floor.state, workpieceId, floor.nowMs);
    if (found === null) return [];
    expect(found.waysOut.length).toBeLessThanOrEqual(6);
    for (const one of found.waysOut) {
      expect([one.kind, accepts(floor, one)]).toEqual([one.kind, true]);
      expect([one.kind, found.refusal, isSettled(floor, workpieceId, found, one)]).toEqual([one.kind, found.refusal, true]);
    }
    return found.waysOut.map((one) => one.kind);
  }

  const STAGED: Readonly<Record<string, () => Floor>> = {
    narrowHouse,
    fullOven: () => fullOven(),
    oneSlotFree,
    otherMixer: () => busyMixer('C1', 'Ch1'),
    milkBefore: () => milkBefore(12),
    noTins: () => fewTins(8),
    someTins: () => fewTins(11),
    lastOfPot,
    spiltSoaker: () => spiltSoaker(),
  };

  test('as the floors of these tests stand, every kind of way among them', () => {
    const seen = new Set<string>();
    for (const stage of Object.values(STAGED)) {
      const floor = stage();
      for (const workpieceId of Object.keys(floor.state.workpieces)) for (const kind of lookAt(floor, workpieceId)) seen.add(kind);
    }
    expect([...seen].sort()).toEqual(['chill', 'clean', 'goOn', 'leaveOut', 'otherMixer', 'otherSlot', 'otherSource', 'part', 'wait']);
  });

  test('on any day that anybody makes of them: each way is accepted, and what was in the way is gone or set aside', () => {
    let looks = 0;
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(STAGED)), fc.array(deedArbitrary, { minLength: 20, maxLength: 60 }), (name, deeds) => {
        const floor = STAGED[name]?.() ?? Floor.harbour();
        const lastOf = new Map<string, string>();
        for (const deed of deeds) {
          const said = meant(floor, deed, lastOf);
          if (said !== null) floor.give(said.command, { deviceId: said.deviceId, tapMs: said.tapMs });
          const ids = Object.keys(floor.state.workpieces);
          looks += lookAt(floor, ids[deed.pick % ids.length] ?? '').length;
        }
      }),
      { numRuns: 60 },
    );
    expect(looks).toBeGreaterThan(0);
  });
});
