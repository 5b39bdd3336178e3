import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { resourceName } from '../../shared/floor/resources.ts';
import { unreachable } from '../../shared/result.ts';
import { dayClockText } from '../parts/day-clock-text.ts';
import { clockText } from '../parts/clock-text.ts';
import {
  awayWords,
  busyWords,
  clashAtWords,
  fixedWords,
  handsAtWords,
  lateByWords,
  lengthWords,
  movedWords,
  orderWords,
  ordersAtWords,
  piecesWords,
  pinMissedWords,
  rowWords,
  SHEET_WORDS,
  shortOfWords,
  stretchWords,
  tillWords,
  waitsWords,
} from '../words/day-sheet.ts';
import { VERBS } from '../words/verbs.ts';
import { slackMs, type Bar, type StepResource } from './sheet-bar.ts';
import type { Clash } from './sheet-clashes.ts';
import type { Closed } from './sheet-closed.ts';
import type { MarkedOrder, OrderMark } from './sheet-orders.ts';
import type { Grouping, RowHead, SheetRow } from './sheet-rows.ts';

const MINUTE_MS = 60_000;

/** What texts of a sheet are written with. */
export interface SheetContext {
  readonly kitchen: Kitchen | null;
  readonly zone: string;
  readonly nowMs: number;
  readonly grouping: Grouping;
}

/** What a step is called. */
export function verbText({ step }: Bar): string {
  return VERBS[step.verb].running;
}

/** "C1 fold". */
export function barTitle(bar: Bar): string {
  return `${bar.tag} ${verbText(bar)}`;
}

/** "04:10–04:40, 30 min"; the weekday stands before it where it is not today's. */
export function stretchText({ fromMs, toMs }: Pick<Bar, 'fromMs' | 'toMs'>, { zone, nowMs }: SheetContext): string {
  return stretchWords(dayClockText(fromMs, nowMs, zone), clockText(toMs, zone), lengthWords((toMs - fromMs) / MINUTE_MS));
}

/** How long a step may wait, in words; '' for one that has begun or is a rest, which ends when something else begins. */
export function slackText(bar: Bar, { zone }: SheetContext): string {
  if (bar.standing === 'done' || bar.standing === 'begun' || bar.step.kind === 'timed') return '';
  const slack = slackMs(bar);
  if (slack === null || bar.latestStartMs === null) return SHEET_WORDS.mayWaitOpen;
  return slack < MINUTE_MS ? SHEET_WORDS.noMore : tillWords(clockText(bar.latestStartMs, zone), lengthWords(slack / MINUTE_MS));
}

/** Where a moved step stood before; '' for one that has not moved. */
export function movedText({ wasMs, fromMs }: Bar, { zone, nowMs }: SheetContext): string {
  if (wasMs === null) return '';
  return movedWords(dayClockText(wasMs, nowMs, zone), lengthWords(Math.abs(fromMs - wasMs) / MINUTE_MS), fromMs > wasMs);
}

/** The name of a thing of the kitchen; its key where the kitchen does not have it. */
export function thingText(resource: StepResource, kitchen: Kitchen | null): string {
  if (kitchen === null) return resource.id;
  const oven =
    resource.kind === 'deck'
      ? kitchen.ovens.find(({ decks }) => decks.length > 1 && decks.some(({ id }) => id === resource.id))
      : undefined;
  const name = resourceName(kitchen, resource);
  // Top and bottom are of an oven; a deck alone has a name of its own.
  if (oven !== undefined && name !== null) return `${oven.name}, ${name}`;
  return name ?? (resource.kind === 'bench' ? benchText(resource.id) : resource.id);
}

/** A thing where nothing beside it tells what it is: hands are told from the place at which they work. */
export function thingAloneText(resource: StepResource, kitchen: Kitchen | null): string {
  const name = thingText(resource, kitchen);
  const places = kitchen === null ? [] : [...kitchen.restPlaces, ...kitchen.mixers, ...kitchen.ovens];
  return resource.kind === 'station' && places.some((place) => place.name === name) ? handsAtWords(name) : name;
}

/** A bench that no rest place stands for, by its number where there are several: `bench`, `bench-2`. */
function benchText(id: string): string {
  const number = /-(\d+)$/.exec(id)?.[1];
  return number === undefined ? SHEET_WORDS.bench : `${SHEET_WORDS.bench} ${number}`;
}

/** What a step takes, in names. */
export function withText({ resources }: Bar, { kitchen }: SheetContext): string {
  return [...new Set(resources.map((resource) => thingText(resource, kitchen)))].join(', ');
}

