import type { LitElement } from 'lit';

/**
 * Brings the keyboard to the field of a fault's path, `formula.method[3].minutes.latest`, through all shadow roots; to the
 * nearest field further out where there is none of its own. False where no field stands on the way to it.
 */
export async function focusWithin(root: ParentNode, path: string): Promise<boolean> {
  const fields = await fieldsIn(root);
  for (let at = path; at !== ''; at = at.replace(/(\.[^.[\]]+|\[\d+\]|[^.[\]]+)$/, '')) {
    const field = fields.find((known) => known.dataset['field'] === at);
    if (field === undefined) continue;
    (field.shadowRoot?.querySelector<HTMLElement>('input, select, textarea') ?? field).focus();
    return true;
  }
  return false;
}

/** Every field that is drawn, once what is being drawn is there. */
async function fieldsIn(root: ParentNode): Promise<readonly HTMLElement[]> {
  const found: HTMLElement[] = [];
  for (const element of root.querySelectorAll<HTMLElement>('*')) {
    if (element.dataset['field'] !== undefined) found.push(element);
    if (element.shadowRoot === null) continue;
    if ('updateComplete' in element) await (element as LitElement).updateComplete;
    found.push(...(await fieldsIn(element.shadowRoot)));
  }
  return found;
}
