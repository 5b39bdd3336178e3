/**
 * What is left of every resource at each instant, as packed words (packed-demands.ts), and the search for room in it. `activity`
 * names whose demand is meant; it takes one unit of time at least.
 */
export interface Profile {
  /** The earliest start from `from` on with room for so long; -1 where there is none within the horizon. */
  readonly earliest: (activity: number, duration: number, from: number) => number;
  /** The latest start with which it ends by `to`; -1 where there is none from 0 on. */
  readonly latest: (activity: number, duration: number, to: number) => number;
  /** Takes the activity's demand from `start` on. */
  readonly take: (activity: number, duration: number, start: number) => void;
  /** Gives back everything that was taken. */
  readonly clear: () => void;
}
