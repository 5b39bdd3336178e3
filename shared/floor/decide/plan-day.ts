import { derivedId } from '../../ids.ts';
import { accepted, refused, type Result } from '../../result.ts';
import type { CommandContext } from '../commands.ts';
import type { EventOf, FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, PlannedCut, Workpiece } from '../state.ts';
import type { DayBook, DayPlan } from './day-plan.ts';
import { sidePrepsOf } from './side-preps.ts';

type Planned = EventOf<'workpiecePlanned'>;

/**
 * What is planned on a day: its batches in the order of their starts, numbered formula by formula, then the side preps
 * that go into them. A pot that stands already is planned to be fed again, not made a second time.
 */
export function plannedEvents(
  state: FloorState,
  plan: DayPlan,
  context: CommandContext,
  book: DayBook,
): Result<readonly FloorEvent[], Refusal> {
  const events: FloorEvent[] = [];
  const numbers = new TagNumbers(state, plan.serviceDate);
  const pots = new Map<string, string>();
  const inOrder = [...plan.batches].sort((a, b) => a.plannedStartMs - b.plannedStartMs);
  for (const [index, batch] of inOrder.entries()) {
    const formula = book.formulaOf(batch.formulaId);
    if (formula === null || book.versions.formulaVersions[batch.formulaId] === undefined)
      return refused({ code: 'documentMissing', kind: 'formula', id: batch.formulaId });
    const isLiving = formula.kind === 'ferment' && formula.seedG !== undefined;
    const potId = isLiving ? (pots.get(formula.id) ?? openPot(state, formula.id)?.id) : undefined;
    if (potId !== undefined) {
      events.push({ type: 'feedPlanned', workpieceId: potId, feedMs: batch.plannedStartMs, grams: batch.grams, atMs: context.nowMs });
      continue;
    }
    const planned = plannedOf(plan, batch, derivedId(context.commandId, index), numbers, book);
    if (!planned.ok) return planned;
    if (isLiving) pots.set(formula.id, planned.value.workpieceId);
    events.push(planned.value);
  }
  const batches = events.filter((event) => event.type === 'workpiecePlanned');
  const preps = sidePrepsOf(plan, book, batches);
  if (!preps.ok) return preps;
  for (const [index, prep] of preps.value.entries()) {
    const formulaVersion = book.versions.formulaVersions[prep.formula.id];
    if (formulaVersion === undefined) return refused({ code: 'documentMissing', kind: 'formula', id: prep.formula.id });
    events.push({
      type: 'workpiecePlanned',
      workpieceId: derivedId(context.commandId, inOrder.length + index),
      kind: 'prep',
      tag: numbers.next(prep.formula.letters),
      serviceDate: plan.serviceDate,
      formulaId: prep.formula.id,
      formulaVersion,
      plannedStartMs: prep.plannedStartMs,
      grams: prep.grams,
      cuts: [],
      serves: prep.serves,
    });
  }
  return accepted(events);
}

function plannedOf(
  plan: DayPlan,
  batch: DayPlan['batches'][number],
  workpieceId: string,
  numbers: TagNumbers,
  { formulaOf, versions: { formulaVersions, productVersions } }: DayBook,
): Result<Planned, Refusal> {
  const formula = formulaOf(batch.formulaId);
  const formulaVersion = formulaVersions[batch.formulaId];
  if (formula === null || formulaVersion === undefined) return refused({ code: 'documentMissing', kind: 'formula', id: batch.formulaId });
  const cuts: PlannedCut[] = [];
  for (const cut of batch.cuts) {
    const productVersion = productVersions[cut.productId];
    if (productVersion === undefined) return refused({ code: 'documentMissing', kind: 'product', id: cut.productId });
    cuts.push({ ...cut, productVersion });
  }
  return accepted({
    type: 'workpiecePlanned',
    workpieceId,
    kind: formula.kind === 'dough' ? 'batch' : formula.kind,
    tag: numbers.next(formula.letters),
    serviceDate: plan.serviceDate,
    formulaId: formula.id,
    formulaVersion,
    plannedStartMs: batch.plannedStartMs,
    grams: batch.grams,
    cuts,
  });
}

/** The pot of a formula that stands, the newest where there are several. */
function openPot(state: FloorState, formulaId: string): Workpiece | undefined {
  const freshMs = (pot: Workpiece): number => pot.stock?.fedMs ?? pot.plannedStartMs;
  return Object.values(state.workpieces)
    .filter((pot) => pot.stock !== null && pot.finishedMs === null && pot.formulaId === formulaId)
    .sort((a, b) => freshMs(b) - freshMs(a))[0];
}

/** Tags of one day, counted by letters, without those that are on the floor. */
class TagNumbers {
  private readonly counts = new Map<string, number>();
  private readonly borne: ReadonlySet<string>;

  constructor(state: FloorState, serviceDate: string) {
    const open = Object.values(state.workpieces).filter((other) => other.finishedMs === null && other.serviceDate === serviceDate);
    this.borne = new Set(open.map((other) => other.tag));
  }

  next(letters: string): string {
    let number = (this.counts.get(letters) ?? 0) + 1;
    while (this.borne.has(`${letters}${number}`)) number += 1;
    this.counts.set(letters, number);
    return `${letters}${number}`;
  }
}
