import type { CompiledDay } from './compiled-day.ts';
import { NO_CHOICE, NOT_BEGUN_S, NOWHERE, type CompiledHold } from './compiled-holds.ts';
import { Room } from './room.ts';

// Indexes stay within their arrays by construction; `as number` only tells the type check so.

/** No option chosen yet. */
export const OPEN = -1;

/** What was done, so that it can be undone: the last first. */
interface Change {
  readonly kind: 'put' | 'taken' | 'chosen' | 'forced';
  readonly index: number;
  readonly before: number;
}

/** A plan being made: which blocks stand when, which options are chosen, what is left of every resource. All of it can be undone. */
export class DayPlan {
  readonly day: CompiledDay;
  readonly startS: Int32Array;
  readonly stands: Uint8Array;
  /** By choice. */
  readonly option: Int32Array;
  /** 1 for blocks that had to be put where there is no room for what they hold. */
  readonly isForced: Uint8Array;
  readonly rooms: readonly Room[];
  readonly #changes: Change[] = [];

  /** With nothing in it yet. */
  constructor(day: CompiledDay) {
    this.day = day;
    this.startS = new Int32Array(day.count);
    this.stands = new Uint8Array(day.count);
    this.isForced = new Uint8Array(day.count);
    this.option = new Int32Array(day.problem.choices.length).fill(OPEN);
    this.rooms = day.problem.resources.map((resource) => new Room(resource));
  }

  /** Where to undo to. */
  get mark(): number {
    return this.#changes.length;
  }

  /** Puts a block down. Its choices have to be made. */
  put(block: number, startS: number): void {
    this.#changes.push({ kind: 'put', index: block, before: 0 });
    this.#put(block, startS);
  }

  /** Takes a block up. */
  takeUp(block: number): void {
    this.#changes.push({ kind: 'taken', index: block, before: this.startS[block] as number });
    this.#takeUp(block);
  }

  /** Chooses an option, or opens the choice. No block with a hold on it may stand. */
  choose(choice: number, option: number): void {
    if (this.option[choice] === option) return;
    this.#changes.push({ kind: 'chosen', index: choice, before: this.option[choice] as number });
    this.option[choice] = option;
  }

  /** Says whether a block is where there is no room for it. */
  force(block: number, isForced: boolean): void {
    if ((this.isForced[block] === 1) === isForced) return;
    this.#changes.push({ kind: 'forced', index: block, before: this.isForced[block] as number });
    this.isForced[block] = isForced ? 1 : 0;
  }

  /** Undoes everything since a mark. */
  undoTo(mark: number): void {
    while (this.#changes.length > mark) {
      const { kind, index, before } = this.#changes.pop() as Change;
      switch (kind) {
        case 'put':
          this.#takeUp(index);
          break;
        case 'taken':
          this.#put(index, before);
          break;
        case 'chosen':
          this.option[index] = before;
          break;
        case 'forced':
          this.isForced[index] = before;
          break;
      }
    }
  }

  /** Forgets how to undo what was done so far. */
  keep(): void {
    this.#changes.length = 0;
  }

  /** Calls back for each block that was put or taken since a mark; for some more than once. */
  touchedSince(mark: number, call: (block: number) => void): void {
    for (let at = mark; at < this.#changes.length; at += 1) {
      const { kind, index } = this.#changes[at] as Change;
      if (kind === 'put' || kind === 'taken' || kind === 'forced') call(index);
    }
  }

  /** Which of a hold's places is chosen; OPEN where the choice is not made. */
  placeOf(hold: CompiledHold): number {
    return hold.choice === NO_CHOICE ? 0 : (this.option[hold.choice] as number);
  }

  /** When a hold begins, its first block standing. */
  holdFromS(hold: CompiledHold): number {
    return (this.startS[hold.from] as number) + hold.fromOffsetS;
  }

  /** When a hold ends, its last block standing. */
  holdToS(hold: CompiledHold): number {
    return (this.startS[hold.to] as number) + hold.toOffsetS;
  }

  #put(block: number, startS: number): void {
    this.startS[block] = startS;
    this.stands[block] = 1;
    for (const hold of this.day.holdsOf[block] ?? []) {
      if (this.stands[hold.from] === 0) continue;
      if (this.stands[hold.to] === 1) {
        if (hold.to === block && hold.from !== block) this.#keepBegun(hold, -1);
        this.#book(hold, this.holdToS(hold), 1);
      } else {
        this.#keepBegun(hold, 1);
      }
    }
  }

  #takeUp(block: number): void {
    for (const hold of this.day.holdsOf[block] ?? []) {
      if (this.stands[hold.from] === 0) continue;
      if (this.stands[hold.to] === 1) {
        this.#book(hold, this.holdToS(hold), -1);
        if (hold.to === block && hold.from !== block) this.#keepBegun(hold, 1);
      } else {
        this.#keepBegun(hold, -1);
      }
    }
    this.stands[block] = 0;
  }

  /** What has begun stays where it is for as long as it must, even while nobody says until when. */
  #keepBegun(hold: CompiledHold, sign: 1 | -1): void {
    if (hold.begunUntilS !== NOT_BEGUN_S) this.#book(hold, hold.begunUntilS, sign);
  }

  #book(hold: CompiledHold, toS: number, sign: 1 | -1): void {
    const place = this.placeOf(hold);
    const fromS = this.holdFromS(hold);
    const resource = hold.resources[place] as number;
    if (toS <= fromS || resource === NOWHERE) return;
    const room = this.rooms[resource] as Room;
    if (sign > 0) room.put(fromS, toS, hold.amounts[place] as number, hold.states[place] as number);
    else room.takeAway(fromS, toS, hold.amounts[place] as number, hold.states[place] as number);
  }
}
