import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { FloorView } from '../link/floor-link.ts';

/** The workpieces with a tap that has not been sent. */
export function unsentIds(view: FloorView): ReadonlySet<string> {
  return new Set(view.kept.filter((tap) => !tap.isSent).flatMap(({ command }) => touchedIds(command)));
}

function touchedIds(command: ClientCommand): readonly string[] {
  if ('workpieceIds' in command) return command.workpieceIds;
  if ('toWorkpieceId' in command) return [command.toWorkpieceId];
  return 'workpieceId' in command ? [command.workpieceId] : [];
}
