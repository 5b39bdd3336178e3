import type { House } from '../../shared/documents/house.ts';
import type { CommandOf } from '../../shared/floor/commands.ts';
import { decideWeighing } from '../../shared/floor/decide-weighing.ts';
import type { Refusal } from '../../shared/floor/refusals.ts';
import { versionKey, type FloorState, type Workpiece } from '../../shared/floor/state.ts';
import type { WeighLine } from '../../shared/floor/weigh-out.ts';
import { fromG, toG } from '../../shared/trade/units.ts';

/** What scaling to a line would make of a batch. */
export type ShortOutcome =
  | { readonly ok: true; readonly fromG: number; readonly toG: number; readonly cuts: readonly CutChange[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** Pieces of one product, before and after. */
export interface CutChange {
  readonly name: string;
  readonly before: number;
  readonly after: number;
}

/** What the floor would say to it, decided here on the state as it stands. `grams` is what there is of the line. */
export function shortOutcome(state: FloorState, workpiece: Workpiece, line: WeighLine, grams: number, nowMs: number): ShortOutcome {
  const decision = decideWeighing(state, shortCommand(workpiece.id, line.id, grams), {
    commandId: '',
    deviceId: '',
    stationId: null,
    nowMs,
    tapMs: nowMs,
    tapUncertain: false,
  });
  if (!decision.ok) return { ok: false, refusal: decision.fault };
  const event = decision.value.find((candidate) => candidate.type === 'batchRescaled');
  if (event?.type !== 'batchRescaled') return { ok: true, fromG: workpiece.grams, toG: workpiece.grams, cuts: [] };
  return {
    ok: true,
    fromG: event.fromG,
    toG: event.toG,
    cuts: event.cuts.map((cut) => ({
      name: productName(state, cut.productId),
      before: workpiece.cuts.find(({ productId }) => productId === cut.productId)?.pieces ?? cut.pieces,
      after: cut.pieces,
    })),
  };
}

export function shortCommand(workpieceId: string, lineId: string, grams: number): CommandOf<'scaleToLine'> {
  return { type: 'scaleToLine', workpieceId, lineId, grams };
}

function productName(state: FloorState, productId: string): string {
  return state.products[versionKey(productId, state.productVersions[productId] ?? 0)]?.name ?? productId;
}

/** How an amount is said in a house's unit: grams as its scale shows them, or pounds or ounces with a decimal. */
export interface AmountField {
  readonly unit: 'g' | 'lb' | 'oz';
  readonly step: number;
  readonly digits: number;
  /** All that the line wants. */
  readonly most: number;
  /** Likely amounts, the largest first. */
  readonly values: readonly number[];
}

/** Shares of a line that is short, the likeliest first: a bag that ran out a little early, down to a third. */
const SHARES = [0.95, 0.9, 0.85, 0.8, 0.75, 0.66, 0.5, 0.33];
/** From here on, in grams, a house that weighs in pounds says pounds: below, a tenth of one would be too coarse. */
const POUNDS_FROM_G = 1_000;

/** How much of a line there is: the field with its chips, in the house's unit. */
export function amountField({ grams, divisionG }: Pick<WeighLine, 'grams' | 'divisionG'>, units: House['units']): AmountField {
  const unit = units.weight === 'g' ? 'g' : grams >= POUNDS_FROM_G ? 'lb' : 'oz';
  const step = unit === 'g' && divisionG >= 1 ? divisionG : 0.1;
  const whole = fromG(grams, unit);
  const onStep = (value: number): number => Math.round(Math.round(value / step) * step * 10) / 10;
  const values = SHARES.map((share) => onStep(whole * share));
  return {
    unit,
    step,
    digits: step < 1 ? 1 : 0,
    most: onStep(whole),
    values: [...new Set(values)].filter((value) => value > 0 && value < whole),
  };
}

/** Grams of what was said in a field's unit, to a hundredth. */
export function gramsSaid(value: number, { unit }: Pick<AmountField, 'unit'>): number {
  return Math.round(toG(value, unit) * 100) / 100;
}
