import type { FloorEvent, RecordedEvent } from '../../../shared/floor/events.ts';
import { dueOf } from '../../../shared/floor/due.ts';
import { heldVessels } from '../../../shared/floor/vessels.ts';
import type { FloorState, Workpiece } from '../../../shared/floor/state.ts';
import { positionOf, wayOf } from '../../../shared/floor/way.ts';

/** What does not hold together on a floor, in words: looked at after every command, so without an expectation each. */
export function complaints(state: FloorState): readonly string[] {
  return [
    ...heldTwice(state),
    ...overCounted(state),
    ...circles(state),
    ...Object.values(state.workpieces).flatMap((one) => oddities(state, one)),
  ];
}

/** A mixer or a bowl holds one dough, a slot one load. */
function heldTwice(state: FloorState): readonly string[] {
  const found: string[] = [];
  const holders = new Map<string, string>();
  const hold = (what: string, tag: string): void => {
    const other = holders.get(what);
    if (other !== undefined) found.push(`${tag} and ${other} both have the ${what}`);
    holders.set(what, tag);
  };
  for (const { tag, mixerId, bowlId, slotIds } of Object.values(state.workpieces)) {
    if (mixerId !== null) hold(`mixer ${mixerId}`, tag);
    if (bowlId !== null) hold(`bowl ${bowlId}`, tag);
    for (const slotId of slotIds) hold(`slot ${slotId}`, tag);
  }
  return found;
}

/** Who goes on with too few takes what there is, and a kitchen is not adopted with fewer than are held: never more are out than it has. */
function overCounted(state: FloorState): readonly string[] {
  return (state.kitchen?.document.vessels ?? []).flatMap(({ id, count }) => {
    const held = heldVessels(state, id);
    return held > count ? [`${held} of ${id} are held, the kitchen has ${count}`] : [];
  });
}

/** Nothing comes of itself, on whatever way round; but a pot is fed into itself. */
function circles(state: FloorState): readonly string[] {
  const found = state.edges.flatMap((edge) =>
    (edge.kind === 'feed') === (edge.fromId === edge.toId) ? [] : [`a ${edge.kind} goes from ${edge.fromId} to ${edge.toId}`],
  );
  const madeOf = new Map<string, string[]>();
  for (const { kind, fromId, toId } of state.edges) if (kind !== 'feed') madeOf.set(toId, [...(madeOf.get(toId) ?? []), fromId]);
  const looked = new Map<string, 'looking' | 'fine'>();
  const isCircle = (id: string): boolean => {
    const seen = looked.get(id);
    if (seen !== undefined) return seen === 'looking';
    looked.set(id, 'looking');
    const comesRound = (madeOf.get(id) ?? []).some(isCircle);
    looked.set(id, 'fine');
    return comesRound;
  };
  for (const id of madeOf.keys()) if (isCircle(id)) found.push(`${state.workpieces[id]?.tag ?? id} comes of itself`);
  return found;
}

function oddities(state: FloorState, workpiece: Workpiece): readonly string[] {
  const { tag, grams, scrapG, pieces, finishedMs, call } = workpiece;
  const found: string[] = [];
  if (!(grams >= 0) || !(scrapG >= 0)) found.push(`${tag} weighs ${grams} g, with ${scrapG} g beside it`);
  if (pieces !== null && !(pieces >= 0)) found.push(`${tag} has ${pieces} pieces`);
  if (workpiece.vessels.some((held) => held.count <= 0)) found.push(`${tag} holds vessels that are none`);
  if (finishedMs !== null && holdsAnything(workpiece)) found.push(`${tag} is off the floor and still holds something`);
  const due = dueOf(state, workpiece);
  if ((due === null) !== (finishedMs !== null)) found.push(`${tag} is neither finished nor due, or both`);
  if (due === null) return found;
  if (!(due.lateMs >= due.dueMs)) found.push(`${tag} is late before it is due`);
  // A bake may call for what one of its phases asks.
  const calling = due.step.kind === 'bake' ? [due.action.id, due.step.id] : [due.action.id];
  if (call !== null && !calling.includes(call.stepId)) found.push(`${tag} calls for ${call.stepId} and stands at ${due.action.id}`);
  // A pot begins its way again and again: its feed is under way beside the ripening that it ends.
  if (workpiece.stock !== null) return found;
  const way = wayOf(state, workpiece);
  const outOfTurn = way.slice(positionOf(way, workpiece) + 1).find((step) => workpiece.steps[step.id] !== undefined);
  if (outOfTurn !== undefined) found.push(`${tag} has begun ${outOfTurn.id} out of turn`);
  return found;
}

function holdsAnything({ mixerId, bowlId, slotIds, vessels, call, heldUntilMs }: Workpiece): boolean {
  return mixerId !== null || bowlId !== null || slotIds.length > 0 || vessels.length > 0 || call !== null || heldUntilMs !== null;
}

