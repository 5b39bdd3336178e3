import { html, type TemplateResult } from 'lit';
import '../../../../display/parts/icon-mark.ts';
import type { IconName } from '../../../../display/parts/icon-mark.ts';
import { ICON_PATHS } from '../../../../display/parts/icon-paths.ts';
import '../../../../display/parts/role-mark.ts';
import type { Role } from '../../../../shared/floor/role.ts';
import { made } from '../made.ts';
import { section, shelf, specimen } from '../specimen.ts';

const ROLES = ['running', 'call', 'late', 'lost'] as const satisfies readonly Role[];
const SHARES = [0, 0.25, 0.5, 0.75, 1] as const;

function mark(level: Role, progress: number, heard: boolean): TemplateResult {
  const one = (): HTMLElement => made('role-mark', { level, progress, heard });
  return html`${one()} <span class="small">${one()}</span> <span class="least">${one()}</span>`;
}

/** The shapes of the roles, in the sizes in which they are used. */
export function marksSection(): TemplateResult {
  return section('marks', 'The shapes of the roles', [
    shelf(
      'Running: how much of the time is gone',
      SHARES.map((share) => specimen(`running ${share}`, 'mark', mark('running', share, false))),
    ),
    shelf(
      'Unheard; what is late and what is being lost blinks',
      ROLES.map((role) => specimen(`${role} unheard`, 'mark', mark(role, 0.4, false))),
    ),
    shelf(
      'Heard',
      ROLES.map((role) => specimen(`${role} heard`, 'mark', mark(role, 0.4, true))),
    ),
  ]);
}

/** Every icon, large and as small as it is used. */
export function iconsSection(): TemplateResult {
  const names = Object.keys(ICON_PATHS) as IconName[];
  const one = (name: IconName): HTMLElement => made('icon-mark', { name });
  return section('icons', 'Icons', [
    shelf(
      'On one grid of 24 units, strokes 2 wide',
      names.map((name) => specimen(name, 'icon', html`${one(name)} <span class="least">${one(name)}</span>`)),
    ),
  ]);
}
