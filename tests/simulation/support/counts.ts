/** What happened in a run, so that one can see that the invariants had something to hold. */
export interface Counts {
  steps: number;
  taps: number;
  events: number;
  crashes: number;
  crashBeforeAppend: number;
  crashAfterAppend: number;
  crashAfterAcknowledge: number;
  keptThoughFailed: number;
  stops: number;
  starts: number;
  startsFromSnapshot: number;
  clockJumps: number;
  serverSleeps: number;
  diskFull: number;
  brokenLines: number;
  reloads: number;
  phoneClockSets: number;
  doubledMessages: number;
  repeatedCommands: number;
  certainTaps: number;
  uncertainTaps: number;
  firstTold: number;
  raised: number;
  sounded: number;
  testsAsked: number;
  testsSounded: number;
  liveCalls: number;
  liveSounds: number;
  stateChecks: number;
  pageClocks: number;
}

export function noCounts(): Counts {
  return {
    steps: 0,
    taps: 0,
    events: 0,
    crashes: 0,
    crashBeforeAppend: 0,
    crashAfterAppend: 0,
    crashAfterAcknowledge: 0,
    keptThoughFailed: 0,
    stops: 0,
    starts: 0,
    startsFromSnapshot: 0,
    clockJumps: 0,
    serverSleeps: 0,
    diskFull: 0,
    brokenLines: 0,
    reloads: 0,
    phoneClockSets: 0,
    doubledMessages: 0,
    repeatedCommands: 0,
    certainTaps: 0,
    uncertainTaps: 0,
    firstTold: 0,
    raised: 0,
    sounded: 0,
    testsAsked: 0,
    testsSounded: 0,
    liveCalls: 0,
    liveSounds: 0,
    stateChecks: 0,
    pageClocks: 0,
  };
}

/** How often each word of a phone got on the disk, and how often it was accepted there. */
export interface WordCount {
  said: number;
  accepted: number;
}
export type WordCounts = Record<string, WordCount>;

/** Counts one word, or those of another run. */
export function countWord(words: WordCounts, type: string, { said, accepted }: WordCount): void {
  const before = words[type] ?? { said: 0, accepted: 0 };
  words[type] = { said: before.said + said, accepted: before.accepted + accepted };
}

/** Adds one run's counts to others. */
export function addCounts(to: Counts, from: Counts): void {
  for (const key of Object.keys(from) as (keyof Counts)[]) to[key] += from[key];
}
