import type { Role } from '../../../shared/floor/role.ts';
import type { Stage } from '../../../shared/floor/stage.ts';

/** The word that goes with each role's shape. For being lost, see lostWords. */
export const ROLES: Readonly<Record<Role, string>> = {
  running: 'en cours',
  call: 'à faire',
  late: 'en retard',
  lost: 'se perd',
};

/** How something is being lost, by where it stands; what is baked no longer rises. */
export function lostWords(stage: Stage): string {
  switch (stage) {
    case 'oven':
      return 'trop au four';
    case 'prep':
    case 'cooling':
      return 'hors délai';
    case 'planned':
    case 'mixing':
    case 'bulk':
    case 'cold':
    case 'makeUp':
    case 'proving':
      return 'pousse trop';
  }
}
