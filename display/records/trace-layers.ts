import type { TraceAnswer, TraceNode } from '../../shared/records/trace-answer.ts';

/** Columns of the picture, from lots to products. */
export const COLUMNS = 5;
/** Boxes that one column holds before what is alike is drawn as one. */
const MOST_BOXES = 8;
const [LOTS, STOCKS, DOUGHS, PARTS, PRODUCTS] = [0, 1, 2, 3, 4] as const;

/** What is drawn as one box: a lot, a workpiece, or several that are alike. */
export interface Box {
  readonly key: string;
  /** What it is called by: a lot number, a tag, or the formula or product of several. */
  readonly subject: { readonly kind: 'lot' | 'tag'; readonly text: string } | { readonly kind: 'formula' | 'product'; readonly id: string };
  /** What a tag is of. */
  readonly of: { readonly kind: 'formula' | 'product' | 'ingredient'; readonly id: string } | null;
  readonly count: number;
  readonly firstDate: string;
  readonly lastDate: string;
  /** Feeds of a pot since, the most; of a product, the fewest between. */
  readonly feeds: number;
}

/** A line between two boxes, by their columns and rows. */
export interface Line {
  readonly from: readonly [column: number, row: number];
  readonly to: readonly [column: number, row: number];
}

/** A trace as a picture: columns of boxes, and the lines between them. `others`: boxes of each column that are not drawn. */
export interface TraceLayers {
  readonly columns: readonly (readonly Box[])[];
  readonly others: readonly number[];
  readonly lines: readonly Line[];
}

interface Item extends Omit<Box, 'key' | 'count' | 'firstDate' | 'lastDate'> {
  readonly id: string;
  readonly date: string;
  readonly alike: { readonly kind: 'formula' | 'product'; readonly id: string } | null;
}

/** Lays a trace out from left to right. Columns that would be too long are drawn by formula or product and day, then for all days. */
export function traceLayers(answer: TraceAnswer): TraceLayers {
  const items = itemsOf(answer);
  const placed = new Map<string, readonly [number, number]>();
  const others: number[] = [];
  const columns = items.map((column, index) => {
    const { boxes, members } = boxesOf(column);
    boxes.forEach((box, row) => {
      for (const id of members.get(box.key) ?? []) placed.set(id, [index, row]);
    });
    others.push(new Set(column.map(({ id }) => id)).size - boxes.reduce((sum, box) => sum + box.count, 0));
    return boxes;
  });
  const lines = new Map<string, Line>();
  for (const [fromId, toId] of linesOf(answer)) {
    const [from, to] = [placed.get(fromId), placed.get(toId)];
    if (from === undefined || to === undefined || (from[0] === to[0] && from[1] === to[1])) continue;
    lines.set(`${from.join()} ${to.join()}`, { from, to });
  }
  return { columns, others, lines: [...lines.values()] };
}

const lotId = (ingredient: string, lot: string): string => `lot ${ingredient} ${lot}`;
const productId = (product: string, date: string): string => `product ${product} ${date}`;

function itemsOf({ lots, nodes, products }: TraceAnswer): readonly (readonly Item[])[] {
  const columns: Item[][] = Array.from({ length: COLUMNS }, () => []);
  for (const { ingredient, lot, serviceDate, feeds } of lots) {
    const of = { kind: 'ingredient', id: ingredient } as const;
    columns[LOTS]?.push({
      id: lotId(ingredient, lot),
      subject: { kind: 'lot', text: lot },
      of,
      date: serviceDate,
      feeds,
      alike: null,
    });
  }
  for (const node of nodes) columns[columnOf(node)]?.push(itemOf(node));
  for (const { product, serviceDate, feeds } of products) {
    const subject = { kind: 'product', id: product } as const;
    columns[PRODUCTS]?.push({
      id: productId(product, serviceDate),
      subject,
      of: null,
      date: serviceDate,
      feeds,
      alike: subject,
    });
  }
  return columns;
}

function columnOf({ piece: { kind } }: TraceNode): number {
  if (kind === 'ferment' || kind === 'prep') return STOCKS;
  return kind === 'batch' ? DOUGHS : PARTS;
}

function itemOf({ piece, fedSince }: TraceNode): Item {
  const isPart = piece.kind === 'cut' || piece.kind === 'load';
  const of =
    isPart && piece.product !== null
      ? ({ kind: 'product', id: piece.product } as const)
      : ({ kind: 'formula', id: piece.formula } as const);
  return { id: piece.id, subject: { kind: 'tag', text: piece.tag }, of, date: piece.serviceDate, feeds: fedSince, alike: of };
}

interface Boxes {
  readonly boxes: readonly Box[];
  readonly members: ReadonlyMap<string, readonly string[]>;
}

function boxesOf(items: readonly Item[]): Boxes {
  const byDay = (item: Item): string => (item.alike === null ? item.id : `${item.alike.id} ${item.date}`);
  const byKind = (item: Item): string => item.alike?.id ?? item.id;
  const ways = [(item: Item): string => item.id, byDay, byKind];
  const fitting = ways.find((keyOf) => new Set(items.map(keyOf)).size <= MOST_BOXES) ?? byKind;
  const groups = new Map<string, Item[]>();
  for (const item of items) groups.set(fitting(item), [...(groups.get(fitting(item)) ?? []), item]);
  const drawn = [...groups].slice(0, MOST_BOXES);
  return {
    boxes: drawn.map(([key, group]) => boxOf(key, group)),
    members: new Map(drawn.map(([key, group]) => [key, group.map(({ id }) => id)])),
  };
}

function boxOf(key: string, group: readonly Item[]): Box {
  const dates = group.map(({ date }) => date).sort();
  const [first] = group;
  const count = new Set(group.map(({ id }) => id)).size;
  const alone = count === 1 ? first : undefined;
  return {
    key,
    subject: alone?.subject ?? first?.alike ?? { kind: 'tag', text: key },
    of: alone?.of ?? null,
    count,
    firstDate: dates[0] ?? '',
    lastDate: dates.at(-1) ?? '',
    feeds: Math.max(0, ...group.map(({ feeds }) => feeds)),
  };
}

/** What leads to what, by the ids of the items. */
function linesOf({ lots, edges, products, nodes }: TraceAnswer): readonly (readonly [string, string])[] {
  const made = new Map(products.flatMap((day) => day.pieceIds.map((id) => [id, productId(day.product, day.serviceDate)] as const)));
  return [
    ...lots.map(({ ingredient, lot, pieceId }) => [lotId(ingredient, lot), pieceId] as const),
    ...edges.map(({ fromId, toId }) => [fromId, toId] as const),
    ...nodes.flatMap(({ piece }) => {
      const product = made.get(piece.id);
      return product === undefined ? [] : [[piece.id, product] as const];
    }),
  ];
}
