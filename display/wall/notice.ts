import type { FloorView } from '../link/floor-link.ts';
import { unknownStationWords, WALL } from '../words/wall.ts';

/** Where a notice leads. */
export interface NoticeLink {
  readonly href: string;
  readonly text: string;
}

/** What the wall says where doughs would stand. */
export interface Notice {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly links: readonly NoticeLink[];
  /** Nothing else may be shown: it could not be trusted. */
  readonly isAlone: boolean;
}

/**
 * The notice for the view of a station's wall (null: everybody's), or null where there are doughs to show. A lost link is
 * no reason to hide them.
 */
export function noticeOf(view: FloorView, isTooSmall: boolean, stationId: string | null = null): Notice | null {
  if (view.connection.phase === 'refused')
    return { ...refusedWords(view.connection.why), links: refusedLinks(view.connection.why), isAlone: true };
  if (view.state === null) return { heading: WALL.loading, lines: [], links: [], isAlone: true };
  if (!isKnownStation(view, stationId)) return { ...unknownStation(view, stationId ?? ''), isAlone: true };
  if (isTooSmall) {
    const links = [{ href: '/wall/setup', text: WALL.setUp }];
    return { heading: WALL.tooSmallTitle, lines: [WALL.tooSmallMore], links, isAlone: true };
  }
  if (Object.values(view.state.workpieces).some((workpiece) => workpiece.finishedMs === null)) return null;
  return { heading: WALL.emptyTitle, lines: [WALL.emptyMore], links: [], isAlone: false };
}

/** What stands in place of the rows of a station that has none. */
export function stationEmptyNotice(): Notice {
  return { heading: WALL.stationEmpty, lines: [], links: [], isAlone: false };
}

/** A house that is not there yet has no stations either, and knows every one. */
function isKnownStation(view: FloorView, stationId: string | null): boolean {
  const kitchen = view.state?.kitchen ?? null;
  return stationId === null || kitchen === null || kitchen.document.stations.some(({ id }) => id === stationId);
}

function unknownStation(view: FloorView, stationId: string): Pick<Notice, 'heading' | 'lines' | 'links'> {
  const stations = view.state?.kitchen?.document.stations ?? [];
  const links = stations.map(({ id, name }) => ({ href: `/wall?station=${id}`, text: name }));
  // An empty station asks for everything, whatever this screen kept.
  return {
    heading: unknownStationWords(stationId),
    lines: [WALL.stations],
    links: [...links, { href: '/wall?station=', text: WALL.wholeWall }],
  };
}

/** A wall that nobody has let in leads to where it types the code that another wall shows. */
function refusedLinks(why: 'otherVersion' | 'forbidden' | 'full'): readonly NoticeLink[] {
  return why === 'forbidden' ? [{ href: '/join?to=%2Fwall', text: WALL.join }] : [];
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
