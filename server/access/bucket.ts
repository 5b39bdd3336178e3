/** How much may come at once, and how much again each second. */
export interface Flow {
  readonly burst: number;
  readonly perS: number;
}

const SECOND_MS = 1000;

/** A bucket of tokens that fills again with time; whoever finds it empty has asked too much (a token bucket, as in RFC 2697 section 3). */
export class Bucket {
  readonly #flow: Flow;
  #tokens: number;
  #atMs: number;

  constructor(flow: Flow, nowMs: number) {
    this.#flow = flow;
    this.#tokens = flow.burst;
    this.#atMs = nowMs;
  }

  /** Takes a token by a clock that nobody can set: 0, or for how many ms there is none. */
  take(nowMs: number): number {
    const { burst, perS } = this.#flow;
    this.#tokens = Math.min(burst, this.#tokens + ((nowMs - this.#atMs) / SECOND_MS) * perS);
    this.#atMs = nowMs;
    if (this.#tokens < 1) return ((1 - this.#tokens) / perS) * SECOND_MS;
    this.#tokens -= 1;
    return 0;
  }
}

/** A bucket for each of many, by name; who was not there for longest is forgotten beyond `most`. */
export class Buckets {
  readonly #flow: Flow;
  readonly #most: number;
  readonly #byName = new Map<string, Bucket>();

  constructor(flow: Flow, most: number) {
    this.#flow = flow;
    this.#most = most;
  }

  /** Takes a token of somebody's: 0, or for how many ms there is none. */
  take(name: string, nowMs: number): number {
    const bucket = this.#byName.get(name) ?? new Bucket(this.#flow, nowMs);
    this.#byName.delete(name);
    this.#byName.set(name, bucket);
    const [oldest] = this.#byName.keys();
    if (this.#byName.size > this.#most && oldest !== undefined) this.#byName.delete(oldest);
    return bucket.take(nowMs);
  }
}
