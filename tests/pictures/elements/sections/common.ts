import type { TemplateResult } from 'lit';
import '../../../../display/parts/allergen-brief.ts';
import '../../../../display/parts/allergen-list.ts';
import { LOOK_CHOICES } from '../../../../display/parts/look.ts';
import '../../../../display/parts/page-choices.ts';
import '../../../../display/parts/phones-panel.ts';
import type { AllergenFacts } from '../../../../shared/book/allergens.ts';
import { made } from '../made.ts';
import { section, shelf, specimen } from '../specimen.ts';

const BUN: AllergenFacts = {
  sources: [
    { allergen: 'wheat', ingredientId: 'Wheat flour', through: [] },
    { allergen: 'wheat', ingredientId: 'Wheat flour', through: ['Sponge'] },
    { allergen: 'rye', ingredientId: 'Rye flour', through: ['Harbour levain', 'Refreshed'] },
    { allergen: 'milk', ingredientId: 'Butter', through: [] },
    { allergen: 'hazelnut', ingredientId: 'Hazelnuts, roasted', through: ['Nut filling'] },
    { allergen: 'lupin', ingredientId: null, through: [] },
  ],
  missing: ['Orange paste'],
  takesBack: true,
};
const MAY = { allergens: ['sesame', 'almond'] as const, note: 'Seeds are milled in the same room.' };
const NOTHING: AllergenFacts = { sources: [], missing: [], takesBack: false };

/** What several pages have. */
export function commonSection(): TemplateResult {
  const panel = (name: string, properties: Parameters<typeof made<'phones-panel'>>[1]): TemplateResult =>
    specimen(`phones-panel, ${name}`, 'on-desk', made('phones-panel', properties));
  const addresses = ['http://192.168.1.20:4810/phone'];
  return section('common', 'Parts that pages share', [
    shelf('How phones come here', [
      panel('reachable', { addresses }),
      panel('reachable, the code at the right', { addresses, reversed: true }),
      panel('reachable, titled by its page', { addresses, untitled: true }),
      panel('not reachable', { addresses: ['http://localhost:4810/phone'] }),
    ]),
    shelf('Allergens', [
      specimen(
        'allergen-list, several products',
        'on-desk',
        made('allergen-list', {
          facts: BUN,
          mayContain: { ...MAY, allergens: [...MAY.allergens] },
          products: [{ name: 'Seeded bun', own: ['sesame'] }],
        }),
      ),
      specimen('allergen-list, nothing declared', 'on-desk', made('allergen-list', { facts: NOTHING })),
      specimen('allergen-list, brief', 'on-desk', made('allergen-list', { facts: BUN, brief: true })),
      specimen(
        'allergen-brief',
        'on-phone',
        made('allergen-brief', {
          facts: BUN,
          mayContain: { ...MAY, allergens: [...MAY.allergens] },
          products: [{ name: 'Seeded bun', own: ['sesame'] }],
        }),
      ),
      specimen('allergen-brief, nothing declared', 'on-phone', made('allergen-brief', { facts: NOTHING })),
    ]),
    shelf(
      'What a device is set to',
      LOOK_CHOICES.map((look) => specimen(`page-choices, ${look}`, 'on-desk', made('page-choices', { look }))),
    ),
  ]);
}
