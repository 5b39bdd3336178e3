import type { Due } from '../../shared/floor/due.ts';
import { holdingOf } from '../../shared/floor/holding.ts';
import type { Workpiece } from '../../shared/floor/state.ts';
import type { DayMind } from './day-mind.ts';
import type { Hand } from './invented-floor.ts';
import { outOfTheOven, inTheOven } from './oven-deeds.ts';
import { tellCooling } from './prep-deeds.ts';
import { mixedDoughC } from './weighing.ts';
import { toTenth } from './weather.ts';

const MINUTE_MS = 60_000;
const SECOND_MS = 1000;
/** Dough of kilograms in a tub takes on the air's warmth with this time constant. */
const DRIFT_MIN = 170;
const UNDO_SHARE = 0.01;
const TIME_SHARE = 0.02;
const COUNT_SHARE = 0.02;
const TAG_SHARE = 0.025;
const SPILL_SHARE = 0.02;
const FLOUR_SHARE = 0.03;
const MOVE_SHARE = 0.03;
const SPLIT_SHARE = 0.06;
const DECIDE_SHARE = 0.12;
const PROBE_SHARE = 0.3;
const REOPEN_SHARE = 0.01;

/** What is read, named, put right or regretted once a step is done. */
export function whenDone(mind: DayMind, due: Due, hand: Hand, commandId: string): void {
  const { floor, agenda, chance } = mind;
  const workpiece = floor.state.workpieces[due.workpiece.id];
  if (workpiece === undefined) return;
  const { action } = due;
  if (chance.is(UNDO_SHARE)) {
    agenda.note(floor.nowMs + chance.between(3, 25) * SECOND_MS, () => {
      if (floor.state.undo[hand.deviceId]?.commandId === commandId) floor.give({ type: 'undoCommand', commandId }, hand);
    });
    return;
  }
  if (chance.is(TIME_SHARE)) correctEnd(mind, workpiece.id, action.id, hand);
  switch (action.verb) {
    case 'firstSpeed':
      if (chance.is(FLOUR_SHARE)) addFlour(mind, workpiece.id, hand);
      break;
    case 'turnOut':
      readMixed(mind, workpiece, hand);
      break;
    case 'fold':
      readRested(mind, workpiece, hand);
      break;
    case 'round':
    case 'shape':
      recount(mind, workpiece, hand);
      break;
    case 'load':
      inTheOven(mind, workpiece, hand);
      break;
    case 'takeOut':
      outOfTheOven(mind, due, hand);
      break;
    case 'feed':
      if (chance.is(0.8))
        floor.give(
          {
            type: 'readTemperature',
            workpieceId: workpiece.id,
            where: 'dough',
            celsius: toTenth(chance.near(mind.weather.levainC + 1, 0.5)),
          },
          hand,
        );
      break;
    case 'cook':
    case 'pack':
      tellCooling(mind, workpiece, hand);
      break;
    default:
      break;
  }
}

/** Tapped late, and said so afterwards. */
function correctEnd({ floor, agenda, chance }: DayMind, workpieceId: string, stepId: string, hand: Hand): void {
  agenda.note(floor.nowMs + chance.between(0.5, 3) * MINUTE_MS, () => {
    const life = floor.state.workpieces[workpieceId]?.steps[stepId];
    const { startedMs = null, endedMs = null } = life ?? {};
    if (startedMs === null || endedMs === null || endedMs - startedMs < 3 * MINUTE_MS) return;
    const byMs = (endedMs - startedMs) * chance.between(0.2, 0.5);
    // Mostly the end was tapped late; now and then the beginning was.
    const corrected = chance.is(0.75)
      ? ({ edge: 'end', toMs: Math.round(endedMs - byMs) } as const)
      : ({ edge: 'start', toMs: Math.round(startedMs - Math.min(byMs, 2 * MINUTE_MS)) } as const);
    floor.give({ type: 'correctTime', workpieceId, stepId, ...corrected }, hand);
  });
}

/** A dough that is too wet gets a handful of flour at second speed. */
function addFlour({ floor, agenda, chance, lots, date }: DayMind, workpieceId: string, hand: Hand): void {
  agenda.note(floor.nowMs + 2 * MINUTE_MS, () => {
    const due = floor.dues.find((candidate) => candidate.workpiece.id === workpieceId);
    const [lotNumber] = lots.on('wheat-flour', date);
    if (due?.phase !== 'judging' || lotNumber === undefined) return;
    floor.give(
      { type: 'addIngredient', workpieceId, stepId: due.step.id, ingredientId: 'wheat-flour', grams: chance.whole(4, 16) * 5, lotNumber },
      hand,
    );
  });
}

