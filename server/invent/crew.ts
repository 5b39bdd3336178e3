import type { ClientCommand, CommandOf } from '../../shared/floor/commands.ts';
import { promptAt, plannedMin, type Due } from '../../shared/floor/due.ts';
import { obstacleOf } from '../../shared/floor/ways-out.ts';
import { bakedMs, delayMs, fetchedMs, isBake, isLeftAlone, visitKey } from './comes.ts';
import type { DayMind } from './day-mind.ts';
import { handsMin } from './house-truth.ts';
import type { Given, Hand } from './invented-floor.ts';
import { setAsAsked, setDecks } from './oven-deeds.ts';
import { saidInstead } from './said-instead.ts';
import { freeSlotsFor } from './slot-choice.ts';
import { decideOverLimit, whenDone } from './when-done.ts';
import { whileWorking } from './while-working.ts';

const MINUTE_MS = 60_000;
const SECOND_MS = 1000;
/** Work shorter than this is over before anybody has said that it began. */
const WORTH_STARTING_MIN = 1.5;
/** Who is refused comes again after so long. */
const COME_AGAIN_MS = 4 * MINUTE_MS;
/** A step whose own hands are busy is taken on by others once it is due for so long. */
const HELP_AFTER_MS = 1.5 * MINUTE_MS;
/** Who finds a dough where it stood before comes again after so long. */
const LOOK_AGAIN_MS = 20 * SECOND_MS;
const RELEASE_SHARE = 0.35;
/** A tap that its phone kept for a while because it had no link. */
const OUT_OF_REACH_SHARE = 0.012;
/** How differently long the same work takes. */
const WORK_SPREAD = 0.13;

/** When somebody comes to a dough, and to which. */
export interface Visit {
  readonly due: Due;
  readonly atMs: number;
}

type CutPieces = NonNullable<CommandOf<'finishStep'>['cuts']>;

/** When somebody comes: at an instant, or so long after it is due, which may still move. */
type Comes = { readonly atMs: number } | { readonly afterDueMs: number };

/** Hands that go from dough to dough: called or not, a little early or late, and busy where they are. */
export class Crew {
  readonly #mind: DayMind;
  readonly #comes = new Map<string, Comes>();

  constructor(mind: DayMind) {
    this.#mind = mind;
  }

