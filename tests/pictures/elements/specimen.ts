import { html, type TemplateResult } from 'lit';

/** A section of the page, found by its id. */
export function section(id: string, title: string, shelves: readonly TemplateResult[]): TemplateResult {
  return html`<section id=${id} aria-labelledby="${id}-title">
    <h2 id="${id}-title">${title}</h2>
    ${shelves}
  </section>`;
}

/** Specimens of one kind side by side, or one under the other. */
export function shelf(title: string, specimens: readonly TemplateResult[], way: 'stacked' | 'beside' = 'beside'): TemplateResult {
  return html`<h3>${title}</h3>
    <div class="shelf ${way}">${specimens}</div>`;
}

/** One element in one state under its name; `look` says how much room it has. */
export function specimen(name: string, look: string, content: unknown): TemplateResult {
  return html`<figure class=${look}>
    <figcaption>${name}</figcaption>
    <div class="specimen" data-specimen=${name}>${content}</div>
  </figure>`;
}
