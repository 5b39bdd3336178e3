import type { ClientCommand } from '../../../shared/floor/commands.ts';
import type { FloorState, Workpiece } from '../../../shared/floor/state.ts';
import { doughReadingOf } from '../../../shared/floor/dough-reading.ts';
import { waterInputsOf, waterPlanOf } from '../../../shared/floor/water-plan.ts';
import { weighOutOf } from '../../../shared/floor/weigh-out.ts';
import { wayOf } from '../../../shared/floor/way.ts';
import { unreachable } from '../../../shared/result.ts';
import type { Digits } from './digits.ts';

export type WeighWord = 'weighIngredient' | 'unweighIngredient' | 'scaleToLine' | 'takeWater' | 'forgetRise';

interface Seen {
  readonly digits: Digits;
  readonly state: FloorState;
  readonly workpiece: Workpiece;
  readonly nowMs: number;
}

/** A word about the weigh-out or the water, mostly of something that is not mixed yet. */
export function weighWord(type: WeighWord, { digits, state, workpiece, nowMs }: Seen): ClientCommand {
  const open = Object.values(state.workpieces).filter((other) => other.finishedMs === null && weighOutOf(state, other)?.isMixed === false);
  const begun = open.filter((other) => Object.keys(other.weighed).length > 0);
  const wanted = type === 'unweighIngredient' && begun.length > 0 ? begun : open;
  const chosen = digits.onceIn(6) ? workpiece : digits.amongOr(wanted, workpiece);
  const lines = weighOutOf(state, chosen)?.parts.flatMap((part) => part.lines) ?? [];
  const weighed = lines.filter((line) => line.weighed !== null);
  const line = digits.among(type === 'unweighIngredient' && weighed.length > 0 && !digits.onceIn(4) ? weighed : lines);
  const on = { workpieceId: chosen.id, lineId: digits.onceIn(20) ? '9-9' : (line?.id ?? '0-0') };
  const neededG = line?.grams ?? 100;
  switch (type) {
    case 'weighIngredient':
      return { type, ...on, grams: (neededG * digits.below(24)) / 10, lotNumbers: digits.onceIn(2) ? [`W${digits.below(9)}`] : [] };
    case 'unweighIngredient':
      if (weighed.length === 0 && !digits.onceIn(4)) return { type: 'weighIngredient', ...on, grams: neededG, lotNumbers: [] };
      return { type, ...on };
    case 'scaleToLine':
      return { type, ...on, grams: Math.max(0.1, (neededG * (1 + digits.below(11))) / 10) };
    case 'takeWater': {
      if (digits.onceIn(2)) return towardsTeaching(state, chosen, nowMs);
      const inputs = waterInputsOf(state, chosen, nowMs);
      const flourC = inputs.flour?.celsius ?? 22;
      const roomC = inputs.room?.celsius ?? 22;
      const plan = waterPlanOf(state, chosen, { flourC, roomC, prefermentC: inputs.preferment?.celsius ?? null, tapC: 15 });
      const waterG = digits.onceIn(9) ? 0 : (plan?.liquid.grams ?? 500);
      const mixers = state.kitchen?.document.mixers.map((mixer) => mixer.id) ?? [];
      const mixer = digits.onceIn(4) ? { mixerId: digits.amongOr([...mixers, 'whisk'], 'whisk') } : {};
      const preferment = inputs.preferment === null ? {} : { prefermentC: inputs.preferment.celsius };
      const ice = digits.onceIn(12) ? waterG + 1 : (plan?.ice?.iceG ?? 0);
      return { type, workpieceId: chosen.id, ...mixer, waterC: 15, waterG, iceG: ice, flourC, roomC, ...preferment };
    }
    case 'forgetRise': {
      const taught = Object.keys(state.rises);
      if (taught.length === 0 && !digits.onceIn(4)) return towardsTeaching(state, chosen, nowMs);
      const mixerId = digits.amongOr([...taught, 'whisk'], 'whisk');
      return { type, mixerId, ...(digits.onceIn(2) ? { formulaId: workpiece.formulaId } : {}) };
    }
    default:
      return unreachable(type);
  }
}

/** A dough has its water, is said to be mixed, is read, and what that taught is forgotten, so that a day gets there. */
function towardsTeaching(state: FloorState, chosen: Workpiece, nowMs: number): ClientCommand {
  const [taughtId] = Object.keys(state.rises);
  if (taughtId !== undefined) return { type: 'forgetRise', mixerId: taughtId };
  const batches = Object.values(state.workpieces).filter((other) => other.finishedMs === null && other.kind === 'batch');
  const mixed = batches.find((other) => doughReadingOf(state, other, 25, nowMs) !== null);
  if (mixed !== undefined) return { type: 'readTemperature', workpieceId: mixed.id, where: 'dough', celsius: 25, despite: ['wildReading'] };
  const unmixed = batches.filter((other) => weighOutOf(state, other)?.isMixed === false);
  const watered = unmixed.find((other) => other.water !== null);
  const lastSpeed = watered === undefined ? undefined : wayOf(state, watered).findLast((step) => step.verb === 'secondSpeed');
  if (watered !== undefined && lastSpeed !== undefined) return { type: 'sayWhere', workpieceId: watered.id, stepId: lastSpeed.id };
  const dry = unmixed[0] ?? chosen;
  return { type: 'takeWater', workpieceId: dry.id, waterC: 15, waterG: 500, iceG: 0, flourC: 22, roomC: 22 };
}
