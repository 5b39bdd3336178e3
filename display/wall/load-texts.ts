import { textWidthPx } from '../parts/text-width.ts';
import type { LoadBlock } from './deck-model.ts';
import {
  APART_EM,
  GAP_EM,
  INSET_EM,
  insideLeftPx,
  nameLane,
  type LaneNaming,
  type LaneRoom,
  type LaneThing,
  type RunLabel,
} from './load-runs.ts';

/** A load with what may be written at it. */
export interface NamedLoad {
  readonly block: LoadBlock;
  readonly tag: string;
  /** When it goes in; null where the tag says enough. */
  readonly clock: string | null;
}

/** A text among the loads and where it stands. */
export interface LoadText {
  readonly key: string;
  readonly text: string;
  readonly leftPx: number;
  /** The lane it is written in, and how many it may use: a text inside its load stands in the middle. */
  readonly lane: number;
  readonly lanes: number;
  /** Inside its own load, beside it, or over what clashes or lies close together. */
  readonly where: RunLabel['where'];
  /** On a load that is in: those are dark. */
  readonly isOnDark: boolean;
}

/** A stretch of one lane that is taken. */
export interface Taken {
  readonly lane: number;
  readonly fromPx: number;
  readonly toPx: number;
}

/** What is named in one lane, and the loads that make it up. */
interface Named extends LaneThing {
  readonly loads: readonly NamedLoad[];
}

/**
 * Gives every load a name: its tag inside it or beside it, with its neighbours' where there is no room for each, as part
 * of a count where not even that goes; and its clock time where there is room still. Nothing is written on what is
 * reserved. A load across lanes is named in one of them. `uncounted` loads that are not drawn at all are counted at the
 * end of the last lane, together with those for which nothing else helped.
 */
export function placeLoadTexts(
  loads: readonly NamedLoad[],
  widthPx: number,
  sizePx: number,
  reserved: readonly Taken[] = [],
  uncounted = 0,
): LoadText[] {
  const lanes = [...new Set(loads.flatMap(({ block }) => lanesOf(block)))].sort((a, b) => a - b);
  const last = lanes.at(-1) ?? 0;
  const end = { lane: last, fromPx: widthPx - textWidthPx(WIDEST_COUNT, sizePx), toPx: widthPx };
  const nameAround = (taken: readonly Taken[]): LoadText[] | null => {
    const naming = cheapestNaming(loads, lanes, taken, widthPx, sizePx);
    const count = uncounted + unnamedIn(naming);
    if (count > 0 && !taken.includes(end)) return null;
    return [...naming.lanes.flatMap((named) => textsIn(named, taken, sizePx)), ...restText(count, last, widthPx, sizePx)];
  };
  return nameAround(reserved) ?? nameAround([...reserved, end]) ?? [];
}

/** Room that is kept for a count at the end of the last lane. */
const WIDEST_COUNT = '+00';

function cheapestNaming(
  loads: readonly NamedLoad[],
  lanes: readonly number[],
  taken: readonly Taken[],
  widthPx: number,
  sizePx: number,
): Naming {
  const [first, ...others] = homeChoices(loads).map((homes): Naming => {
    const named = lanes.map((lane): NamedLane => {
      const room = { widthPx, sizePx, reserved: taken.filter((stretch) => stretch.lane === lane) };
      const things = thingsIn(loads, homes, lane);
      return { lane, room, things, ...nameLane(things, room) };
    });
    return { lanes: named, cost: named.reduce((sum, { cost }) => sum + cost, 0) };
  });
  return others.reduce((least, naming) => (naming.cost < least.cost ? naming : least), first ?? { lanes: [], cost: 0 });
}

interface NamedLane extends LaneNaming {
  readonly lane: number;
  readonly room: LaneRoom;
  readonly things: readonly Named[];
}

interface Naming {
  readonly lanes: readonly NamedLane[];
  readonly cost: number;
}

/** In which lane each load is named. */
type Homes = ReadonlyMap<NamedLoad, number>;

/** How many loads have no name, and are in no count. */
function unnamedIn({ lanes }: Naming): number {
  return lanes.reduce((sum, { things, labels }) => {
    const named = new Set(labels.flatMap((label) => label.things.map(({ key }) => key)));
    return sum + things.filter(({ key }) => !named.has(key)).reduce((count, { tags }) => count + tags.length, 0);
  }, 0);
}

function textsIn({ lane, room, things, labels }: NamedLane, taken: readonly Taken[], sizePx: number): LoadText[] {
  const timed = [...labels];
  labels.forEach((label, index) => {
    timed[index] = withClock(label, timed, things, room);
  });
  return timed.map((label) => textOf(label, lane, things, taken, sizePx));
}

/** How many loads could not be named, at the end of the last lane. */
function restText(count: number, lane: number, widthPx: number, sizePx: number): LoadText[] {
  if (count === 0) return [];
  const text = `+${count}`;
  return [{ key: 'rest', text, leftPx: widthPx - textWidthPx(text, sizePx), lane, lanes: 1, where: 'right', isOnDark: false }];
}

/** Ways to spread the loads that lie across lanes: evenly, all in their first lane, all in their last. */
function homeChoices(loads: readonly NamedLoad[]): readonly Homes[] {
  const first = new Map(loads.map((load) => [load, load.block.lane]));
  if (loads.every(({ block }) => block.lanes === 1)) return [first];
  return [evenHomes(loads), first, new Map(loads.map((load) => [load, load.block.lane + load.block.lanes - 1]))];
}

