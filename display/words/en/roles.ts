import type { Role } from '../../../shared/floor/role.ts';
import type { Stage } from '../../../shared/floor/stage.ts';

/** The word that goes with each role's shape. For being lost, see lostWords. */
export const ROLES: Readonly<Record<Role, string>> = {
  running: 'running',
  call: 'your move',
  late: 'late',
  lost: 'being lost',
};

/** How something is being lost, by where it stands. */
export function lostWords(stage: Stage): string {
  switch (stage) {
    case 'oven':
      return 'in too long';
    case 'prep':
      return 'past limit';
    case 'planned':
    case 'mixing':
    case 'bulk':
    case 'cold':
    case 'makeUp':
    case 'proving':
    case 'cooling':
      return 'going over';
  }
}
