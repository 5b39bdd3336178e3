import type { FloorEvent } from '../floor/events.ts';

/** The workpieces that an event is about, each once, the one that it is mainly about first. None: it is about the house. */
export function concerned(event: FloorEvent): readonly string[] {
  switch (event.type) {
    case 'workpieceDivided':
    case 'loadsMade':
      return [event.workpieceId, ...event.children.map((child) => child.workpieceId)];
    case 'workpiecesJoined':
      return [event.workpieceId, ...event.parents.map((parent) => parent.workpieceId)];
    case 'workpieceDrawn':
    case 'scrapPutBack':
      return [...new Set([event.toWorkpieceId, event.fromWorkpieceId])];
    case 'callSounded':
      return [...new Set(event.calls.map((call) => call.workpieceId))];
    case 'planAdopted':
      return [...new Set(event.starts.map((start) => start.workpieceId))];
    case 'commandUndone':
      return event.workpieceIds;
    default:
      return 'workpieceId' in event ? [event.workpieceId] : [];
  }
}
