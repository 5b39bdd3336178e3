import type { TemplateResult } from 'lit';
import { LOOK_CHOICES } from '../../../../display/parts/look.ts';
import '../../../../display/parts/page-choices.ts';
import '../../../../display/parts/phones-panel.ts';
import { made } from '../made.ts';
import { section, shelf, specimen } from '../specimen.ts';

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
    shelf(
      'What a device is set to',
      LOOK_CHOICES.map((look) => specimen(`page-choices, ${look}`, 'on-desk', made('page-choices', { look }))),
    ),
  ]);
}
