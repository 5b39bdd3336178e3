import { html, type TemplateResult } from 'lit';
import { place } from '../../../../display/parts/place.ts';
import { section, shelf, specimen } from '../specimen.ts';

const COLOURS = ['paper', 'ink', 'ink-soft', 'block', 'rest', 'line', 'field', 'pressed', 'chosen', 'floor'] as const;
const ROLES = ['running', 'call', 'late', 'lost'] as const;
const WRITTEN: readonly (readonly [text: string, ground: string])[] = [
  ...['paper', 'field', 'floor', 'pressed'].flatMap((ground) => [['ink', ground] as const, ['ink-soft', ground] as const]),
  ['ink', 'rest'],
  ['ink', 'line'],
  ['paper', 'ink'],
  ['paper', 'block'],
  ['on-role', 'late'],
];
const TYPES = ['small', 'text', 'button', 'title', 'step', 'figure', 'verb', 'tag', 'countdown'] as const;
const WEIGHTS = ['text', 'word', 'strong'] as const;

const swatch = (name: string): TemplateResult =>
  html`<figure class="swatch">
    <figcaption>--${name}</figcaption>
    <div class="specimen" data-specimen=${name} ${place({ background: `var(--${name})` })}></div>
  </figure>`;

const written = ([text, ground]: readonly [string, string]): TemplateResult =>
  html`<figure class="written">
    <figcaption>--${text} on --${ground}</figcaption>
    <div class="specimen" data-specimen="${text} on ${ground}" ${place({ color: `var(--${text})`, background: `var(--${ground})` })}>
      C1 FOLD 0:00
    </div>
  </figure>`;

/** Colours with their names, what is written on what, sizes and weights of type. */
export function coloursSection(): TemplateResult {
  return section('colours', 'Colours and type', [
    shelf('Paper, ink and grounds', COLOURS.map(swatch)),
    shelf('The four roles', ROLES.map(swatch)),
    shelf('What is written on what', WRITTEN.map(written)),
    shelf(
      'Sizes on phone and desk',
      TYPES.map((name) =>
        specimen(`--type-${name}`, 'whole', html`<span ${place({ 'font-size': `var(--type-${name})` })}>Ch2 Second speed +12:30</span>`),
      ),
      'stacked',
    ),
    shelf(
      'Weights',
      WEIGHTS.map((name) =>
        specimen(`--weight-${name}`, '', html`<span ${place({ 'font-weight': `var(--weight-${name})` })}>C1 C2 FOLD 0:00</span>`),
      ),
    ),
  ]);
}
