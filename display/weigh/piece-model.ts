import type { Ingredient } from '../../shared/documents/formula.ts';
import type { House } from '../../shared/documents/house.ts';
import type { Verb } from '../../shared/documents/method.ts';
import { formulaOf } from '../../shared/floor/contents.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { iceCOf } from '../../shared/floor/dough-temperature.ts';
import { weighOutOf, type WeighOut } from '../../shared/floor/weigh-out.ts';
import type { FloorView } from '../link/floor-link.ts';
import { dayTag, floorDateOf } from '../parts/day-tag.ts';
import { zoneOf } from '../phone/floor-facts.ts';
import { doughOf, wildOf, type DoughModel, type WildReading } from './dough-model.ts';
import { waterOf, type WaterModel } from './water-model.ts';
import type { WeighView } from './weigh-events.ts';
import { allLines, kindOf, lineAtHand, takesLot, type PlacedLine } from './weigh-model.ts';

const GRAMS_AND_CELSIUS: House['units'] = { temperature: 'C', weight: 'g' };

/** Everything that the screens of one weigh-out show. */
export interface PieceModel {
  readonly workpiece: Workpiece;
  readonly tag: string;
  readonly formulaName: string;
  readonly out: WeighOut;
  /** The line at hand; null where there is none to weigh. */
  readonly placed: PlacedLine | null;
  readonly kind: Ingredient['kind'] | null;
  readonly hasLot: boolean;
  readonly water: WaterModel | null;
  readonly dough: DoughModel | null;
  readonly wild: WildReading | null;
  readonly iceC: number;
  readonly verbs: ReadonlyMap<string, Verb>;
  /** Lines with a tap that has not been sent. */
  readonly unsentIds: ReadonlySet<string>;
  readonly units: House['units'];
  readonly zone: string;
}

/** The weigh-out of a workpiece with what belongs to it, at an instant; null where it is not on the floor or nothing of it is weighed. */
export function pieceOf(
  view: Pick<FloorView, 'kept' | 'lastAnswer'>,
  state: FloorState,
  workpieceId: string,
  wantedLineId: string | null,
  nowMs: number,
): PieceModel | null {
  const workpiece = state.workpieces[workpieceId];
  const out = workpiece === undefined || workpiece.finishedMs !== null ? null : weighOutOf(state, workpiece);
  if (workpiece === undefined || out === null) return null;
  const formula = formulaOf(state, workpiece);
  const placed = lineAtHand(out, wantedLineId);
  return {
    workpiece,
    tag: dayTag(workpiece.tag, workpiece.serviceDate, floorDateOf(state)),
    formulaName: formula?.name ?? '',
    out,
    placed,
    kind: placed === null ? null : kindOf(state, placed.line),
    hasLot: placed !== null && takesLot(state, placed.line),
    water: waterOf(state, workpiece, nowMs),
    dough: doughOf(state, workpiece),
    wild: wildOf(view.lastAnswer, workpieceId),
    iceC: iceCOf(state),
    verbs: new Map((formula?.method ?? []).map((step) => [step.id, step.verb])),
    unsentIds: unsentLineIds(view, workpieceId),
    units: unitsOf(state),
    zone: zoneOf(state),
  };
}

/** How the house weighs and measures. */
export function unitsOf(state: FloorState): House['units'] {
  return state.house?.document.units ?? GRAMS_AND_CELSIUS;
}

/** What can be shown of a weigh-out, in the order of the work. */
export function viewsOf({ water, dough }: Pick<PieceModel, 'water' | 'dough'>): readonly WeighView[] {
  return ['line', ...(water === null ? [] : (['water'] as const)), ...(dough === null ? [] : (['dough'] as const))];
}

/** What is shown first: the lines, and once it is mixed the dough's temperature. */
export function firstView({ out, dough }: Pick<PieceModel, 'out' | 'dough'>): WeighView {
  if (!out.isMixed) return 'line';
  return dough === null ? 'list' : 'dough';
}

/** The lot that a line would be ticked off with: what was chosen, else what was used last; null for none. */
export function lotFor(
  state: FloorState,
  { out }: Pick<PieceModel, 'out'>,
  lineId: string,
  chosen: ReadonlyMap<string, string | null>,
): string | null {
  const lot = chosen.get(lineId);
  if (lot !== undefined) return lot;
  const line = allLines(out).find((placed) => placed.line.id === lineId)?.line;
  if (line === undefined || !takesLot(state, line)) return null;
  return line.weighed?.lotNumbers[0] ?? line.lots[0] ?? null;
}

function unsentLineIds({ kept }: Pick<FloorView, 'kept'>, workpieceId: string): ReadonlySet<string> {
  return new Set(
    kept.flatMap(({ command, isSent }) =>
      !isSent && (command.type === 'weighIngredient' || command.type === 'unweighIngredient') && command.workpieceId === workpieceId
        ? [command.lineId]
        : [],
    ),
  );
}
