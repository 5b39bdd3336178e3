import { textWidthPx } from '../parts/text-width.ts';

/** Something in a lane: it wants a name, or is only in the way of names. */
export interface LaneThing {
  readonly key: string;
  readonly fromPx: number;
  readonly toPx: number;
  /** Tags to be told; of loads that clash, all of them. Empty: only in the way. */
  readonly tags: readonly string[];
  /** Loads that clash are one thing, and are written over rather than into; what is in is never written over. */
  readonly look: 'in' | 'booked' | 'clash';
}

/** The name of one thing, or of neighbours together. */
export interface RunLabel {
  readonly things: readonly LaneThing[];
  readonly text: string;
  readonly leftPx: number;
  readonly where: 'inside' | 'right' | 'left' | 'over';
}

/** Where a lane ends, how big its texts are. */
export interface LaneRoom {
  readonly widthPx: number;
  readonly sizePx: number;
  /** Texts that stand already. */
  readonly reserved: readonly { readonly fromPx: number; readonly toPx: number }[];
}

/** Between a load and its own text, and between a text and whatever else is near, in em: what is nearer is what is meant. */
export const GAP_EM = 0.22;
export const APART_EM = 0.36;
/** Between a load's edge and the text inside it, in em, at least. */
export const INSET_EM = 0.06;

/**
 * What a name costs: by where it stands, by how many things share it and over how many em, by the tags that it leaves
 * to a count, by being no more than a count, of one above all; and what no name at
 * all costs.
 */
const COST = {
  inside: 0,
  right: 0,
  left: 0.6,
  overClash: 0.8,
  over: 9,
  shared: 1.5,
  sharedEm: 0.7,
  counted: 1.3,
  onlyCounted: 2,
  countOfOne: 4,
  none: 60,
} as const;

/** All names of a lane. */
export interface LaneNaming {
  /** The less, the better it reads. */
  readonly cost: number;
  readonly labels: readonly RunLabel[];
}

/**
 * Names everything in a lane, from NOW on: each thing by itself where there is room beside or inside it, otherwise
 * neighbours together in their order ("C2 R4"), at worst as a count ("+3"). The cheapest way of all is taken. Things come
 * sorted by where they begin.
 */
export function nameLane(things: readonly LaneThing[], room: LaneRoom): LaneNaming {
  return new LaneNames(things, room).from(0, 0);
}

class LaneNames {
  private readonly known = new Map<string, LaneNaming>();
  private readonly knownTexts = new Map<string, readonly RunText[]>();
  private readonly things: readonly LaneThing[];
  private readonly room: LaneRoom;

  constructor(things: readonly LaneThing[], room: LaneRoom) {
    this.things = things;
    this.room = room;
  }