/** How much there is of a thing; '' where nobody counts. */
export function roomText({ resource, room }: Extract<RowHead, { kind: 'resource' }>): string {
  const { rooms } = SHEET_WORDS;
  if (resource.kind === 'restPlace') return rooms.restPlace(room);
  if (room === null) return '';
  switch (resource.kind) {
    case 'mixer':
      return rooms.mixer();
    case 'station':
    case 'deck':
    case 'bench':
      return rooms[resource.kind](room);
    case 'bowl':
    case 'vessel':
    case 'slot':
      return '';
    default:
      return unreachable(resource.kind);
  }
}

/** What a screen reader says of a step: everything that its look tells. */
export function barLabel(bar: Bar, clashes: readonly Clash[], context: SheetContext): string {
  const slack = slackText(bar, context);
  return [
    barTitle(bar),
    stretchText(bar, context),
    SHEET_WORDS.standings[bar.standing],
    withText(bar, context),
    bar.pin === null ? '' : fixedWords(clockText(bar.pin.startMs, context.zone)),
    slack === '' || bar.latestStartMs === null ? '' : `${SHEET_WORDS.mayWait} ${slack}`,
    movedText(bar, context),
    ...clashes.filter((clash) => clash.barKeys.includes(bar.key)).map((clash) => clashText(clash, [bar], context)),
  ]
    .filter((text) => text !== '')
    .join('; ');
}

/** What does not go together, in a sentence. `bars` are those that it may name. */
export function clashText(clash: Clash, bars: readonly Bar[], { kitchen, zone, nowMs }: SheetContext): string {
  switch (clash.kind) {
    case 'busy': {
      const stretch = `${dayClockText(clash.fromMs, nowMs, zone)}–${clockText(clash.toMs, zone)}`;
      return busyWords(thingText(clash.resource, kitchen), clash.wanted, clash.room, stretch, clash.tags.join(', '));
    }
    case 'away': {
      const stretch = `${dayClockText(clash.fromMs, nowMs, zone)}–${clockText(clash.toMs, zone)}`;
      return awayWords(thingText(clash.resource, kitchen), SHEET_WORDS[clash.why], stretch, clash.tags);
    }
    case 'waits':
      return waitsWords(clash.tags.join(', '), verbOf(clash, bars), lengthWords(clash.byMin));
    case 'pin':
      return pinMissedWords(clash.tags.join(', '), verbOf(clash, bars), clockText(clash.toMs, zone), clockText(clash.fromMs, zone));
    default:
      return unreachable(clash);
  }
}

function verbOf(clash: Clash, bars: readonly Bar[]): string {
  const bar = bars.find((candidate) => clash.barKeys.includes(candidate.key));
  return bar === undefined ? '' : verbText(bar);
}

/** When a thing cannot be had, and why: "nobody there 10:00–10:30". */
export function closedText({ why, fromMs, toMs }: Closed, { zone, nowMs }: SheetContext): string {
  return `${SHEET_WORDS[why]} ${dayClockText(fromMs, nowMs, zone)}–${clockText(toMs, zone)}`;
}

/** What stands beside the sign of a clash, in its row. */
export function clashChipText(atMs: number, { zone }: SheetContext): string {
  return clashAtWords(clockText(atMs, zone));
}

/** A row's name: its dough, or the thing with how much there is of it. */
export function headTitle({ head }: SheetRow, { kitchen }: SheetContext): string {
  if (head.kind === 'cleaning') return head.name;
  if (head.kind === 'dough') return [`${head.tag} ${head.name}`, ...(head.pieces === null ? [] : [piecesWords(head.pieces)])].join(', ');
  return [thingText(head.resource, kitchen), roomText(head)].filter((text) => text !== '').join(', ');
}

/** A row's heading as a screen reader says it. */
export function headLabel(row: SheetRow, context: SheetContext): string {
  return rowWords(headTitle(row, context), row.placed.length);
}

/** "12 × Country loaf, harbour stall". */
export function orderText({ order, productName }: MarkedOrder): string {
  const what = orderWords(order.pieces, productName);
  return order.label === undefined ? what : `${what}, ${order.label}`;
}

/** How an order stands: late, short, or in time. */
export function orderStandingText({ lateMin, shortPieces }: MarkedOrder): string {
  const told = [lateMin === null ? '' : lateByWords(lengthWords(lateMin)), shortPieces === null ? '' : shortOfWords(shortPieces)];
  const said = told.filter((text) => text !== '').join(', ');
  return said === '' ? SHEET_WORDS.inTime : said;
}

/** What stands at the mark of orders: the one, or how many. */
export function orderMarkText(mark: OrderMark, { zone }: SheetContext): string {
  const [only] = mark.orders;
  const clock = clockText(mark.readyMs, zone);
  const lateCount = mark.orders.filter(({ lateMin, shortPieces }) => lateMin !== null || shortPieces !== null).length;
  if (mark.orders.length > 1 || only === undefined) return `${clock} ${ordersAtWords(mark.orders.length, lateCount)}`;
  const text = `${clock} ${orderText(only)}`;
  return lateCount === 0 ? text : `${text}, ${orderStandingText(only)}`;
}