/** What one fact brought to a workpiece, or took of it. */
interface Entry {
  readonly type: FloorEvent['type'];
  readonly commandId: string;
  readonly workpieceId: string;
  readonly grams: number;
  /** Of what lies beside it, not of the dough itself. */
  readonly isScrap: boolean;
}

/** A change of one workpiece's weight, and whether it is of its scrap. */
type Change = readonly [workpieceId: string, grams: number, isScrap?: boolean];

/** Grams that arithmetic with tenths may be off by, over a day. */
const SLACK_G = 0.5;

/**
 * The scales, kept beside the floor: what came into every workpiece and what went out of it, by the facts alone. Dough is
 * there or beside it as scrap; what is neither has gone into another one, or was named as lost.
 */
export class Scales {
  private entries: Entry[] = [];
  /** The sums of the entries, so that a look does not add up the whole day. */
  private readonly sums = new Map<string, number>();
  private read = 0;

  /** Takes the facts that are new since it last looked. */
  weigh(recorded: readonly RecordedEvent[]): this {
    for (const { event, commandId } of recorded.slice(this.read)) {
      if (event.type === 'commandUndone') this.takeBack(event.undoneCommandId);
      else
        for (const [workpieceId, grams, isScrap = false] of this.changes(event))
          this.enter({ type: event.type, commandId, workpieceId, grams, isScrap });
    }
    this.read = recorded.length;
    return this;
  }

  /** What the floor says that something weighs, and the facts do not bear out. */
  complaints(state: FloorState): readonly string[] {
    return Object.values(state.workpieces).flatMap(({ id, tag, grams, scrapG }) => {
      const [doughG, besideG] = [this.of(id, false), this.of(id, true)];
      const isBorneOut = Math.abs(grams - doughG) <= SLACK_G && Math.abs(scrapG - besideG) <= SLACK_G;
      return isBorneOut ? [] : [`${tag} weighs ${grams} g and ${scrapG} g beside it; its facts make ${doughG} g and ${besideG} g`];
    });
  }

  private of(workpieceId: string, isScrap: boolean): number {
    return this.sums.get(`${workpieceId} ${isScrap}`) ?? 0;
  }

  private enter(entry: Entry): void {
    this.entries.push(entry);
    this.add(entry, entry.grams);
  }

  private takeBack(commandId: string): void {
    for (const entry of this.entries) if (entry.commandId === commandId) this.add(entry, -entry.grams);
    this.entries = this.entries.filter((entry) => entry.commandId !== commandId);
  }

  private add({ workpieceId, isScrap }: Entry, grams: number): void {
    this.sums.set(`${workpieceId} ${isScrap}`, this.of(workpieceId, isScrap) + grams);
  }

  private changes(event: FloorEvent): readonly Change[] {
    switch (event.type) {
      case 'workpiecePlanned':
        return [[event.workpieceId, event.grams]];
      case 'workpieceDivided':
        // The batch keeps the weight that it had, for the records; what was left over lies beside it as well.
        return [[event.workpieceId, event.lossG, true], ...event.children.map((child) => [child.workpieceId, child.grams] as const)];
      case 'loadsMade': {
        const wentG = event.children.reduce((sum, child) => sum + child.grams, 0);
        const staysG = event.restPieces > 0 ? -wentG : 0;
        return [[event.workpieceId, staysG], ...event.children.map((child) => [child.workpieceId, child.grams] as const)];
      }
      case 'workpiecesJoined':
        return [[event.workpieceId, event.parents.reduce((sum, parent) => sum + parent.grams, 0)]];
      case 'workpieceDrawn':
        return [[event.fromWorkpieceId, -event.grams], ...(event.isExtra === true ? [[event.toWorkpieceId, event.grams] as const] : [])];
      case 'scrapPutBack': {
        // What lies beside it goes first.
        const besideG = Math.min(event.grams, this.of(event.fromWorkpieceId, true));
        return [
          [event.fromWorkpieceId, -besideG, true],
          [event.fromWorkpieceId, besideG - event.grams],
          [event.toWorkpieceId, event.grams],
        ];
      }
      case 'batchRescaled':
        return [[event.workpieceId, event.toG - event.fromG]];
      case 'ingredientAdded':
        return event.isExtra === true ? [[event.workpieceId, event.grams]] : [];
      case 'lossNamed':
        return [[event.workpieceId, -event.grams], ...(event.what === 'trim' ? [[event.workpieceId, event.grams, true] as const] : [])];
      case 'fermentFed':
        return [[event.workpieceId, this.fedBy(event)]];
      default:
        return [];
    }
  }

  /** The first feed makes what was only planned; later ones add flour and water, and throw away what is not the seed. */
  private fedBy(event: Extract<FloorEvent, { type: 'fermentFed' }>): number {
    const { workpieceId, seedG, flourG, waterG, discardedG } = event;
    const isFirst = !this.entries.some((entry) => entry.type === 'fermentFed' && entry.workpieceId === workpieceId);
    return isFirst ? seedG + flourG + waterG - this.of(workpieceId, false) : flourG + waterG - discardedG;
  }
}