  next(): Visit | null {
    const { floor } = this.#mind;
    let next: Visit | null = null;
    for (const due of floor.dues) {
      if (isLeftAlone(due)) continue;
      const comesMs = Math.max(floor.nowMs + 1, Math.round(this.#comesMs(due)), due.workpiece.heldUntilMs ?? 0);
      if (next === null || comesMs < next.atMs) next = { due, atMs: comesMs };
    }
    return next;
  }

  visit({ workpiece, step }: Due): void {
    const { floor, hands, chance } = this.#mind;
    // Whatever was called meanwhile, it stands where it stood; but it is the floor's newest word that counts.
    const due = floor.dues.find((candidate) => candidate.workpiece.id === workpiece.id && candidate.step.id === step.id);
    if (due === undefined) return;
    const { action, phase } = due;
    const stationId = this.#stationFor(due);
    const hand = hands.at(stationId);
    const prompt = promptAt(due, floor.nowMs);
    if (prompt !== null && prompt.dueMs <= floor.nowMs) {
      this.#tap(due, { type: 'answerPrompt', workpieceId: workpiece.id, stepId: due.step.id, phase: prompt.phase }, hand);
      setAsAsked(this.#mind, due, prompt.setC, hand);
      return;
    }
    if (phase === 'working') return this.#finish(due, hand);
    const isUrgent = isBake(due) || phase === 'judging';
    const freeMs = hands.freeMs(stationId);
    if (!isUrgent && freeMs > floor.nowMs) return this.#comeAgain(due, freeMs + chance.between(5, 40) * SECOND_MS);
    if (this.#waitsForPrep(due)) return this.#comeAgain(due, floor.nowMs + 3 * MINUTE_MS);
    const instead = saidInstead(this.#mind, due);
    if (instead !== null) {
      this.#tap(due, instead, hand);
      if (instead.type === 'holdWorkpiece' && chance.is(RELEASE_SHARE)) this.#releaseSoon(instead.workpieceId, instead.stepId, hand);
      return;
    }
    const goesAtOnce = action.kind !== 'hands' || action.verb === 'load' || action.verb === 'takeOut';
    if (!goesAtOnce && plannedMin(action, workpiece) >= WORTH_STARTING_MIN) return this.#start(due, hand);
    this.#finish(due, hand);
  }

  /** Set aside, and taken up before the time is over. */
  #releaseSoon(workpieceId: string, stepId: string, hand: Hand): void {
    const { floor, agenda, chance } = this.#mind;
    agenda.note(floor.nowMs + chance.between(1, 4) * MINUTE_MS, () => {
      const workpiece = floor.state.workpieces[workpieceId];
      if (workpiece?.finishedMs === null && (workpiece.heldUntilMs ?? 0) > floor.nowMs)
        floor.give({ type: 'releaseWorkpiece', workpieceId, stepId }, hand);
    });
  }

  /** Who has it; else the station of its step, or another one that is free once it has waited too long there. */
  #stationFor({ workpiece, action, step, phase, dueMs }: Due): string | null {
    const { floor, hands } = this.#mind;
    const own = action.station ?? step.station ?? null;
    if (phase === 'working') return workpiece.steps[action.id]?.stationId ?? own;
    if (hands.freeMs(own) <= floor.nowMs || floor.nowMs < dueMs + HELP_AFTER_MS) return own;
    return hands.helperFor(own, floor.nowMs)?.stationId ?? own;
  }

  #start(due: Due, hand: Hand): void {
    const { workpiece, action } = due;
    const { floor, hands, chance } = this.#mind;
    const given = this.#tap(due, { type: 'startStep', workpieceId: workpiece.id, stepId: action.id }, hand);
    if (given.refusal !== null) return;
    const untilMs = floor.nowMs + handsMin(action, workpiece) * chance.factor(WORK_SPREAD) * MINUTE_MS;
    hands.keepBusy(hand.stationId, untilMs);
    const begun = floor.dues.find((candidate) => candidate.workpiece.id === workpiece.id);
    if (begun !== undefined && begun.phase === 'working') this.#comes.set(visitKey(begun, floor.nowMs), { atMs: untilMs });
    whileWorking(this.#mind, due, hand, floor.nowMs, untilMs);
  }

  #finish(due: Due, hand: Hand): void {
    const { workpiece, action } = due;
    setDecks(this.#mind, due, hand);
    decideOverLimit(this.#mind, due, hand);
    const slotIds = action.verb === 'load' ? freeSlotsFor(this.#mind, workpiece, action) : null;
    const command = { type: 'finishStep', workpieceId: workpiece.id, stepId: action.id } as const;
    let given = this.#tap(due, { ...command, ...(slotIds === null ? {} : { slotIds: [...slotIds] }) }, hand);
    // There was less dough than the pieces need: so many fewer are cut.
    if (given.refusal?.code === 'cutsTooHeavy') given = this.#tap(due, { ...command, cuts: fewerCuts(due, given.refusal) }, hand);
    if (given.refusal === null) whenDone(this.#mind, due, hand, given.commandId);
  }

  /** What is refused because something is in the way goes another way; what is past its limit is given up; the rest comes again. */
  #tap(due: Due, command: ClientCommand, hand: Hand): Given {
    const { floor } = this.#mind;
    const agoMs = this.#mind.chance.is(OUT_OF_REACH_SHARE) ? this.#mind.chance.whole(8, 75) * SECOND_MS : 0;
    const given = floor.give(command, hand, agoMs);
    // Should it stand as before after all, undone or put right, somebody looks again in a moment; a pot does so every day.
    if (due.workpiece.stock === null) this.#comeAgain(due, floor.nowMs + LOOK_AGAIN_MS);
    if (given.refusal === null) return given;
    if (given.refusal.code === 'pastHoldingLimit') {
      floor.give({ type: 'discardWorkpiece', workpieceId: due.workpiece.id, reason: 'Past its holding limit' }, hand);
      return given;
    }
    const [way] = obstacleOf(floor.state, due.workpiece.id, floor.nowMs)?.waysOut ?? [];
    const other = way === undefined ? given : floor.give(way.command, hand);
    if (way === undefined || other.refusal !== null) this.#comeAgain(due, floor.nowMs + COME_AGAIN_MS);
    return given;
  }

  #comeAgain(due: Due, atMs: number): void {
    this.#comes.set(visitKey(due, this.#mind.floor.nowMs), { atMs });
  }

  #comesMs(due: Due): number {
    const { floor } = this.#mind;
    const key = visitKey(due, floor.nowMs);
    const comes = this.#comes.get(key) ?? this.#newComes(due);
    this.#comes.set(key, comes);
    return 'atMs' in comes ? comes.atMs : due.dueMs + comes.afterDueMs;
  }

  #newComes(due: Due): Comes {
    const { floor, chance } = this.#mind;
    const prompt = promptAt(due, floor.nowMs);
    if (prompt !== null) return { atMs: prompt.dueMs + chance.between(5, 100) * SECOND_MS };
    if (isBake(due)) return { atMs: bakedMs(due, chance) };
    const atMs = fetchedMs(due, chance);
    return atMs === null ? { afterDueMs: delayMs(due, chance) } : { atMs };
  }

  /** A dough whose filling is being made is not topped before the filling is there. */
  #waitsForPrep({ action, workpiece }: Due): boolean {
    const taken = new Set(action.additions.flatMap((addition) => addition.formula ?? []));
    if (taken.size === 0) return false;
    return this.#mind.floor.dues.some(
      (other) =>
        other.workpiece.kind === 'prep' &&
        other.workpiece.serviceDate <= workpiece.serviceDate &&
        taken.has(other.workpiece.formulaId) &&
        !isLeftAlone(other),
    );
  }
}

/** The cuts of a dough with as many pieces fewer as it is too light for, off the largest. */
function fewerCuts({ workpiece }: Due, { neededG, hasG }: { readonly neededG: number; readonly hasG: number }): CutPieces {
  const largest = workpiece.cuts.toSorted((a, b) => b.pieces - a.pieces)[0];
  return workpiece.cuts.map((cut) => {
    const fewer = cut === largest ? Math.ceil((neededG - hasG) / (cut.grams / cut.pieces)) : 0;
    return { productId: cut.productId, pieces: Math.max(1, cut.pieces - fewer) };
  });
}
