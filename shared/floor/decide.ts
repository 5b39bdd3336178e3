import type { CommandContext, FloorCommand } from './commands.ts';
import { decideOnFloor } from './decide-on-floor.ts';
import { decideWeighing } from './decide-weighing.ts';
import type { Decision } from './decide/decision.ts';
import { decideAdoptFormula } from './decide/adopt-formula.ts';
import { decideAdoptIngredient } from './decide/adopt-ingredient.ts';
import { decideAdoptProposal, decideAdoptReplan } from './decide/adopt-plan.ts';
import { decideAdoptProduct } from './decide/adopt-product.ts';
import { decideArchiveFormula } from './decide/archive-formula.ts';
import { decideLeaveLesson } from './decide/leave-lesson.ts';
import { decideBringInBook } from './decide/bring-in-book.ts';
import { decideBringInDay } from './decide/bring-in-day.ts';
import { decideNoteSounded, decideRaiseCall } from './decide/calls.ts';
import { decideAdoptHouse, decideAdoptKitchen } from './decide/adopt.ts';
import { decideAskSoundTest, decideNoteSoundTestSounded } from './decide/sound-test.ts';
import { decideAdoptStanding, decidePlaceOrders, decideWithdrawOrders } from './decide/orders.ts';
import { decideLiftPin, decideSetPin } from './decide/pins.ts';
import { decidePlanBatches } from './decide/plan-batches.ts';
import { decideReadTemperature } from './decide/read-temperature.ts';
import { doughReadingOf } from './dough-reading.ts';
import { taughtByReading } from './drift-taught.ts';
import type { FloorEvent } from './events.ts';
import { taughtByBake } from './slot-heats.ts';
import { taughtByClosing } from './ripeness-taught.ts';
import { accepted } from '../result.ts';
import type { FloorState } from './state.ts';

/**
 * Decides a command on a state: the facts that follow from it, or why there are none. Pure; the server decides with
 * it, and pages with the part of it that they need. Instants are house time; `context.tapMs` is at most `nowMs`.
 */
export function decide(state: FloorState, command: FloorCommand, context: CommandContext): Decision {
  const decision = decideAlone(state, command, context);
  return decision.ok ? accepted(decision.value.flatMap((event) => [event, ...taughtBy(state, event)])) : decision;
}

/** What a fact teaches beside what it says; pages leave that to the server. */
function taughtBy(state: FloorState, event: FloorEvent): readonly FloorEvent[] {
  switch (event.type) {
    case 'stepDone':
      return [...taughtByClosing(state, event), ...taughtByBake(state, event)];
    case 'temperatureRead': {
      const workpiece = state.workpieces[event.workpieceId];
      return workpiece === undefined || event.where !== 'dough' ? [] : taughtByReading(state, workpiece, event.celsius, event.atMs);
    }
    default:
      return [];
  }
}

function decideAlone(state: FloorState, command: FloorCommand, context: CommandContext): Decision {
  switch (command.type) {
    case 'adoptKitchen':
      return decideAdoptKitchen(state, command, context);
    case 'adoptHouse':
      return decideAdoptHouse(state, command, context);
    case 'adoptFormula':
      return decideAdoptFormula(state, command, context);
    case 'adoptProduct':
      return decideAdoptProduct(state, command, context);
    case 'adoptIngredient':
      return decideAdoptIngredient(state, command, context);
    case 'archiveFormula':
      return decideArchiveFormula(state, command, context);
    case 'leaveLesson':
      return decideLeaveLesson(state, command, context);
    case 'bringInBook':
      return decideBringInBook(state, command, context);
    case 'planBatches':
      return decidePlanBatches(state, command, context);
    case 'placeOrders':
      return decidePlaceOrders(state, command, context);
    case 'withdrawOrders':
      return decideWithdrawOrders(state, command, context);
    case 'adoptStanding':
      return decideAdoptStanding(state, command, context);
    case 'setPin':
      return decideSetPin(state, command, context);
    case 'liftPin':
      return decideLiftPin(state, command, context);
    case 'adoptProposal':
      return decideAdoptProposal(state, command, context);
    case 'adoptReplan':
      return decideAdoptReplan(state, command, context);
    case 'bringInDay':
      return decideBringInDay(state, command, context);
    case 'raiseCall':
      return decideRaiseCall(state, command, context);
    case 'noteSounded':
      return decideNoteSounded(state, command, context);
    case 'askDailySoundTest':
      return decideAskSoundTest(state, 'daily', context);
    case 'noteSoundTestSounded':
      return decideNoteSoundTestSounded(state, context);
    case 'anchorClock':
      return { ok: true, value: [{ type: 'clockAnchored', houseMs: command.houseMs, realMs: command.realMs, pace: command.pace }] };
    case 'noteClockJump':
      return { ok: true, value: [{ type: 'clockJumped', byMs: command.byMs, atMs: context.nowMs }] };
    case 'readTemperature':
      return decideReadTemperature(state, command, context, doughReadingOf);
    case 'weighIngredient':
    case 'unweighIngredient':
    case 'scaleToLine':
    case 'takeWater':
    case 'forgetRise':
      return decideWeighing(state, command, context);
    default:
      return decideOnFloor(state, command, context);
  }
}