function evenHomes(loads: readonly NamedLoad[]): Homes {
  const homes = new Map<NamedLoad, number>();
  const counts = new Map<number, number>();
  for (const load of loads.toSorted((a, b) => a.block.lanes - b.block.lanes)) {
    const [least = load.block.lane] = lanesOf(load.block).toSorted((a, b) => (counts.get(a) ?? 0) - (counts.get(b) ?? 0) || a - b);
    homes.set(load, least);
    counts.set(least, (counts.get(least) ?? 0) + 1);
  }
  return homes;
}

function lanesOf(block: LoadBlock): number[] {
  return Array.from({ length: block.lanes }, (_, index) => block.lane + index);
}

/** Everything drawn in a lane, in order of time; loads that clash there are one. */
function thingsIn(loads: readonly NamedLoad[], homes: Homes, lane: number): Named[] {
  const here = loads
    .filter(({ block }) => block.lane <= lane && lane < block.lane + block.lanes)
    .toSorted((a, b) => a.block.fromPx - b.block.fromPx || a.block.toPx - b.block.toPx);
  const things: Named[] = [];
  for (const load of here) {
    const { block } = load;
    const named = homes.get(load) === lane ? [load] : [];
    const last = things.at(-1);
    if (last !== undefined && last.look === 'clash' && block.look === 'clash' && block.fromPx <= last.toPx) {
      const members = [...last.loads, ...named];
      things[things.length - 1] = { ...last, toPx: Math.max(last.toPx, block.toPx), loads: members, tags: tagsOf(members) };
      continue;
    }
    things.push({
      key: block.key,
      fromPx: block.fromPx,
      toPx: block.toPx,
      look: block.look,
      loads: named,
      tags: tagsOf(named),
    });
  }
  return things;
}

function tagsOf(loads: readonly NamedLoad[]): string[] {
  return [...new Set(loads.map(({ tag }) => tag))];
}

/** A stretch of a lane. */
interface Stretch {
  readonly fromPx: number;
  readonly toPx: number;
}

/** The same label with its clock time, where it names one thing whole and there is room. */
function withClock(
  label: RunLabel,
  labels: readonly RunLabel[],
  things: readonly Named[],
  { widthPx, sizePx, reserved }: LaneRoom,
): RunLabel {
  const [thing] = label.things;
  const clock = things.find(({ key }) => key === thing?.key)?.loads.at(-1)?.clock ?? null;
  if (thing === undefined || label.things.length > 1 || clock === null || label.text !== thing.tags.join(' × ')) return label;
  const text = `${label.text} ${clock}`;
  const textPx = textWidthPx(text, sizePx);
  const apartPx = sizePx * APART_EM;
  const written: readonly Stretch[] = [
    ...labels
      .filter((other) => other !== label)
      .map((other) => ({ fromPx: other.leftPx, toPx: other.leftPx + textWidthPx(other.text, sizePx) })),
    ...reserved,
  ];
  const keepsFrom = (others: readonly Stretch[], fromPx: number): boolean =>
    others.every((other) => other.toPx + apartPx <= fromPx || fromPx + textPx + apartPx <= other.fromPx);
  const isFree = (fromPx: number): boolean =>
    fromPx >= sizePx * GAP_EM &&
    fromPx + textPx <= widthPx + sizePx / 2 &&
    keepsFrom(written, fromPx) &&
    keepsFrom(
      things.filter(({ key }) => key !== thing.key),
      fromPx,
    );
  const boxPx = thing.toPx - thing.fromPx;
  const insidePx = insideLeftPx(thing.fromPx, boxPx, textPx, sizePx);
  const fitsInside = thing.look !== 'clash' && textPx + 2 * sizePx * INSET_EM <= boxPx && keepsFrom(written, insidePx);
  switch (label.where) {
    case 'inside': {
      if (fitsInside) return { ...label, text, leftPx: insidePx };
      const outsidePx = [thing.toPx + sizePx * GAP_EM, thing.fromPx - sizePx * GAP_EM - textPx].find(isFree);
      return outsidePx === undefined ? label : { ...label, text, leftPx: outsidePx, where: outsidePx > thing.fromPx ? 'right' : 'left' };
    }
    case 'right':
    case 'over':
      return isFree(label.leftPx) ? { ...label, text } : label;
    case 'left': {
      const leftPx = thing.fromPx - sizePx * GAP_EM - textPx;
      return isFree(leftPx) ? { ...label, text, leftPx } : label;
    }
  }
}

function textOf(label: RunLabel, lane: number, things: readonly Named[], taken: readonly Taken[], sizePx: number): LoadText {
  const [load] = things.find(({ key }) => key === label.things[0]?.key)?.loads ?? [];
  const { leftPx, text, where } = label;
  const toPx = leftPx + textWidthPx(text, sizePx);
  const ownLanes = where === 'inside' && load !== undefined ? lanesOf(load.block) : [lane];
  // In the middle of its load, unless something else is written in one of its lanes there.
  const isMiddleFree = taken.every((other) => !ownLanes.includes(other.lane) || other.toPx <= leftPx || toPx <= other.fromPx);
  return {
    key: label.things.map(({ key }) => key).join(),
    text,
    leftPx,
    lane: isMiddleFree ? (ownLanes[0] ?? lane) : lane,
    lanes: isMiddleFree ? ownLanes.length : 1,
    where,
    isOnDark: where === 'inside' && load?.block.look === 'in',
  };
}
