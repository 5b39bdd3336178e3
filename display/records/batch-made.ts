import { html, nothing, type TemplateResult } from 'lit';
import type { BatchAnswer, NamesAnswer, PieceRow } from '../../shared/records/answers.ts';
import type { BatchRecord } from '../../shared/records/batch-record.ts';
import { weightText } from '../parts/weight-text.ts';
import { BATCH_RECORD } from '../words/batch-record.ts';
import { READ_WHERE } from '../words/numbers.ts';
import { following } from './follow.ts';
import { tableSection } from './record-table.ts';
import { readText, whenText } from './record-texts.ts';
import { deviceName, nameIn, placeName, searchOf, type RecordsTools } from './records-tools.ts';

type Section = TemplateResult | typeof nothing;

/** What went in: planned and weighed, with lot numbers; and what was drawn or put back. */
export function wentInSection({ root, inLines, inFlows }: BatchRecord, names: NamesAnswer): Section {
  const when = (atMs: number): string => whenText(atMs, root.serviceDate, names.zone);
  const weight = (grams: number): string => weightText(grams, names.units);
  const rows = [
    ...inLines.map((line) => ({
      atMs: line.atMs,
      cells: [
        line.ingredientId === null ? line.name : nameIn(names, 'ingredients', line.ingredientId),
        line.plannedG === null ? '' : weight(line.plannedG),
        weight(line.weighedG),
        line.lotNumbers.length === 0 ? html`<span class="soft">${BATCH_RECORD.noLot}</span>` : line.lotNumbers.join(', '),
        line.tag,
        when(line.atMs),
      ],
    })),
    ...inFlows.map((flow) => ({
      atMs: flow.atMs,
      cells: [
        BATCH_RECORD.drawnFrom(flow.fromTag, nameIn(names, 'formulas', flow.fromFormula)),
        '',
        weight(flow.grams),
        flow.kind === 'putBack' ? BATCH_RECORD.putBack : '',
        flow.tag,
        when(flow.atMs),
      ],
    })),
  ].sort((a, b) => a.atMs - b.atMs);
  return tableSection(
    'went-in',
    BATCH_RECORD.wentIn,
    [
      { head: BATCH_RECORD.ingredient },
      { head: BATCH_RECORD.planned, isFigure: true },
      { head: BATCH_RECORD.actual, isFigure: true },
      { head: BATCH_RECORD.lots },
      { head: BATCH_RECORD.into },
      { head: BATCH_RECORD.at, isFigure: true },
    ],
    rows.map(({ cells }) => cells),
  );
}

export function waterSection({ root, water }: BatchRecord, names: NamesAnswer): Section {
  if (water.length === 0) return nothing;
  return html`<section aria-labelledby="water">
    <h2 id="water">${BATCH_RECORD.water}</h2>
    ${water.map(({ tag, atMs, waterG, waterC, iceG, flourC, roomC, riseK, mixerId }) => {
      const ice = iceG > 0 ? weightText(iceG, names.units) : null;
      const rise = `${Math.round(riseK * (names.units.temperature === 'F' ? 18 : 10)) / 10} ${names.units.temperature === 'F' ? '°F' : 'K'}`;
      return html`<p>
        ${tag} ${whenText(atMs, root.serviceDate, names.zone)}:
        ${BATCH_RECORD.waterLine(weightText(waterG, names.units), readText(waterC, names.units), ice)}
        <span class="soft"
          >(${BATCH_RECORD.waterFrom(readText(flourC, names.units), readText(roomC, names.units), rise)},
          ${placeName(names, mixerId)})</span
        >
      </p>`;
    })}
  </section>`;
}

export function temperaturesSection({ root, readings }: BatchRecord, names: NamesAnswer): Section {
  return tableSection(
    'temperatures',
    BATCH_RECORD.temperatures,
    [
      { head: BATCH_RECORD.part },
      { head: BATCH_RECORD.where },
      { head: BATCH_RECORD.temperature, isFigure: true },
      { head: BATCH_RECORD.at, isFigure: true },
      { head: BATCH_RECORD.who },
    ],
    readings.map(({ tag, where, celsius, atMs, deviceId }) => [
      tag,
      READ_WHERE[where],
      readText(celsius, names.units),
      whenText(atMs, root.serviceDate, names.zone),
      deviceName(names, deviceId),
    ]),
  );
}

/** Every cut and load, what it was and what became of it. */
export function fateSection({ pieces }: BatchAnswer, { root, ovenLoads, reasons }: BatchRecord, names: NamesAnswer): Section {
  const count = ({ pieces: now, plannedPieces }: PieceRow): string =>
    now === null ? '' : plannedPieces === null || plannedPieces === now ? String(now) : BATCH_RECORD.ofPlanned(now, plannedPieces);
  return tableSection(
    'fate',
    BATCH_RECORD.fate,
    [
      { head: BATCH_RECORD.part },
      { head: BATCH_RECORD.what },
      { head: BATCH_RECORD.pieces, isFigure: true },
      { head: BATCH_RECORD.weight, isFigure: true },
      { head: BATCH_RECORD.oven },
      { head: BATCH_RECORD.became },
      { head: BATCH_RECORD.at, isFigure: true },
      { head: BATCH_RECORD.reason },
    ],
    pieces.map((piece) => [
      piece.tag,
      piece.product === null ? nameIn(names, 'formulas', piece.formula) : nameIn(names, 'products', piece.product),
      count(piece),
      weightText(piece.grams, names.units),
      [
        ...new Set(ovenLoads.filter(({ tag }) => tag === piece.tag).flatMap(({ slotIds }) => slotIds.map((id) => placeName(names, id)))),
      ].join(', '),
      piece.ending === null ? BATCH_RECORD.stillHere : BATCH_RECORD.endings[piece.ending],
      whenText(piece.endedMs, root.serviceDate, names.zone),
      reasons
        .filter(({ tag, what }) => tag === piece.tag && what === 'discarded')
        .map(({ reason }) => reason)
        .join('; '),
    ]),
  );
}

/** Every lot number in it, as far back as the records go. */
export function lotsSection({ lots }: BatchAnswer, { root }: BatchRecord, names: NamesAnswer, tools: RecordsTools | null): Section {
  return tableSection(
    'lots',
    BATCH_RECORD.allLots,
    [
      { head: BATCH_RECORD.lots },
      { head: BATCH_RECORD.ingredient },
      { head: BATCH_RECORD.weighedInto },
      { head: BATCH_RECORD.at, isFigure: true },
    ],
    lots.map(({ lot, ingredient, weighedTag, weighedInto, weighedMs }) => [
      html`<a href=${searchOf('trace', { lot, ingredient })} @click=${following(tools)}>${lot}</a>`,
      nameIn(names, 'ingredients', ingredient),
      html`<a href=${searchOf('batch', { id: weighedInto })} @click=${following(tools)}>${weighedTag}</a>`,
      whenText(weighedMs, root.serviceDate, names.zone),
    ]),
  );
}
