import type { AnsweredTap, FloorView } from '../../../display/link/floor-link.ts';
import type { Panel } from '../../../display/phone/phone-events.ts';
import type { Due } from '../../../shared/floor/due.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { assert } from '../../../shared/result.ts';
import { phoneView, untilSome } from '../../browser/harness-phone/phone-stage.ts';
import { dayParts } from '../../browser/harness-day/day-stage.ts';
import { sheetScenes } from '../../browser/harness-day-sheet/sheet-stage.ts';
import { weighScenes } from '../../browser/harness-weigh/weigh-stage.ts';
import { dayOf, viewOf, workedFloor } from '../../browser/harness/staged-wall.ts';
import { Floor } from '../../domain/support/floor.ts';
import { bringInCommand, harbourFile } from '../../domain/support/harbour.ts';
import { cheeseInTheCold, custardFromTheStove, move, readFood } from '../../domain/support/kept-house.ts';
import { ovenHouse } from '../../domain/support/oven-house.ts';
import { idOf, OTHER_PHONE, SERVER_DEVICE } from '../../domain/support/ids.ts';
import { feedPot, levainFloor, POT } from '../../domain/support/levain-house.ts';
import type { CardScene, Scene, Scenes } from './scene.ts';

const MINUTE_MS = 60_000;

/** Stages the demo house in every state that the page of elements shows. */
export function stageScenes(): Scenes {
  const busy = workedFloor(harbourFile(), { untilMin: 210, neglected: { O1: 190, R1: 203, M1a: 150 } });
  learnHeat(busy);
  const blocked = blockedFloor();
  return {
    walls: walls(busy, blocked),
    phones: phones(busy),
    cards: cards(),
    kitchen: { view: phoneView(blocked.state), nowMs: blocked.nowMs },
    sheets: sheetScenes(),
    day: dayParts(),
    weighs: weighScenes(),
  };
}

/** Test pieces in both decks: one slot is hot, one cool; one piece is still in. */
function learnHeat(floor: Floor): void {
  const laterMin = { 'bottom-left': 4, 'bottom-right': 6, 'top-left': 5 };
  const startedMs = floor.nowMs;
  for (const slotId of Object.keys(laterMin))
    floor.ok({ type: 'startTestPiece', slotId, referenceMin: 5 }, { tapMs: startedMs - 10 * MINUTE_MS });
  for (const [slotId, minutes] of Object.entries(laterMin))
    floor.ok({ type: 'endTestPiece', slotId, isDone: true }, { tapMs: startedMs - (10 - minutes) * MINUTE_MS });
  floor.ok({ type: 'startTestPiece', slotId: 'front', referenceMin: 3 }, { tapMs: startedMs - MINUTE_MS });
}

function walls(busy: Floor, blocked: Floor): Readonly<Record<string, Scene>> {
  const wall = (floor: Pick<Floor, 'state' | 'nowMs'>, more: Partial<FloorView> = {}): Scene => ({
    view: viewOf(floor.state, more),
    nowMs: floor.nowMs,
    sound: 'on',
  });
  const pot = levainFloor(POT, { formula: 'buns', min: 60, doughG: 5000, cuts: [{ product: 'bun', pieces: 40 }] });
  feedPot(pot, 'L1');
  pot.wait(7);
  return {
    'one dough': wall(workedFloor(dayOf(1, 5), { untilMin: 100 })),
    'late and being lost': wall(busy),
    'things in the way, over two days': wall(blocked),
    'a ferment and a prep': wall(pot),
    'twenty doughs': wall(workedFloor(dayOf(20, 9), { untilMin: 200, neglected: { R1: 176, C1: 195 } })),
    'thirty doughs': wall(workedFloor(dayOf(30, 6), { untilMin: 190 })),
    "a station's own": { ...wall(busy), stationId: 'fillings' },
    'at a pace': wall(busy, { pace: 60 }),
    'no link': wall(busy, { connection: { phase: 'lost', lastContactMs: busy.nowMs - MINUTE_MS } }),
    'no device sounds': { ...wall(busy, { soundingDeviceId: null }), sound: 'none' },
    'no dough': wall({ state: { ...busy.state, workpieces: {} }, nowMs: busy.nowMs }),
    'waiting for a touch': { ...wall(busy), sound: 'waiting' },
    'another version': wall(busy, { connection: { phase: 'refused', why: 'otherVersion' } }),
  };
}

