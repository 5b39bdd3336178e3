import type { Addition } from '../../shared/documents/method.ts';
import { unreachable } from '../../shared/result.ts';

/** By what an addition says how much of it goes in. */
export type AmountWay = 'asFormula' | 'pct' | 'gPerPiece';

/** A topping's usual weight a piece where none is said yet, in grams: to be put right. */
const FIRST_G_PER_PIECE = 10;
/** The per cent with which one begins. */
const FIRST_PCT = 5;

/** By what this addition says how much. */
export function amountWay({ pct, gPerPiece }: Addition): AmountWay {
  if (gPerPiece !== undefined) return 'gPerPiece';
  return pct === undefined ? 'asFormula' : 'pct';
}

/** An addition of something else: `item:salt` or `formula:levain`. Only an ingredient is held back. */
export function withAddition(addition: Addition, choice: string): Addition {
  const { item: _item, formula: _formula, ...others } = addition;
  const [which, id] = choice.split(':');
  if (id === undefined) return addition;
  return which === 'formula' ? { formula: id, ...others, heldBack: false } : { item: id, ...others };
}

/** An addition whose amount is said otherwise. */
export function withAmountWay(addition: Addition, way: AmountWay): Addition {
  const { pct, gPerPiece, ...others } = addition;
  switch (way) {
    case 'asFormula':
      return others;
    case 'pct':
      return { ...others, pct: pct ?? FIRST_PCT };
    case 'gPerPiece':
      return { ...others, gPerPiece: gPerPiece ?? FIRST_G_PER_PIECE };
    default:
      return unreachable(way);
  }
}
