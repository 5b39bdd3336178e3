import { checkProduct } from '../../documents/book-faults.ts';
import { bookLookup } from '../../documents/book-lookup.ts';
import { isSameDocument } from '../../documents/same-document.ts';
import { accepted, refused } from '../../result.ts';
import { bookContextOf } from '../book-of.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import { versionKey, type FloorState } from '../state.ts';
import type { Decision } from './decision.ts';
import { unlessFaulty } from './faulty.ts';

/** The product becomes its next version, where nobody else has changed it since it was read and it is possible. */
export function decideAdoptProduct(state: FloorState, command: CommandOf<'adoptProduct'>, context: CommandContext): Decision {
  const { product, fromVersion } = command;
  const version = state.productVersions[product.id] ?? 0;
  if (fromVersion !== version) return refused({ code: 'documentChanged', version });
  const right = unlessFaulty((fault) => checkProduct(product, 'product', bookLookup(bookContextOf(state)), fault));
  if (!right.ok) return right;
  if (isSameDocument(state.products[versionKey(product.id, version)], product)) return refused({ code: 'nothingChanges' });
  return accepted([{ type: 'productAdopted', version: version + 1, product, atMs: context.tapMs }]);
}
