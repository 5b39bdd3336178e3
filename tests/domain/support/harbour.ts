import { readFileSync } from 'node:fs';
import { readBakehouseFile, type BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import type { CommandOf } from '../../../shared/floor/commands.ts';
import { assert } from '../../../shared/result.ts';

const PLAIN_FIXTURE = new URL('../../../fixtures/harbour-plain.json', import.meta.url);
const DEMO_FIXTURE = new URL('../../../fixtures/harbour.json', import.meta.url);
const MINUTE_MS = 60_000;

/** A market Saturday at 03:00 UTC, when the day is brought in. */
export const OPENING_MS = Date.UTC(2026, 2, 7, 3, 0, 0);
export const SERVICE_DATE = '2026-03-07';

/** The harbour bakehouse with doughs only, as parsed JSON: a fresh copy each time, to be spoilt at will. */
export function harbourJson(): Record<string, unknown> {
  return parsed(PLAIN_FIXTURE);
}

/** The demo file as parsed JSON: the same house with its levain pot, preps, loads and counted vessels. A fresh copy each time. */
export function demoJson(): Record<string, unknown> {
  return parsed(DEMO_FIXTURE);
}

function parsed(fixture: URL): Record<string, unknown> {
  return JSON.parse(readFileSync(fixture, 'utf8')) as Record<string, unknown>;
}

const files = new Map<URL, BakehouseFile>();

/** The harbour bakehouse with doughs only. Throws with the faults where the file is not right. */
export function harbourFile(): BakehouseFile {
  return fileOf(PLAIN_FIXTURE);
}

/** The demo bakehouse. Throws with the faults where the file is not right. */
export function demoFile(): BakehouseFile {
  return fileOf(DEMO_FIXTURE);
}

function fileOf(fixture: URL): BakehouseFile {
  const known = files.get(fixture);
  if (known !== undefined) return known;
  const result = readBakehouseFile(parsed(fixture));
  assert(result.ok, result.ok ? '' : JSON.stringify(result.fault, null, 2));
  files.set(fixture, result.value);
  return result.value;
}

/** The command that brings in the file's day at an instant. Only starts counted from loading: clock times want a zone. */
export function bringInCommand(file: BakehouseFile, loadMs: number, serviceDate = SERVICE_DATE): CommandOf<'bringInDay'> {
  const { house, kitchen, ingredients, formulas, products } = file;
  return {
    type: 'bringInDay',
    house,
    kitchen,
    ingredients,
    formulas,
    products,
    serviceDate,
    batches: file.day.batches.map((batch) => {
      assert('afterLoadMin' in batch.start, 'a clock time cannot be read without a zone');
      const cuts = batch.cuts.map((cut) => {
        const product = products.find((candidate) => candidate.id === cut.product);
        assert(product !== undefined, `no product ${cut.product}`);
        return { productId: cut.product, pieces: cut.pieces, grams: cut.pieces * product.pieceG };
      });
      const cutsG = cuts.reduce((sum, cut) => sum + cut.grams, 0);
      return {
        formulaId: batch.formula,
        plannedStartMs: loadMs + batch.start.afterLoadMin * MINUTE_MS,
        grams: batch.doughG ?? cutsG,
        cuts,
      };
    }),
    ...(file.day.orders === undefined
      ? {}
      : {
          orders: file.day.orders.map(({ product, readyAt: _none, readyAfterLoadMin, ...wanted }) => {
            assert(readyAfterLoadMin !== undefined, 'a clock time cannot be read without a zone');
            return { ...wanted, productId: product, readyMs: loadMs + readyAfterLoadMin * MINUTE_MS };
          }),
        }),
    ...(file.standing === undefined
      ? {}
      : { standing: file.standing.map(({ product, ...wanted }) => ({ ...wanted, productId: product })) }),
  };
}
