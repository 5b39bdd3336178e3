import { accepted, refused, type Result } from '../../result.ts';
import { allergensOf } from '../contents.ts';
import { coolsAtMs } from '../cooled.ts';
import type { Despite, FloorEvent } from '../events.ts';
import type { Refusal } from '../refusals.ts';
import type { FloorState, Workpiece } from '../state.ts';
import type { Take } from '../takes.ts';
import { downToTenth, toTenth } from '../tenths.ts';
import { ancestorsOf } from './ancestry.ts';
import { broughtToLast } from './inferred.ts';
import { beyondSeedG, EMPTY_G, sourcesFor } from './sources.ts';
import { giveBackAll } from './vessels.ts';

/** Amounts that differ by no more than the scale shows are the same. */
const SCALE_G = 0.1;

/** So much of one source. */
interface Portion {
  readonly source: Workpiece;
  readonly grams: number;
  readonly isExtra: boolean;
}

/** What one command draws, and what that leaves in each source. */
export class Ledger {
  readonly at: { readonly tag: string; readonly stepId?: string };
  private readonly state: FloorState;
  private readonly target: Workpiece;
  private readonly despite: readonly Despite[];
  private readonly atMs: number;
  private readonly taken = new Map<string, number>();
  private readonly portions: Portion[] = [];

  constructor(state: FloorState, target: Workpiece, stepId: string | undefined, despite: readonly Despite[], atMs: number) {
    this.state = state;
    this.target = target;
    this.at = stepId === undefined ? { tag: target.tag } : { tag: target.tag, stepId };
    this.despite = despite;
    this.atMs = atMs;
  }

  /** Draws so much of one source, or says why that cannot be. */
  draw(portion: Portion): Refusal | null {
    const { source, grams } = portion;
    if (source.id === this.target.id || ancestorsOf(this.state, source.id).has(this.target.id))
      return { code: 'wrongSource', ...this.at, fromTag: source.tag };
    const hasG = this.leftG(source);
    if (grams > hasG + SCALE_G / 2) return { code: 'moreThanThere', ...this.at, fromTag: source.tag, neededG: grams, hasG };
    if (this.reachesSeed(source, grams)) return this.lastOf(source, grams);
    this.take({ ...portion, grams: Math.min(grams, hasG) });
    return null;
  }

  /** Draws what a step takes, in turn of the sources that there are. */
  drawTake(take: Take): Refusal | null {
    const neededG = toTenth(take.grams);
    if (neededG === 0) return null;
    const sources = sourcesFor(this.state, this.target, take.formulaId, this.atMs).filter((source) => this.leftG(source) >= SCALE_G);
    const goesWithout = this.despite.includes('withoutSource');
    const what = { ...this.at, formulaId: take.formulaId, neededG };
    if (sources.length === 0) return goesWithout ? null : { code: 'nothingToDraw', ...what };
    let missingG = this.takeInTurn(take, sources, neededG, (source) => beyondSeedG(source, this.leftG(source)));
    if (missingG < EMPTY_G) return null;
    const seedsG = sources.reduce((sum, source) => sum + downToTenth(this.leftG(source)), 0);
    const living = sources.find((source) => source.stock !== null && this.leftG(source) >= SCALE_G);
    if (living !== undefined && this.despite.includes('lastOfFerment')) {
      missingG = this.takeInTurn(take, sources, missingG, (source) => downToTenth(this.leftG(source)));
    } else if (living !== undefined && seedsG + EMPTY_G > missingG && !goesWithout) {
      return this.lastOf(living, neededG);
    }
    return missingG < EMPTY_G || goesWithout ? null : { code: 'notEnoughToDraw', ...what, hasG: toTenth(neededG - missingG) };
  }

  /** The facts: sources that were not as far are brought there, drawn from, and off the floor where that empties them. */
  settle(): Result<readonly FloorEvent[], Refusal> {
    const events: FloorEvent[] = [];
    for (const source of new Set(this.portions.map((portion) => portion.source))) {
      const cooledMs = this.despite.includes('notCooled') ? null : coolsAtMs(this.state, source, this.atMs);
      if (cooledMs !== null) return refused({ code: 'notCooled', ...this.at, fromTag: source.tag, cooledMs });
      const leftG = this.leftG(source);
      const isEmptied = source.stock === null ? leftG < EMPTY_G : leftG < SCALE_G / 2;
      const brought = broughtToLast(this.state, source, this.atMs, isEmptied);
      if (!brought.ok) return brought;
      events.push(...brought.value.events);
      for (const portion of this.portions.filter((candidate) => candidate.source === source)) {
        events.push({
          type: 'workpieceDrawn',
          fromWorkpieceId: source.id,
          toWorkpieceId: this.target.id,
          grams: portion.grams,
          ...(portion.isExtra ? { isExtra: true as const } : {}),
          allergens: [...allergensOf(this.state, source)],
          lotNumbers: [...source.broughtIn.lotNumbers],
          atMs: this.atMs,
        });
      }
      if (!isEmptied) continue;
      events.push(...giveBackAll(this.state, source, brought.value.atMs));
      events.push({ type: 'workpieceFinished', workpieceId: source.id, atMs: brought.value.atMs });
    }
    return accepted(events);
  }

  private takeInTurn(take: Take, sources: readonly Workpiece[], neededG: number, canGiveG: (source: Workpiece) => number): number {
    let missingG = neededG;
    for (const source of sources) {
      const grams = toTenth(Math.min(missingG, canGiveG(source)));
      if (grams < SCALE_G) continue;
      this.take({ source, grams, isExtra: take.isExtra });
      missingG = toTenth(missingG - grams);
      if (missingG < SCALE_G) return 0;
    }
    return missingG;
  }

  /** Two portions of one source are one fact. */
  private take(portion: Portion): void {
    if (portion.grams === 0) return;
    this.taken.set(portion.source.id, (this.taken.get(portion.source.id) ?? 0) + portion.grams);
    const index = this.portions.findIndex((other) => other.source.id === portion.source.id && other.isExtra === portion.isExtra);
    const other = this.portions[index];
    if (other === undefined) this.portions.push(portion);
    else this.portions[index] = { ...portion, source: other.source, grams: toTenth(other.grams + portion.grams) };
  }

  private leftG(source: Workpiece): number {
    return source.grams - (this.taken.get(source.id) ?? 0);
  }

  private reachesSeed(source: Workpiece, grams: number): boolean {
    return (
      source.stock !== null && !this.despite.includes('lastOfFerment') && grams > beyondSeedG(source, this.leftG(source)) + SCALE_G / 2
    );
  }

  private lastOf(source: Workpiece, neededG: number): Refusal {
    return {
      code: 'lastOfFerment',
      ...this.at,
      fromTag: source.tag,
      neededG,
      hasG: source.grams,
      seedG: source.stock?.seedG ?? 0,
    };
  }
}