function readMixed(mind: DayMind, workpiece: Workpiece, hand: Hand): void {
  const { floor, chance } = mind;
  const celsius = mixedDoughC(mind, workpiece);
  if (celsius !== null && chance.is(0.95)) {
    const reading = { type: 'readTemperature', workpieceId: workpiece.id, where: 'dough', celsius } as const;
    if (floor.give(reading, hand).refusal?.code === 'wildReading') floor.give({ ...reading, despite: ['wildReading'] }, hand);
  }
  if (celsius !== null && chance.is(PROBE_SHARE)) probeAgain(mind, workpiece.id, celsius, hand);
  if (chance.is(SPILL_SHARE))
    floor.give({ type: 'nameLoss', workpieceId: workpiece.id, what: 'spill', grams: chance.whole(2, 9) * 10 }, hand);
}

/** On the way past somebody holds the probe into the tub again, while it still stands where it stood. */
function probeAgain({ floor, agenda, chance, weather }: DayMind, workpieceId: string, beforeC: number, hand: Hand): void {
  const minutes = chance.between(14, 28);
  const stepId = floor.dues.find((due) => due.workpiece.id === workpieceId)?.step.id;
  agenda.note(floor.nowMs + minutes * MINUTE_MS, () => {
    const due = floor.dues.find((candidate) => candidate.workpiece.id === workpieceId);
    if (due?.phase !== 'resting' || due.step.id !== stepId) return;
    const celsius = toTenth(beforeC + (weather.shelfC - beforeC) * (1 - Math.exp(-minutes / DRIFT_MIN)));
    floor.give({ type: 'readTemperature', workpieceId, where: 'dough', celsius }, hand);
  });
}

/** Folded dough is read now and then, or goes on where it is cooler; two doughs whose tags were mixed up change them. */
function readRested(mind: DayMind, workpiece: Workpiece, hand: Hand): void {
  const { floor, chance, weather } = mind;
  const workpieceId = workpiece.id;
  if (chance.is(PROBE_SHARE)) {
    const mixed = workpiece.readings.findLast((reading) => reading.where === 'dough');
    const towardsC = mixed === undefined ? weather.shelfC - 1.5 : mixed.celsius + (weather.shelfC - mixed.celsius) * 0.25;
    floor.give({ type: 'readTemperature', workpieceId, where: 'dough', celsius: toTenth(towardsC) }, hand);
    probeAgain(mind, workpieceId, toTenth(towardsC), hand);
  }
  const [before] = Object.keys(workpiece.steps).slice(-2);
  if (before !== undefined && before.startsWith('fold') && chance.is(REOPEN_SHARE))
    floor.give({ type: 'sayWhere', workpieceId, stepId: before }, hand);
  if (chance.is(MOVE_SHARE) && workpiece.placeId !== 'bench') floor.give({ type: 'moveWorkpiece', workpieceId, placeId: 'bench' }, hand);
  const other = floor.dues.find(
    (candidate) =>
      candidate.workpiece.formulaId === workpiece.formulaId &&
      candidate.workpiece.id !== workpieceId &&
      candidate.workpiece.kind === 'batch' &&
      candidate.workpiece.serviceDate === workpiece.serviceDate &&
      candidate.phase === 'resting',
  );
  if (other !== undefined && chance.is(TAG_SHARE)) floor.give({ type: 'correctTag', workpieceId, toTag: other.workpiece.tag }, hand);
}

/** Counted again on the board: one fewer than was said. Or half of them go on by themselves. */
function recount({ floor, chance }: DayMind, workpiece: Workpiece, hand: Hand): void {
  const pieces = workpiece.pieces ?? 0;
  if (pieces < 4) return;
  const workpieceId = workpiece.id;
  if (chance.is(COUNT_SHARE)) {
    const reason = chance.pick(['Fell from the board', 'Torn at the seam', 'Miscounted at the divide']);
    floor.give({ type: 'correctCount', workpieceId, pieces: pieces - 1, reason }, hand);
  } else if (workpiece.productId === 'country-loaf' && pieces > 6 && chance.is(SPLIT_SHARE)) {
    floor.give({ type: 'makeLoads', workpieceId, pieces: [Math.floor(pieces / 2), pieces - Math.floor(pieces / 2)] }, hand);
  }
}

/** Food that is near its limit and will be eaten at once: somebody answers for it. */
export function decideOverLimit({ floor, chance }: DayMind, { workpiece, action }: Due, hand: Hand): void {
  if (action.verb !== 'pack' || workpiece.productId !== 'cheese-boat' || !chance.is(DECIDE_SHARE)) return;
  const limit = holdingOf(floor.state, workpiece)?.limit ?? null;
  if (limit === null) return;
  const minutes = Math.ceil((limit.limitMs - floor.nowMs) / MINUTE_MS) + 30;
  const reason = chance.pick(['Stall sells them out by noon', 'Warm from the oven to the counter, none kept']);
  if (minutes > 0 && minutes <= 240) floor.give({ type: 'decideHolding', workpieceId: workpiece.id, reason, minutes }, hand);
}
