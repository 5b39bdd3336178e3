import type { Despite } from '../events.ts';
import { blockOn } from '../resources.ts';
import type { RefusalCode } from '../refusals.ts';
import { stageOf } from '../stage.ts';
import type { FloorState } from '../state.ts';
import type { WayOut } from '../ways-out.ts';
import { effectOf, finishOf, wayOut, type Asked } from './asked.ts';
import { isAboutMixer, mixerFreeMs } from './mixers.ts';
import { isAboutSlots, slotsFreeMs } from './slots.ts';
import { vesselsFreeMs } from './vessels.ts';

const MINUTE_MS = 60_000;
/** A call can be set aside for so long; a longer wait is a plan, not a way out. */
const MOST_WAIT_MIN = 120;
/** How long dough that is put in the cold is left alone. Common practice. */
const CHILL_MIN = 30;

/** Sets the call aside until what is in the way is expected to be gone. */
export function waitWays(asked: Asked): readonly WayOut[] {
  const { due, nowMs } = asked;
  const minutes = Math.max(1, Math.ceil((goneMs(asked) - nowMs) / MINUTE_MS));
  if (minutes > MOST_WAIT_MIN) return [];
  return [
    wayOut('wait', { type: 'holdWorkpiece', workpieceId: due.workpiece.id, stepId: due.action.id, minutes }, effectOf(asked, minutes)),
  ];
}

/** When what is in the way is expected to be gone by itself; infinity where nobody can tell. */
function goneMs(asked: Asked): number {
  const { refusal } = asked;
  if (isAboutSlots(asked)) return slotsFreeMs(asked);
  if (isAboutMixer(asked)) return mixerFreeMs(asked);
  if (refusal.code === 'vesselsShort') return vesselsFreeMs(asked);
  return refusal.code === 'resourceBlocked' ? (refusal.untilMs ?? Infinity) : Infinity;
}

/** Puts dough that only waits in the cold, which slows it. How much is not worked out here: the effect is that of the time alone. */
export function chillWays(asked: Asked): readonly WayOut[] {
  const { state, due, nowMs } = asked;
  if (!canBeChilled(asked)) return [];
  return (state.kitchen?.document.restPlaces ?? [])
    .filter((place) => (place.kind === 'retarder' || place.kind === 'cold-room') && place.id !== due.workpiece.placeId)
    .filter((place) => hasRoom(state, place.id, place.room) && blockOn(state, { kind: 'restPlace', id: place.id }, nowMs) === null)
    .map((place) =>
      wayOut(
        'chill',
        { type: 'moveWorkpiece', workpieceId: due.workpiece.id, placeId: place.id, holdMin: CHILL_MIN },
        effectOf(asked, CHILL_MIN, { placeC: place.temperatureC }),
        { placeId: place.id },
      ),
    );
}

function canBeChilled({ state, due }: Asked): boolean {
  const stage = stageOf(state, due);
  const isLeftAlone = due.phase === 'waiting' || due.phase === 'resting';
  return isLeftAlone && due.workpiece.slotIds.length === 0 && (stage === 'bulk' || stage === 'makeUp' || stage === 'proving');
}

function hasRoom(state: FloorState, placeId: string, room: number | undefined): boolean {
  const there = Object.values(state.workpieces).filter((workpiece) => workpiece.finishedMs === null && workpiece.placeId === placeId);
  return room === undefined || there.length < room;
}

/** Leaves the step out, where the method says that one may. */
export function leaveOutWays(asked: Asked): readonly WayOut[] {
  const { workpiece, action } = asked.due;
  if (action.leaveOut === undefined) return [];
  const command = { type: 'skipStep' as const, workpieceId: workpiece.id, stepId: action.id, reason: action.leaveOut };
  return [wayOut('leaveOut', command, effectOf(asked, 0))];
}

const DESPITE: Readonly<Partial<Record<RefusalCode, Despite>>> = {
  changeOverNeeded: 'changeOver',
  lastOfFerment: 'lastOfFerment',
  vesselsShort: 'vesselsShort',
  nothingToDraw: 'withoutSource',
  notEnoughToDraw: 'withoutSource',
  notCooled: 'notCooled',
};

/** Goes on knowingly. Only with what the refusal tells: what stands behind it is told before somebody goes on with that too. */
export function goOnWays(asked: Asked): readonly WayOut[] {
  const { due, refusal } = asked;
  const despite = DESPITE[refusal.code];
  if (despite === undefined) return [];
  return [
    wayOut('goOn', { ...finishOf(due), despite: [despite] }, effectOf(asked, 0), {
      mixerId: refusal.code === 'changeOverNeeded' ? refusal.mixerId : null,
    }),
  ];
}