function phones(busy: Floor): Readonly<Record<string, Scene>> {
  const phone = (more: Partial<FloorView> = {}): Scene => ({ view: phoneView(busy.state, more), nowMs: busy.nowMs });
  const [dough] = Object.values(busy.state.workpieces);
  assert(dough !== undefined, 'the day has no dough');
  const command = { type: 'finishStep', workpieceId: dough.id, stepId: 'weigh' } as const;
  const kept = [1, 2].map((n) => ({ commandId: idOf(n), command, tapMs: busy.nowMs, isSent: false }));
  const undoable: AnsweredTap = { commandId: idOf(3), command, outcome: { ok: true, sequence: 1, undoable: true } };
  const refused: AnsweredTap = {
    commandId: idOf(4),
    command,
    outcome: {
      ok: false,
      refusal: {
        code: 'stepAlreadyDone',
        tag: dough.tag,
        stepId: 'weigh',
        atMs: busy.nowMs - MINUTE_MS,
        deviceId: OTHER_PHONE,
        stationId: 'bench',
        skipped: false,
      },
    },
  };
  return {
    'in touch': phone(),
    'something to undo': phone({ undoable }),
    'a tap that came to nothing': phone({ lastAnswer: refused }),
    'catching up': phone({ connection: { phase: 'catchingUp' } }),
    'no link, taps kept': phone({ connection: { phase: 'lost', lastContactMs: busy.nowMs - MINUTE_MS }, kept }),
    'at a pace': phone({ pace: 60 }),
    'no dough': { view: phoneView({ ...busy.state, workpieces: {} }), nowMs: busy.nowMs },
    'not reached yet': { view: phoneView(null, { connection: { phase: 'connecting' }, device: null }), nowMs: busy.nowMs },
    'no place left': phone({ connection: { phase: 'refused', why: 'full' } }),
  };
}

function cards(): Readonly<Record<string, CardScene>> {
  const fold = staged((due, nowMs) => due.action.verb === 'fold' && due.phase === 'resting' && due.dueMs <= nowMs);
  const mix = staged((due, nowMs) => due.action.verb === 'secondSpeed' && due.phase === 'judging' && due.dueMs <= nowMs);
  const divide = staged((due, nowMs) => due.action.verb === 'divide' && due.workpiece.productId === null && due.dueMs <= nowMs);
  const load = staged(
    (due, nowMs, floor) =>
      due.action.verb === 'load' && due.dueMs <= nowMs && Object.values(floor.state.workpieces).some((piece) => piece.slotIds.length > 0),
  );
  const shape = staged((due) => due.action.verb === 'shape');
  shape.floor.ok({ type: 'startStep', workpieceId: shape.due.workpiece.id, stepId: shape.due.action.id }, { stationId: 'oven' });
  const pot = levainFloor(POT, { formula: 'buns', min: 60, doughG: 5000, cuts: [{ product: 'bun', pieces: 40 }] });
  feedPot(pot, 'L1');
  const levain = Object.values(pot.state.workpieces).find(({ tag }) => tag === 'L1');
  assert(levain !== undefined, 'there is no L1');
  return {
    resting: card(staged((due, nowMs) => due.action.verb === 'fold' && due.phase === 'resting' && due.dueMs > nowMs + MINUTE_MS)),
    'resting, colder than it should be': card(coldRest()),
    call: card(fold, ['actions', 'other', 'skip', 'more', 'move', 'minutes', 'temperature', 'add', 'putBack', 'discard']),
    late: card(fold, ['actions'], 11),
    'being lost': card(fold, ['actions'], 31),
    'judged in the mixer': card(mix, ['actions', 'inputs', 'extra']),
    'to be divided': card(divide, ['actions', 'count', 'putRight', 'loss', 'join', 'where']),
    'under hands': card(shape, ['actions', 'howFar', 'handOver', 'loads']),
    'to be loaded': card(load),
    'to be loaded, the oven full': card({ ...load, floor: new Floor(withFullOven(load.floor.state), load.floor.nowMs) }),
    'in the oven': card(staged((due) => due.step.kind === 'bake')),
    'a bake that asks for steam out': keptCard(ovenHouse().wait(10.5), 'R1', ['actions']),
    'a bake whose core is read': keptCard(readBake(), 'R1', ['actions']),
    'a filling past its limit': keptCard(pastLimit(), 'Cf1', ['actions', 'decideHolding']),
    'a custard that cools': keptCard(coolingCustard(), 'Cu1', ['actions']),
    'a pot': {
      view: phoneView(pot.state),
      nowMs: pot.nowMs,
      workpieceId: levain.id,
      panels: ['actions', 'feed', 'planFeed'],
    },
  };
}

