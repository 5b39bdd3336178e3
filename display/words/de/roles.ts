import type { Role } from '../../../shared/floor/role.ts';
import type { Stage } from '../../../shared/floor/stage.ts';

/** The word that goes with each role's shape. For being lost, see lostWords. */
export const ROLES: Readonly<Record<Role, string>> = {
  running: 'läuft',
  call: 'jetzt dran',
  late: 'verspätet',
  lost: 'geht verloren',
};

/** How something is being lost, by where it stands. */
export function lostWords(stage: Stage): string {
  switch (stage) {
    case 'oven':
      return 'zu lang drin';
    case 'prep':
      return 'über Frist';
    // What does not ferment, or no longer does, cannot go over in German.
    case 'planned':
    case 'mixing':
    case 'cooling':
      return 'zu lange';
    case 'bulk':
    case 'cold':
    case 'makeUp':
    case 'proving':
      return 'Übergare';
  }
}
