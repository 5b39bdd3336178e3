import type { FloorView } from '../link/floor-link.ts';
import { PHONE } from '../words/phone.ts';

/** What is said in place of a page where the server does not let it on: a title and what to do. Null where it may go on. */
export function stillOf(view: FloorView): readonly [string, string] | null {
  if (view.connection.phase !== 'refused') return null;
  switch (view.connection.why) {
    case 'otherVersion':
      return [PHONE.otherVersionTitle, PHONE.otherVersionMore];
    case 'forbidden':
      return [PHONE.forbiddenTitle, PHONE.forbiddenMore];
    case 'full':
      return [PHONE.fullTitle, PHONE.fullMore];
  }
}
