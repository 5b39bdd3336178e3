import type { Workpiece } from '../../shared/floor/state.ts';
import type { DayMind } from './day-mind.ts';
import type { Hand } from './invented-floor.ts';

const TRIM_SHARE = 0.4;
const BREAD_SHARE = 0.2;
/** Less than this is not worth the walk, in grams. */
const LEAST_G = 60;

/** Trim that lies beside yesterday's dough goes back into today's of the same formula, and now and then a loaf that was not sold. */
export function putBackScrap({ floor, chance }: DayMind, workpieceId: string, hand: Hand): void {
  const target = floor.state.workpieces[workpieceId];
  if (target === undefined || target.kind !== 'batch') return;
  const others = Object.values(floor.state.workpieces).filter(
    (other) => other.formulaId === target.formulaId && other.id !== target.id && other.finishedMs !== null,
  );
  const isYoung = (other: Workpiece): boolean => floor.nowMs - (other.finishedMs ?? 0) < 23 * 3_600_000;
  const trimmed = others.find((other) => isYoung(other) && other.scrapG >= LEAST_G && other.productId !== null);
  const takes = floor.state.formulas[`${target.formulaId}@${target.formulaVersion}`]?.takesBack ?? [];
  if (trimmed !== undefined && takes.some((rule) => rule.what === 'trim') && chance.is(TRIM_SHARE))
    floor.give(
      { type: 'putBack', fromWorkpieceId: trimmed.id, toWorkpieceId: target.id, what: 'trim', grams: Math.floor(trimmed.scrapG) },
      hand,
    );
  const bread = others.find((other) => isYoung(other) && other.ending === 'finished' && other.grams > 2000);
  if (bread !== undefined && takes.some((rule) => rule.what === 'oldBread') && chance.is(BREAD_SHARE))
    floor.give(
      { type: 'putBack', fromWorkpieceId: bread.id, toWorkpieceId: target.id, what: 'oldBread', grams: chance.whole(8, 18) * 10 },
      hand,
    );
}
