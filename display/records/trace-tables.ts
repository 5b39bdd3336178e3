import { html, nothing, type TemplateResult } from 'lit';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import type { TraceAnswer, TraceNode, TraceProduct } from '../../shared/records/trace-answer.ts';
import { weightText } from '../parts/weight-text.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { RECORDS } from '../words/records.ts';
import { TRACE } from '../words/trace.ts';
import { following } from './follow.ts';
import { tableSection } from './record-table.ts';
import { nameIn, searchOf, type RecordsTools } from './records-tools.ts';

type Section = TemplateResult | typeof nothing;

/** What the tables of a trace are written with. */
export interface TraceTables {
  readonly names: NamesAnswer;
  readonly tools: RecordsTools | null;
}

/** How much of the lot was weighed where; back, every lot number. Each leads to the record of what it was weighed into, and onward. */
export function lotsSection({ direction, lots, lotsLeftOut }: TraceAnswer, { names, tools }: TraceTables): Section {
  const isBack = direction === 'back';
  if (lots.length === 0) return html`<p role="status">${TRACE.noneNoted}</p>`;
  return tableSection(
    'lots',
    isBack ? TRACE.lots : TRACE.whereWeighed,
    [
      { head: TRACE.lot },
      { head: TRACE.ingredient },
      { head: TRACE.into },
      { head: TRACE.grams, isFigure: true },
      { head: TRACE.times, isFigure: true },
      { head: TRACE.first },
      { head: TRACE.last },
      ...(isBack ? [{ head: TRACE.feeds, isFigure: true }] : []),
    ],
    lots.map((lot) => [
      isBack
        ? html`<a href=${searchOf('trace', { lot: lot.lot, ingredient: lot.ingredient })} @click=${following(tools)}>${lot.lot}</a>`
        : lot.lot,
      nameIn(names, 'ingredients', lot.ingredient),
      html`<a href=${searchOf('batch', { id: lot.pieceId })} @click=${following(tools)}>${lot.tag}</a> ${nameIn(
          names,
          'formulas',
          lot.formula,
        )}${lot.isReplaced ? html` <span class="soft">(${TRACE.anew})</span>` : nothing}`,
      weightText(lot.grams, names.units),
      String(lot.times),
      dayCell(zonedDate(lot.firstMs, names.zone)),
      dayCell(zonedDate(lot.lastMs, names.zone)),
      ...(isBack ? [lot.feeds === 0 ? '' : String(lot.feeds)] : []),
    ]),
    lotsLeftOut === 0 ? nothing : html`<p>${TRACE.lotsLeft(lotsLeftOut)}</p>`,
  );
}

/** Every product by day: pieces, what became of them, where they went; on paper with room for who was told. */
export function productsSection({ products, after }: TraceAnswer, more: Section, { names, tools }: TraceTables): Section {
  return tableSection(
    'products',
    TRACE.productsHeading,
    [
      { head: TRACE.day },
      { head: TRACE.product },
      { head: TRACE.finished, isFigure: true },
      { head: TRACE.discarded, isFigure: true },
      { head: TRACE.here, isFigure: true },
      { head: TRACE.feeds, isFigure: true },
      { head: TRACE.orders },
      { head: TRACE.told },
    ],
    products.map((day) => [
      dayCell(day.serviceDate),
      html`<a href=${searchOf('batches', { product: day.product, from: day.serviceDate, to: day.serviceDate })} @click=${following(tools)}
        >${nameIn(names, 'products', day.product)}</a
      >`,
      countText(day.finished),
      countText(day.discarded),
      countText(day.here),
      day.feeds === 0 ? '' : String(day.feeds),
      ordersText(day),
      '',
    ]),
    after === null ? nothing : more,
  );
}

/** A date that is not broken over two lines. */
function dayCell(date: string): TemplateResult {
  return html`<span class="day">${date}</span>`;
}

function countText(pieces: number): string {
  return pieces === 0 ? '' : String(pieces);
}

function ordersText({ orders }: TraceProduct): string {
  if (orders.length === 0) return TRACE.noOrders;
  return orders.map(({ label, pieces }) => TRACE.order(label ?? TRACE.noLabel, pieces)).join(', ');
}

/** What is on the floor, holds the lot and is no product yet. */
export function stillHereSection({ stillHere }: TraceAnswer, { names, tools }: TraceTables): Section {
  return tableSection(
    'still-here',
    TRACE.stillHeading,
    [
      { head: TRACE.part },
      { head: TRACE.name },
      { head: TRACE.day },
      { head: TRACE.grams, isFigure: true },
      { head: TRACE.since },
      { head: TRACE.feeds },
    ],
    stillHere.map((node) => [
      pieceLink(node, tools),
      nameIn(names, 'formulas', node.piece.formula),
      dayCell(node.piece.serviceDate),
      weightText(node.piece.grams, names.units),
      dayCell(zonedDate(node.atMs, names.zone)),
      node.fedSince === 0 ? '' : TRACE.feedsSince(node.fedSince),
    ]),
  );
}

/** Every workpiece on the way, each with how it came in and from what. */
export function waySection({ nodes, edges }: TraceAnswer, { names, tools }: TraceTables): Section {
  const tags = new Map(nodes.map(({ piece }) => [piece.id, piece.tag]));
  const from = (node: TraceNode): string => {
    const into = edges.filter(({ toId }) => toId === node.piece.id).map(({ fromId }) => tags.get(fromId) ?? '');
    return [...new Set(into)].join(', ');
  };
  return tableSection(
    'way',
    TRACE.way,
    [
      { head: TRACE.part },
      { head: TRACE.name },
      { head: TRACE.day },
      { head: TRACE.came },
      { head: TRACE.from },
      { head: TRACE.grams, isFigure: true },
      { head: TRACE.feeds, isFigure: true },
      { head: TRACE.became },
    ],
    nodes.map((node) => [
      pieceLink(node, tools),
      node.piece.product === null ? nameIn(names, 'formulas', node.piece.formula) : nameIn(names, 'products', node.piece.product),
      dayCell(node.piece.serviceDate),
      html`${TRACE.via[node.via ?? 'asked']}${node.isInIt ? nothing : html` <span class="soft">(${TRACE.anew})</span>`}`,
      from(node),
      weightText(node.piece.grams, names.units),
      node.feeds === 0 ? '' : String(node.feeds),
      node.piece.ending === null ? RECORDS.onTheFloor : RECORDS.endings[node.piece.ending],
    ]),
  );
}

function pieceLink({ piece }: TraceNode, tools: RecordsTools | null): TemplateResult {
  return html`<a href=${searchOf('batch', { id: piece.id })} @click=${following(tools)}>${piece.tag}</a>`;
}
