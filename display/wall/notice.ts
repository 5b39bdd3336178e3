import type { FloorView } from '../link/floor-link.ts';
import { WALL } from '../words/wall.ts';

/** What the wall says where doughs would stand. */
export interface Notice {
  readonly heading: string;
  readonly lines: readonly string[];
  /** Nothing else may be shown: it could not be trusted. */
  readonly isAlone: boolean;
}

/** The notice for a view, or null where there are doughs to show. A lost link is no reason to hide them. */
export function noticeOf(view: FloorView, isTooSmall: boolean): Notice | null {
  if (view.connection.phase === 'refused') return { ...refusedWords(view.connection.why), isAlone: true };
  if (view.state === null) return { heading: WALL.loading, lines: [], isAlone: true };
  if (isTooSmall) return { heading: WALL.tooSmallTitle, lines: [WALL.tooSmallMore], isAlone: true };
  if (Object.values(view.state.workpieces).some((workpiece) => workpiece.finishedMs === null)) return null;
  const phones = view.addresses.map((address) => `${WALL.emptyPhone} ${address}`).slice(0, 1);
  return { heading: WALL.emptyTitle, lines: [WALL.emptyMore, ...phones], isAlone: false };
}

function refusedWords(why: 'otherVersion' | 'forbidden' | 'full'): Pick<Notice, 'heading' | 'lines'> {
  switch (why) {
    case 'otherVersion':
      return { heading: WALL.otherVersionTitle, lines: [WALL.otherVersionMore] };
    case 'forbidden':
      return { heading: WALL.forbiddenTitle, lines: [WALL.forbiddenMore] };
    case 'full':
      return { heading: WALL.fullTitle, lines: [WALL.fullMore] };
  }
}
