import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Verb } from '../../shared/documents/method.ts';
import type { PlannedStep } from '../../shared/floor/events.ts';
import { planPlacesOf } from '../../shared/floor/planned-step.ts';
import type { FloorState, Workpiece } from '../../shared/floor/state.ts';
import { nameOf, wayOf } from '../../shared/floor/way.ts';
import type { CalendarEntry } from './calendar-text.ts';

/** Entries' ids end in this, so that they are no other program's. */
const UID_DOMAIN = 'ovenward.invalid';

/**
 * What the plan has for the hands of a station on a production day, in order of time: one entry a step. A step that has
 * begun stands where it really began. Entries keep their ids when steps move and when doughs are divided.
 */
export function stationCalendar(state: FloorState, stationId: string, serviceDate: string): readonly CalendarEntry[] {
  const entries = new Map<string, CalendarEntry>();
  for (const [workpieceId, steps] of Object.entries(state.plan?.steps ?? {})) {
    const workpiece = state.workpieces[workpieceId];
    if (workpiece === undefined || workpiece.serviceDate !== serviceDate) continue;
    for (const step of steps) {
      if (!step.resources.some(({ kind, id }) => kind === 'station' && id === stationId)) continue;
      const doer = doerOf(state, workpiece, step);
      // What the plan says of a cut since it was divided counts, not what it said before.
      const isSaidAnew =
        doer.id !== workpieceId && (state.plan?.steps[doer.id] ?? []).some((own) => own.stepId === step.stepId && own.load === undefined);
      if (isSaidAnew) continue;
      const entry = entryOf(state, workpiece, doer, step);
      if (entry !== null) entries.set(entry.uid, entry);
    }
  }
  return [...entries.values()].sort((a, b) => a.startMs - b.startMs || (a.uid < b.uid ? -1 : 1));
}

/** The workpiece that goes through a planned step: what the named one was divided into, where it has been. */
function doerOf(state: FloorState, workpiece: Workpiece, step: PlannedStep): Workpiece {
  let doer = workpiece;
  for (const [kind, index] of [
    ['cut', step.cut],
    ['load', step.load],
  ] as const) {
    if (index === undefined) continue;
    const id = doer.childIds.filter((childId) => state.workpieces[childId]?.kind === kind)[index];
    doer = (id === undefined ? undefined : state.workpieces[id]) ?? doer;
  }
  return doer;
}

function entryOf(state: FloorState, named: Workpiece, doer: Workpiece, planned: PlannedStep): CalendarEntry | null {
  const { stepId } = planned;
  const way = doer === named ? wayOfPlace(state, named, planned) : wayOf(state, doer);
  const step = way.find(({ id }) => id === stepId);
  if (step === undefined) return null;
  const life = doer.steps[stepId];
  const plannedEndMs = planned.plannedEndMs ?? planned.plannedStartMs;
  const startMs = life?.startedMs ?? planned.plannedStartMs;
  // What is skipped takes nobody's time.
  if (life?.status === 'skipped') return null;
  const root = planPlacesOf(state, doer).at(-1);
  const place =
    doer === named
      ? { workpieceId: root?.workpieceId ?? named.id, cut: root?.cut ?? planned.cut, load: root?.load ?? planned.load }
      : (root ?? planned);
  return {
    uid: [place.workpieceId, place.cut ?? '', place.load ?? '', stepId].join('.') + `@${UID_DOMAIN}`,
    startMs,
    endMs: life?.endedMs ?? startMs + (plannedEndMs - planned.plannedStartMs),
    summary: `${verbWords(step.verb)} ${doer.tag}`,
    description: descriptionOf(state, doer, step.check),
    location: placesOf(state.kitchen?.document ?? null, planned),
  };
}

/** The way on which a planned step stands: of a cut that is still to be made, its product's. */
function wayOfPlace(state: FloorState, workpiece: Workpiece, { cut }: PlannedStep): ReturnType<typeof wayOf> {
  const planned = cut === undefined ? undefined : workpiece.cuts[cut];
  if (planned === undefined || workpiece.productId !== null) return wayOf(state, workpiece);
  return state.products[`${planned.productId}@${planned.productVersion}`]?.way ?? [];
}

/** A verb by its own name, as `FIRST SPEED`: calendars are read in any language, and the screens have the words. */
export function verbWords(verb: Verb): string {
  return verb.replaceAll(/[A-Z]/g, ' $&').toUpperCase();
}

function descriptionOf(state: FloorState, workpiece: Workpiece, check: string | undefined): string {
  const name = nameOf(state, workpiece);
  const what = workpiece.pieces === null ? name : `${workpiece.pieces} × ${name}`;
  return check === undefined ? what : `${what}\n${check}`;
}

/** Names of the mixer, the deck or the place that it is done at. */
function placesOf(kitchen: Kitchen | null, { resources }: PlannedStep): string | null {
  const names = resources.flatMap(({ kind, id }) => {
    if (kind === 'mixer') return kitchen?.mixers.filter((mixer) => mixer.id === id).map(({ name }) => name) ?? [];
    if (kind === 'deck') return kitchen?.ovens.flatMap(({ decks }) => decks.filter((deck) => deck.id === id).map(({ name }) => name)) ?? [];
    return [];
  });
  return names.length === 0 ? null : names.join(', ');
}