/** A rest whose dough was read twice, colder than its formula has it. */
function coldRest(): Staged {
  const rest = staged((due, nowMs) => due.step.ripening !== undefined && due.phase === 'resting' && due.dueMs > nowMs + 20 * MINUTE_MS);
  const read = (celsius: number): void => {
    rest.floor.ok({ type: 'readTemperature', workpieceId: rest.due.workpiece.id, where: 'dough', celsius, despite: ['wildReading'] });
  };
  read(22);
  rest.floor.wait(10);
  read(21.5);
  rest.floor.wait(5);
  return rest;
}

/** A bake on its last phase, its core read twice. */
function readBake(): Floor {
  const floor = ovenHouse();
  const workpieceId = floor.id('R1');
  floor.wait(10).ok({ type: 'answerPrompt', workpieceId, stepId: 'bake', phase: 1 });
  for (const [waitMin, celsius] of [
    [24, 62],
    [8, 79],
  ] as const)
    floor.wait(waitMin).ok({ type: 'readTemperature', workpieceId, where: 'core', celsius });
  return floor.wait(3);
}

/** A filling that was on the bench for as long as its rule set allows. */
function pastLimit(): Floor {
  return move(cheeseInTheCold({ ruleSet: 'england' }), 'Cf1', 'bench').wait(241);
}

/** A custard read twice on its way down, too slow for its rule. */
function coolingCustard(): Floor {
  const floor = readFood(custardFromTheStove({ ruleSet: 'us-food-code' }), 'Cu1', 78);
  return readFood(floor.wait(25), 'Cu1', 61).wait(5);
}

function keptCard(floor: Floor, tag: string, panels: readonly Panel[]): CardScene {
  return { view: phoneView(floor.state), nowMs: floor.nowMs, workpieceId: floor.id(tag), panels };
}

interface Staged {
  readonly floor: Floor;
  readonly due: Due;
}

function staged(wanted: (due: Due, nowMs: number, floor: Floor) => boolean): Staged {
  const floor = Floor.harbour();
  return { floor, due: untilSome(floor, (due, nowMs) => wanted(due, nowMs, floor)) };
}

function card({ floor, due }: Staged, panels: readonly Panel[] = ['actions'], laterMin = 0): CardScene {
  return { view: phoneView(floor.state), nowMs: floor.nowMs + laterMin * MINUTE_MS, workpieceId: due.workpiece.id, panels };
}

function withFullOven(state: FloorState): FloorState {
  const holder = Object.values(state.workpieces).find(({ slotIds }) => slotIds.length > 0);
  assert(holder !== undefined, 'nothing is in the oven');
  const slots = (state.kitchen?.document.ovens ?? []).flatMap((oven) => oven.decks.flatMap((deck) => deck.slots));
  return { ...state, workpieces: { ...state.workpieces, [holder.id]: { ...holder, slotIds: slots.map((slot) => slot.id) } } };
}

/** Saturday's doughs when Sunday's day is brought in, a mixer being cleaned, a deck out of order, a slot being cleaned. */
function blockedFloor(): Floor {
  const floor = workedFloor(dayOf(5, 20), { untilMin: 200 });
  floor.ok(bringInCommand(dayOf(1, 15), floor.nowMs, '2026-03-08'), { deviceId: SERVER_DEVICE });
  floor.ok({ type: 'blockResource', resource: { kind: 'mixer', id: 'spiral' }, why: 'allergenChangeOver', minutes: 40 });
  floor.ok({ type: 'blockResource', resource: { kind: 'deck', id: 'bottom' }, why: 'outOfOrder' });
  floor.ok({ type: 'blockResource', resource: { kind: 'slot', id: 'front' }, why: 'cleaning', minutes: 45 });
  floor.wait(18);
  const sundays = Object.values(floor.state.workpieces).find(({ serviceDate, tag }) => serviceDate === '2026-03-08' && tag === 'C1');
  assert(sundays !== undefined, 'Sunday has no C1');
  floor.ok({ type: 'finishStep', workpieceId: sundays.id, stepId: 'weigh' });
  floor.wait(6);
  floor.raiseCalls();
  return floor;
}
