import type { LagProblem } from './lag-problem.ts';
import { CONTRADICTION, HELD, TIGHTENED, tighten, type TemporalClosure, type Tightening } from './temporal-closure.ts';

// Indexes of typed arrays stay within bounds by construction here, hence `as number` in the loops.

/**
 * What certainly runs when, seen from the start of one activity: each other starts within a window counted from it, and if the window
 * is shorter than the activity takes, the middle is certain. Where the certain parts leave too little of a resource, a start is
 * pushed past them. Seen from activity 0 this is the usual timetable; seen from the others it finds what holds wherever they are
 * put. Every two activities of the closure have to be bound to each other both ways, as a latest end for everything does.
 */
export class FramePropagation {
  readonly #problem: LagProblem;
  readonly #certainFrom: Int32Array;
  readonly #certainTo: Int32Array;
  /** The certain parts' edges, ordered, and what is used from each on. */
  readonly #edges: Int32Array;
  readonly #levels: Int32Array;
  #edgeCount = 0;
  /** What the certain parts need together. */
  #certainNeed = 0;
  /** By resource, the most that one activity needs. */
  readonly #largest: Int32Array;

  constructor(problem: LagProblem) {
    this.#problem = problem;
    this.#certainFrom = new Int32Array(problem.size);
    this.#certainTo = new Int32Array(problem.size);
    this.#edges = new Int32Array(2 * problem.size);
    this.#levels = new Int32Array(2 * problem.size);
    this.#largest = Int32Array.from(problem.needs, (need) => need.reduce((most, amount) => Math.max(most, amount), 0));
  }

  /** Tightens the closure by what is certain as seen from `origin`. */
  propagate(closure: TemporalClosure, origin: number): Tightening {
    let result: Tightening = HELD;
    for (let resource = 0; resource < this.#problem.needs.length; resource += 1) {
      const done = this.#propagateResource(closure, origin, resource);
      if (done === CONTRADICTION) return CONTRADICTION;
      if (done === TIGHTENED) result = TIGHTENED;
    }
    return result;
  }

  #propagateResource(closure: TemporalClosure, origin: number, resource: number): Tightening {
    const most = this.#problem.most[resource] as number;
    const need = this.#problem.needs[resource] as Int32Array;
    const users = this.#problem.users[resource] as Int32Array;
    // A single certain part pushes what it conflicts with, and such pairs are looked at without any frame.
    if (this.#findCertain(closure, origin, users, need) < (origin === 0 ? 1 : 2)) return HELD;
    if (this.#certainNeed + (this.#largest[resource] as number) <= most) return HELD;
    this.#collect(need, users);
    let level = 0;
    let highest = 0;
    for (let edge = 0; edge < this.#edgeCount; edge += 1) {
      level += this.#levels[edge] as number;
      this.#levels[edge] = level;
      if (level > highest) highest = level;
    }
    if (highest > most) return CONTRADICTION;
    let result: Tightening = HELD;
    for (let index = 0; index < users.length; index += 1) {
      const user = users[index] as number;
      const free = most - (need[user] as number);
      if (highest <= free) continue;
      const done = this.#push(closure, origin, user, free, need[user] as number);
      if (done === CONTRADICTION) return CONTRADICTION;
      if (done === TIGHTENED) result = TIGHTENED;
    }
    return result;
  }

  /** Finds the users' certain parts, and says how many have one. */
  #findCertain({ size, lengths }: TemporalClosure, origin: number, users: Int32Array, need: Int32Array): number {
    const { durations } = this.#problem;
    const row = origin * size;
    let count = 0;
    let total = 0;
    for (let index = 0; index < users.length; index += 1) {
      const user = users[index] as number;
      const from = -(lengths[user * size + origin] as number);
      const to = (lengths[row + user] as number) + (durations[user] as number);
      this.#certainFrom[user] = from;
      this.#certainTo[user] = to;
      if (from >= to) continue;
      count += 1;
      total += need[user] as number;
    }
    this.#certainNeed = total;
    return count;
  }

  #collect(need: Int32Array, users: Int32Array): void {
    this.#edgeCount = 0;
    for (let index = 0; index < users.length; index += 1) {
      const user = users[index] as number;
      const [from, to] = [this.#certainFrom[user] as number, this.#certainTo[user] as number];
      if (from < to) this.#add(from, to, need[user] as number);
    }
  }

  #add(from: number, to: number, amount: number): void {
    this.#addEdge(from, amount);
    this.#addEdge(to, -amount);
  }

  #addEdge(at: number, change: number): void {
    let place = this.#edgeCount;
    while (place > 0 && (this.#edges[place - 1] as number) > at) place -= 1;
    if (place > 0 && this.#edges[place - 1] === at) {
      this.#levels[place - 1] = (this.#levels[place - 1] as number) + change;
      return;
    }
    this.#edges.copyWithin(place + 1, place, this.#edgeCount);
    this.#levels.copyWithin(place + 1, place, this.#edgeCount);
    this.#edges[place] = at;
    this.#levels[place] = change;
    this.#edgeCount += 1;
  }

  #push(closure: TemporalClosure, origin: number, user: number, free: number, need: number): Tightening {
    const { size, lengths } = closure;
    const earliest = lengths[origin * size + user] as number;
    const later = this.#earliestFrom(earliest, user, free, need);
    if (later > -(lengths[user * size + origin] as number)) return CONTRADICTION;
    const first = later > earliest ? tighten(closure, origin, user, later) : HELD;
    if (first === CONTRADICTION) return CONTRADICTION;
    const latest = -(lengths[user * size + origin] as number);
    const sooner = this.#latestFrom(latest, user, free, need);
    const second = sooner < latest ? tighten(closure, user, origin, -sooner) : HELD;
    return second === HELD ? first : second;
  }

  #earliestFrom(from: number, user: number, free: number, need: number): number {
    const duration = this.#problem.durations[user] as number;
    let start = from;
    for (let edge = 0; edge + 1 < this.#edgeCount; edge += 1) {
      const [begin, end] = [this.#edges[edge] as number, this.#edges[edge + 1] as number];
      if (end <= start) continue;
      if (begin >= start + duration) break;
      if (this.#isTooFull(edge, begin, user, free, need)) start = end;
    }
    return start;
  }

  #latestFrom(from: number, user: number, free: number, need: number): number {
    const duration = this.#problem.durations[user] as number;
    let start = from;
    for (let edge = this.#edgeCount - 2; edge >= 0; edge -= 1) {
      const [begin, end] = [this.#edges[edge] as number, this.#edges[edge + 1] as number];
      if (begin >= start + duration) continue;
      if (end <= start) break;
      if (this.#isTooFull(edge, begin, user, free, need)) start = begin - duration;
    }
    return start;
  }

  /** Whether others' certain parts leave too little for this one between an edge and the next. */
  #isTooFull(edge: number, begin: number, user: number, free: number, need: number): boolean {
    const level = this.#levels[edge] as number;
    if (level <= free) return false;
    const [from, to] = [this.#certainFrom[user] as number, this.#certainTo[user] as number];
    const isOwn = from <= begin && begin < to;
    return level - (isOwn ? need : 0) > free;
  }
}