  /** The cheapest names for all things from the index on, where everything up to `usedPx` is taken. */
  from(index: number, usedPx: number): LaneNaming {
    const thing = this.things[index];
    if (thing === undefined) return { cost: 0, labels: [] };
    if (thing.tags.length === 0) return this.from(index + 1, Math.max(usedPx, thing.toPx));
    const key = `${index} ${Math.round(usedPx)}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const choice = this.cheapest(index, usedPx);
    this.known.set(key, choice);
    return choice;
  }

  private cheapest(index: number, usedPx: number): LaneNaming {
    const first = this.things[index];
    let best: LaneNaming = { cost: Number.POSITIVE_INFINITY, labels: [] };
    const take = (cost: number, label: RunLabel | null, next: number, toPx: number): void => {
      if (cost >= best.cost) return;
      const rest = this.from(next, toPx);
      if (cost + rest.cost < best.cost) best = { cost: cost + rest.cost, labels: label === null ? rest.labels : [label, ...rest.labels] };
    };
    const run: LaneThing[] = [];
    for (let end = index; end < this.things.length; end += 1) {
      const thing = this.things[end];
      if (thing === undefined || thing.tags.length === 0) break;
      run.push(thing);
      const things = [...run];
      const runToPx = Math.max(...things.map(({ toPx }) => toPx));
      for (const { where, text, leftPx, cost, toPx } of this.placesOf(things, runToPx, usedPx, end)) {
        take(cost + this.sharedCost(things), { things, text, leftPx, where }, end + 1, Math.max(usedPx, runToPx, toPx));
      }
    }
    if (first !== undefined) take(COST.none * first.tags.length, null, index + 1, Math.max(usedPx, first.toPx));
    return best;
  }

  private sharedCost(things: readonly LaneThing[]): number {
    const reachPx = (things.at(-1)?.fromPx ?? 0) - (things[0]?.fromPx ?? 0);
    return (things.length - 1) * COST.shared + (reachPx / this.room.sizePx) * COST.sharedEm;
  }

  /** Everywhere that a run's name fits, each with the fullest text that does. */
  private placesOf(things: readonly LaneThing[], runToPx: number, usedPx: number, end: number): Place[] {
    const { sizePx, widthPx } = this.room;
    const [first] = things;
    if (first === undefined) return [];
    const gapPx = sizePx * GAP_EM;
    const apartPx = sizePx * APART_EM;
    const insetPx = sizePx * INSET_EM;
    const nextPx = this.things[end + 1]?.fromPx;
    const lastPx = nextPx === undefined ? widthPx + sizePx / 2 : nextPx - apartPx;
    const isOne = things.length === 1;
    const boxPx = runToPx - first.fromPx;
    const candidates: readonly Candidate[] = [
      ...(isOne && first.look !== 'clash'
        ? [
            {
              where: 'inside',
              cost: COST.inside,
              startOf: (textPx: number) => insideLeftPx(first.fromPx, boxPx, textPx, sizePx),
              lastPx: runToPx - insetPx,
            } as const,
          ]
        : []),
      { where: 'right', cost: COST.right, startOf: () => runToPx + gapPx, lastPx },
      { where: 'left', cost: COST.left, startOf: (textPx: number) => first.fromPx - gapPx - textPx, lastPx: first.fromPx },
      ...(things.some(({ look }) => look === 'in')
        ? []
        : [
            {
              where: 'over',
              cost: isOne && first.look === 'clash' ? COST.overClash : COST.over * things.length,
              startOf: () => first.fromPx + 2 * insetPx,
              lastPx: Math.max(lastPx, runToPx - 2 * insetPx),
            } as const,
          ]),
    ];
    const texts = this.textsAt(end, things);
    const leastPx = usedPx === 0 ? gapPx : usedPx + apartPx;
    return candidates.flatMap((candidate) => {
      for (const { text, textPx, counted, isCount } of texts) {
        const leftPx = candidate.startOf(textPx);
        const toPx = leftPx + textPx;
        if (candidate.where === 'left' && leftPx < leastPx) continue;
        if (toPx > candidate.lastPx || !this.isFree(leftPx, toPx)) continue;
        // What is written beyond its own thing keeps others away; what is inside does not.
        const takenPx = candidate.where === 'right' || candidate.where === 'over' ? toPx : 0;
        return [
          {
            where: candidate.where,
            text,
            leftPx,
            cost: candidate.cost + counted * COST.counted + (isCount ? (counted === 1 ? COST.countOfOne : COST.onlyCounted) : 0),
            toPx: takenPx,
          },
        ];
      }
      return [];
    });
  }

  /** A run is tried again for each place that the one before may end at: its texts are the same. */
  private textsAt(end: number, things: readonly LaneThing[]): readonly RunText[] {
    const key = `${end} ${things.length}`;
    const known = this.knownTexts.get(key);
    if (known !== undefined) return known;
    const texts = textsOf(things, this.room.sizePx);
    this.knownTexts.set(key, texts);
    return texts;
  }

  private isFree(fromPx: number, toPx: number): boolean {
    const apartPx = this.room.sizePx * APART_EM;
    return this.room.reserved.every((other) => other.toPx + apartPx <= fromPx || toPx + apartPx <= other.fromPx);
  }
}

interface Candidate {
  readonly where: RunLabel['where'];
  readonly cost: number;
  startOf(textPx: number): number;
  readonly lastPx: number;
}

interface Place extends Omit<RunLabel, 'things'> {
  readonly cost: number;
  readonly toPx: number;
}

/** Where a text begins inside a box: near its left edge, in the middle of a narrow one. */
export function insideLeftPx(fromPx: number, boxPx: number, textPx: number, sizePx: number): number {
  return fromPx + Math.max(sizePx * INSET_EM, Math.min(sizePx * GAP_EM, (boxPx - textPx) / 2));
}

interface RunText {
  readonly text: string;
  readonly textPx: number;
  /** How many of the tags it only counts. */
  readonly counted: number;
  readonly isCount: boolean;
}

/** The names of a run, the fullest first: all tags, fewer and a count, only a count. */
function textsOf(things: readonly LaneThing[], sizePx: number): readonly RunText[] {
  const words = things.flatMap(({ tags }) => tags.map((tag, index) => (index === 0 ? tag : `× ${tag}`)));
  return Array.from({ length: words.length + 1 }, (_, counted) => {
    const told = words.slice(0, words.length - counted);
    const text = [...told, ...(counted === 0 ? [] : [`+${counted}`])].join(' ');
    return { text, textPx: textWidthPx(text, sizePx), counted, isCount: told.length === 0 };
  });
}
