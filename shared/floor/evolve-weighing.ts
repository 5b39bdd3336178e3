import { unreachable } from '../result.ts';
import { broughtWith } from './contents.ts';
import type { EventOf, FloorEvent, RecordedEvent } from './events.ts';
import { lotsWith } from './lots-used.ts';
import type { FloorState, RiseSample, Workpiece } from './state.ts';

type WeighingEvent = EventOf<
  'ingredientWeighed' | 'ingredientUnweighed' | 'batchRescaled' | 'waterTaken' | 'riseLearned' | 'riseForgotten'
>;

const TYPES: ReadonlySet<string> = new Set<WeighingEvent['type']>([
  'ingredientWeighed',
  'ingredientUnweighed',
  'batchRescaled',
  'waterTaken',
  'riseLearned',
  'riseForgotten',
]);

/** What is remembered of one mixer's warming: a few weeks of its doughs. */
const RISES_KEPT = 120;

/** Whether the event is about the weigh-out or the water of a dough. */
export function isWeighingEvent(event: FloorEvent): event is WeighingEvent {
  return TYPES.has(event.type);
}

/** What is in the bowl, and what the mixer has taught. */
export function evolveWeighing(state: FloorState, event: WeighingEvent, recorded: RecordedEvent): FloorState {
  switch (event.type) {
    case 'ingredientWeighed':
      return weighed(state, event, recorded.commandId);
    case 'ingredientUnweighed':
      return changed(state, event.workpieceId, recorded.commandId, (workpiece) => {
        const { [event.lineId]: _out, ...rest } = workpiece.weighed;
        return { ...workpiece, weighed: rest };
      });
    case 'batchRescaled':
      return changed(state, event.workpieceId, recorded.commandId, (workpiece) => rescaled(workpiece, event));
    case 'waterTaken': {
      const { type: _type, workpieceId, ...water } = event;
      return changed(state, workpieceId, recorded.commandId, (workpiece) => ({ ...workpiece, water }));
    }
    case 'riseLearned':
      return learned(state, event, recorded.commandId);
    case 'riseForgotten':
      return forgotten(state, event);
    default:
      return unreachable(event);
  }
}

function changed(state: FloorState, workpieceId: string, commandId: string, change: (workpiece: Workpiece) => Workpiece): FloorState {
  const workpiece = state.workpieces[workpieceId];
  if (workpiece === undefined) return state;
  return { ...state, workpieces: { ...state.workpieces, [workpieceId]: { ...change(workpiece), lastCommandId: commandId } } };
}

function weighed(state: FloorState, event: EventOf<'ingredientWeighed'>, commandId: string): FloorState {
  const { ingredientId, lineId, grams, lotNumbers, atMs } = event;
  const lots = ingredientId === undefined ? [] : lotNumbers.map((lotNumber) => ({ ingredientId, lotNumber }));
  const next = changed(state, event.workpieceId, commandId, (workpiece) => ({
    ...workpiece,
    weighed: { ...workpiece.weighed, [lineId]: { grams, lotNumbers, atMs } },
    broughtIn: broughtWith(workpiece.broughtIn, [], lots),
  }));
  if (ingredientId === undefined || lotNumbers.length === 0) return next;
  return { ...next, lotsUsed: { ...next.lotsUsed, [ingredientId]: lotsWith(state.lotsUsed[ingredientId] ?? [], lotNumbers) } };
}

function rescaled(workpiece: Workpiece, { fromG, toG, cuts }: EventOf<'batchRescaled'>): Workpiece {
  const only = cuts.length === 1 ? cuts[0] : undefined;
  return {
    ...workpiece,
    grams: workpiece.grams - (fromG - toG),
    scaledToG: toG,
    cuts,
    pieces: only?.pieces ?? workpiece.pieces,
  };
}

function learned(state: FloorState, event: EventOf<'riseLearned'>, commandId: string): FloorState {
  const { workpieceId, mixerId, formulaId, loadG, riseK, atMs } = event;
  const sample: RiseSample = { workpieceId, formulaId, loadG, riseK, atMs, commandId };
  return { ...state, rises: { ...state.rises, [mixerId]: [...(state.rises[mixerId] ?? []), sample].slice(-RISES_KEPT) } };
}

function forgotten(state: FloorState, { formulaId, mixerId }: EventOf<'riseForgotten'>): FloorState {
  const { [mixerId]: samples = [], ...rises } = state.rises;
  const kept = formulaId === undefined ? [] : samples.filter((sample) => sample.formulaId !== formulaId);
  return { ...state, rises: kept.length === 0 ? rises : { ...rises, [mixerId]: kept } };
}
