import { formulaOf } from '../../shared/floor/contents.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { countedC, expectedDoughC, iceCOf } from '../../shared/floor/dough-temperature.ts';
import { countsAsC } from '../../shared/trade/water-temperature.ts';
import type { AnsweredTap } from '../link/floor-link.ts';
import type { ReadWhere } from '../phone/reading-model.ts';

/** The dough's temperature after mixing: what it should be and what it was read as. */
export interface DoughModel {
  readonly tag: string;
  /** What the formula wants, in °C. */
  readonly targetC: number | null;
  /** What the water that went in lets expect, in °C; null where nobody said that it is in. */
  readonly expectedC: number | null;
  readonly last: { readonly celsius: number; readonly atMs: number } | null;
}

/** A reading that was too far off to be taken without asking. */
export interface WildReading {
  readonly where: ReadWhere;
  readonly celsius: number;
  readonly expectedC: number;
}

/** How the dough's temperature stands; null for what is no dough with a temperature of its own. */
export function doughOf(state: FloorState, workpiece: Workpiece): DoughModel | null {
  const targetC = formulaOf(state, workpiece)?.doughC ?? null;
  if (targetC === null) return null;
  return {
    tag: workpiece.tag,
    targetC,
    expectedC: expectedOf(state, workpiece),
    last: workpiece.readings.findLast((reading) => reading.where === 'dough') ?? null,
  };
}

function expectedOf(state: FloorState, { water }: Workpiece): number | null {
  if (water === null) return null;
  const { waterC, waterG, iceG, riseK } = water;
  return expectedDoughC(countedC(water), countsAsC({ waterG, iceG, tapC: waterC, iceC: iceCOf(state) }), riseK);
}

/** The last answer, where it asks about a reading beside this dough. */
export function wildOf(answer: AnsweredTap | null, workpieceId: string): WildReading | null {
  if (answer === null || answer.outcome.ok) return null;
  const { command } = answer;
  const { refusal } = answer.outcome;
  if (refusal.code !== 'wildReading' || command.type !== 'readTemperature' || command.workpieceId !== workpieceId) return null;
  return { where: command.where, celsius: command.celsius, expectedC: refusal.expectedC };
}
