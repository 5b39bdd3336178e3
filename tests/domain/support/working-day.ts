import { nextRoleChangeMs } from '../../../shared/floor/calls.ts';
import type { BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import { openDues, roleAt, type Due } from '../../../shared/floor/due.ts';
import { isStronger, type Role } from '../../../shared/floor/role.ts';
import { nextSound } from '../../../shared/floor/sounding.ts';
import { assert } from '../../../shared/result.ts';
import { Floor } from './floor.ts';
import { bringInCommand, harbourFile, OPENING_MS } from './harbour.ts';
import { idOf, SERVER_DEVICE } from './ids.ts';

const SECOND_MS = 1000;
const MINUTE_MS = 60 * SECOND_MS;

/** Whoever finds the mixer or the oven taken looks again after so long. */
const COME_AGAIN_MS = 4 * MINUTE_MS;
/** Steps shorter than this are tapped done when they are; longer ones are begun first. In minutes. */
const BEGUN_FROM_MIN = 2;
/** More sounds than this, and the day is a siren. */
const MANY_SOUNDS = 2000;

/** A day of so many batches of the demo house's formulas, begun so many minutes apart. */
export function dayOfBatches(batches: number, apartMin: number): BakehouseFile {
  const file = harbourFile();
  const models = file.day.batches;
  return {
    ...file,
    day: {
      ...file.day,
      batches: Array.from({ length: batches }, (_, index) => {
        const model = models[index % models.length];
        assert(model !== undefined, 'the demo day has batches');
        return { ...model, start: { afterLoadMin: index * apartMin } };
      }),
    },
  };
}

/** How people work: all of it common practice as the writers of this test understand it, and no measurement. */
export interface Crew {
  readonly hands: number;
  /** From seeing that a dough wants hands to being there, in s. */
  readonly comesS: { readonly least: number; readonly most: number };
  /** So long before it is due somebody who is free sees it on the wall and sets out, in s. */
  readonly seesAheadS: number;
  /** How often somebody is held up, and for how long then, in s. */
  readonly heldUp: { readonly share: number; readonly leastS: number; readonly mostS: number };
  /** From a burst that is more than a call, with nobody free to go, to a hand on "heard", in s. */
  readonly hearsS: { readonly least: number; readonly most: number };
}

interface Job {
  readonly atMs: number;
  readonly run: () => void;
}

/** Hands that follow the wall: whoever is free goes to the most pressing dough that nobody goes to. */
export class WorkingDay {
  readonly floor = new Floor();
  readonly soundsMs: number[] = [];
  readonly #crew: Crew;
  readonly #random: () => number;
  #jobs: Job[] = [];
  #free: number;
  /** Doughs that somebody goes to or works on, and how pressing they were when they set out. */
  readonly #taken = new Map<string, Role>();
  /** Doughs that could not go on, and until when nobody tries again. */
  readonly #waitsMs = new Map<string, number>();

  constructor(file: BakehouseFile, crew: Crew, seed: number) {
    this.#crew = crew;
    this.#free = crew.hands;
    this.#random = splitmix(seed);
    this.floor.ok(bringInCommand(file, OPENING_MS), { deviceId: SERVER_DEVICE });
  }

  /** Works until nothing is left, or until so many hours have gone by. */
  work(hours: number): this {
    const { floor } = this;
    const endMs = OPENING_MS + hours * 60 * MINUTE_MS;
    for (;;) {
      floor.raiseCalls();
      this.#sound();
      this.#sendHands();
      const times = [nextRoleChangeMs(floor.state, floor.nowMs), nextSound(floor.state, floor.nowMs)?.atMs, this.#jobs[0]?.atMs];
      const next = Math.min(...times.filter((atMs) => atMs !== undefined && atMs !== null), Number.POSITIVE_INFINITY);
      if (next > endMs) return this;
      floor.until(Math.max(floor.nowMs, Math.ceil(next)));
      while (this.#jobs[0] !== undefined && this.#jobs[0].atMs <= floor.nowMs) this.#jobs.shift()?.run();
    }
  }

  #sound(): void {
    const { floor } = this;
    const sound = nextSound(floor.state, floor.nowMs);
    if (sound === null || sound.atMs > floor.nowMs) return;
    assert(this.soundsMs.length < MANY_SOUNDS, 'it does not stop sounding');
    floor.ok({ type: 'noteSounded', burst: sound.burst, calls: [...sound.calls] }, { deviceId: SERVER_DEVICE });
    this.soundsMs.push(floor.nowMs);
    if (sound.burst !== 'call') this.#later(this.#between(this.#crew.hearsS), () => void floor.give({ type: 'hearAllCalls' }, this.#tap()));
  }

  #sendHands(): void {
    const { floor } = this;
    const wanting = openDues(floor.state)
      .filter((due) => calledMs(due) <= floor.nowMs + this.#crew.seesAheadS * SECOND_MS && !this.#isTaken(due))
      .filter((due) => (this.#waitsMs.get(due.workpiece.id) ?? 0) <= floor.nowMs)
      .sort((a, b) => PRESSURE[roleAt(b, floor.nowMs)] - PRESSURE[roleAt(a, floor.nowMs)] || calledMs(a) - calledMs(b));
    for (const due of wanting) {
      if (this.#free === 0) return;
      this.#free -= 1;
      this.#taken.set(due.workpiece.id, roleAt(due, floor.nowMs));
      const isHeldUp = this.#random() < this.#crew.heldUp.share;
      const held = this.#crew.heldUp;
      const comesMs = this.#between(isHeldUp ? { least: held.leastS, most: held.mostS } : this.#crew.comesS);
      this.#later(Math.max(comesMs, calledMs(due) - floor.nowMs), () => this.#arrive(due));
    }
  }

  /** Whoever was held up on the way is not waited for once the dough has become more pressing: the next one free goes. */
  #isTaken(due: Due): boolean {
    const since = this.#taken.get(due.workpiece.id);
    return since !== undefined && !isStronger(roleAt(due, this.floor.nowMs), since);
  }

  /** Somebody is at the dough: begins what takes a while, does what does not. */
  #arrive(seen: Due): void {
    const { floor } = this;
    const { id } = seen.workpiece;
    const due = openDues(floor.state).find(({ workpiece }) => workpiece.id === id);
    if (due === undefined || due.action.id !== seen.action.id || due.phase !== seen.phase) return this.#leave(id);
    const { prompt } = due;
    if (prompt !== null && prompt.dueMs <= floor.nowMs) {
      floor.give({ type: 'answerPrompt', workpieceId: id, stepId: due.step.id, phase: prompt.phase }, this.#tap());
      return this.#leave(id);
    }
    const on = { workpieceId: id, stepId: due.action.id };
    const begins = due.phase !== 'resting' && due.phase !== 'judging' && due.phase !== 'working';
    if (!begins || due.action.kind !== 'hands' || due.action.minutes.target < BEGUN_FROM_MIN) return this.#finish(id, on);
    if (!floor.give({ type: 'startStep', ...on }, this.#tap()).decision.ok) return this.#comeAgain(id);
    const workMs = due.action.minutes.target * MINUTE_MS * (0.8 + 0.4 * this.#random());
    this.#later(workMs, () => this.#finish(id, on));
  }

  #finish(id: string, on: { readonly workpieceId: string; readonly stepId: string }): void {
    if (!this.floor.give({ type: 'finishStep', ...on }, this.#tap()).decision.ok) return this.#comeAgain(id);
    this.#leave(id);
  }

  #comeAgain(id: string): void {
    this.#waitsMs.set(id, this.floor.nowMs + COME_AGAIN_MS);
    this.#later(COME_AGAIN_MS, () => {});
    this.#leave(id);
  }

  #leave(id: string): void {
    this.#taken.delete(id);
    this.#free += 1;
  }

  #later(ms: number, run: () => void): void {
    this.#jobs.push({ atMs: Math.ceil(this.floor.nowMs + ms), run });
    this.#jobs.sort((a, b) => a.atMs - b.atMs);
  }

  #between({ least, most }: { readonly least: number; readonly most: number }): number {
    return (least + (most - least) * this.#random()) * SECOND_MS;
  }

  #tap(): { readonly deviceId: string; readonly stationId: string } {
    return { deviceId: idOf(2_000_000 + Math.floor(this.#random() * this.#crew.hands)), stationId: 'bench' };
  }
}

/** When hands are wanted: by a phase of the bake, or at its end. */
function calledMs({ prompt, dueMs }: Due): number {
  return prompt?.dueMs ?? dueMs;
}

const PRESSURE: Readonly<Record<Role, number>> = { running: 0, call: 1, late: 2, lost: 3 };

/** splitmix32 (a 32-bit form of Steele, Lea, Flood: Fast splittable pseudorandom number generators, 2014; constants from memory): 0 to 1. */
function splitmix(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    mixed ^= mixed >>> 15;
    return (mixed >>> 0) / 4_294_967_296;
  };
}
