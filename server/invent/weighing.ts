import { countsAsC } from '../../shared/trade/water-temperature.ts';
import { countedC, expectedDoughC, iceCOf } from '../../shared/floor/dough-temperature.ts';
import type { Workpiece } from '../../shared/floor/state.ts';
import { waterInputsOf, waterPlanOf } from '../../shared/floor/water-plan.ts';
import { lineOf, weighOutOf, type WeighLine } from '../../shared/floor/weigh-out.ts';
import type { DayMind } from './day-mind.ts';
import { trueRiseK } from './house-truth.ts';
import type { Hand } from './invented-floor.ts';
import { toTenth } from './weather.ts';

const SECOND_MS = 1000;
/** A line that nobody ticked off. */
const FORGOTTEN_SHARE = 0.015;
/** A line that was weighed, taken back and weighed again. */
const AGAIN_SHARE = 0.012;
/** A dough of which something ran short, so that all of it was scaled to what there was. */
const SHORT_SHARE = 0.006;
const SHORT_BY = 0.92;
/** Nobody warms water beyond this for a dough, nor cools milk below that, in °C. */
const WARMEST_C = 42;
const COLDEST_MILK_C = 4;

/** Lines go onto the scale one by one between two instants, with the water last. */
export function weighOut(mind: DayMind, workpiece: Workpiece, hand: Hand, fromMs: number, toMs: number): void {
  const lines = weighOutOf(mind.floor.state, workpiece)?.parts.flatMap((part) => part.lines) ?? [];
  const { agenda, chance } = mind;
  const stepMs = (toMs - fromMs) / (lines.length + 2);
  lines.forEach((line, index) => {
    if (chance.is(FORGOTTEN_SHARE)) return;
    agenda.note(fromMs + (index + chance.between(0.5, 1)) * stepMs, () => weighLine(mind, workpiece.id, line.id, hand));
  });
  agenda.note(fromMs + (lines.length + 1) * stepMs, () => takeWater(mind, workpiece.id, hand));
  const longest = lines.toSorted((a, b) => b.grams - a.grams)[0];
  if (workpiece.kind === 'batch' && longest !== undefined && chance.is(SHORT_SHARE))
    agenda.note(fromMs + (lines.length + 1.5) * stepMs, () => {
      const grams = Math.round((longest.grams * SHORT_BY) / 10) * 10;
      mind.floor.give({ type: 'scaleToLine', workpieceId: workpiece.id, lineId: longest.id, grams }, hand);
    });
}

function weighLine(mind: DayMind, workpieceId: string, lineId: string, hand: Hand): void {
  const { floor, chance, agenda } = mind;
  const line = openLine(mind, workpieceId, lineId);
  if (line === null) return;
  const lotNumbers = line.ingredientId === null ? [] : [...mind.lots.on(line.ingredientId, mind.date)];
  const grams = onScale(line, chance.is(0.6) ? 0 : chance.whole(-1, 2));
  if (!chance.is(AGAIN_SHARE)) {
    floor.give({ type: 'weighIngredient', workpieceId, lineId, grams, lotNumbers }, hand);
    return;
  }
  floor.give({ type: 'weighIngredient', workpieceId, lineId, grams: onScale(line, chance.whole(4, 9)), lotNumbers }, hand);
  agenda.note(floor.nowMs + 8 * SECOND_MS, () => {
    floor.give({ type: 'unweighIngredient', workpieceId, lineId }, hand);
  });
  agenda.note(floor.nowMs + 25 * SECOND_MS, () => {
    if (openLine(mind, workpieceId, lineId) !== null) floor.give({ type: 'weighIngredient', workpieceId, lineId, grams, lotNumbers }, hand);
  });
}

function openLine({ floor }: DayMind, workpieceId: string, lineId: string): WeighLine | null {
  const workpiece = floor.state.workpieces[workpieceId];
  const weighOut = workpiece === undefined || workpiece.finishedMs !== null ? null : weighOutOf(floor.state, workpiece);
  const line = weighOut === null ? null : lineOf(weighOut, lineId);
  return line === null || line.isIn || line.grams === 0 ? null : line;
}

/** So many divisions beside what it should be; never more than twice of it, nor nothing. */
function onScale({ grams, divisionG }: WeighLine, divisions: number): number {
  const read = toTenth(grams + divisions * divisionG);
  return read > 0 && read < 2 * grams ? read : grams;
}

/** Flour, tap and room are read, and the water is taken as they ask for it. */
function takeWater(mind: DayMind, workpieceId: string, hand: Hand): void {
  const { floor, chance, weather } = mind;
  const workpiece = floor.state.workpieces[workpieceId];
  if (workpiece === undefined || workpiece.kind !== 'batch' || workpiece.finishedMs !== null) return;
  const [flourC, roomC, tapC] = [weather.flourC, weather.roomC, weather.tapC].map((celsius) => toTenth(chance.near(celsius, 0.3)));
  if (flourC === undefined || roomC === undefined || tapC === undefined) return;
  for (const [where, celsius] of [
    ['flour', flourC],
    ['tap', tapC],
    ['room', roomC],
  ] as const)
    if (chance.is(0.45)) floor.give({ type: 'readTemperature', workpieceId, where, celsius }, hand);
  const isCounted = waterInputsOf(floor.state, workpiece, floor.nowMs).preferment !== null;
  const prefermentC = isCounted ? toTenth(chance.near(weather.levainC, 0.4)) : null;
  if (prefermentC !== null && chance.is(0.45))
    floor.give({ type: 'readTemperature', workpieceId, where: 'preferment', celsius: prefermentC }, hand);
  const plan = waterPlanOf(floor.state, workpiece, { flourC, roomC, prefermentC, tapC });
  if (plan === null) return;
  const { liquid, ice, requiredC } = plan;
  const iceG = ice === null ? 0 : ice.iceG;
  const coldestC = liquid.isWater ? tapC : COLDEST_MILK_C;
  const mixedC = Math.min(WARMEST_C, Math.max(coldestC, chance.near(requiredC, 0.5)));
  floor.give(
    {
      type: 'takeWater',
      workpieceId,
      waterC: iceG > 0 ? tapC : toTenth(mixedC),
      waterG: toTenth(liquid.grams),
      iceG: toTenth(iceG),
      flourC,
      roomC,
      ...(prefermentC === null ? {} : { prefermentC }),
    },
    hand,
  );
}

/** How warm the dough is when it comes off the mixer: by its water, and by what the mixer really does. Null where nobody said what went in. */
export function mixedDoughC(mind: DayMind, workpiece: Workpiece): number | null {
  const { water } = workpiece;
  if (water === null) return null;
  const { waterG, iceG, waterC, mixerId } = water;
  const countsC = countsAsC({ waterG, iceG, tapC: waterC, iceC: iceCOf(mind.floor.state) });
  const riseK = mind.chance.near(trueRiseK(mixerId, workpiece.formulaId, mind.day), 0.5);
  return toTenth(expectedDoughC(countedC(water), countsC, riseK));
}
