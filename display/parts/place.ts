import { noChange } from 'lit';
import { directive, Directive, PartType, type DirectiveResult, type ElementPart, type PartInfo } from 'lit/directive.js';

/** Style properties by their CSS names; null takes one away. */
export type Placement = Readonly<Record<string, string | null>>;

/**
 * Sets computed geometry through the CSSOM. Lit's styleMap writes a style attribute at its first rendering, which the
 * pages' content security policy (`style-src 'self'`) does not allow.
 */
class PlaceDirective extends Directive {
  private readonly current = new Map<string, string>();

  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.ELEMENT) throw new Error('place stands on the element itself: <div ${place({...})}>');
  }

  override update(part: ElementPart, [placement]: [Placement]): typeof noChange {
    const { style } = part.element as HTMLElement;
    for (const name of this.current.keys()) {
      if ((placement[name] ?? null) !== null) continue;
      style.removeProperty(name);
      this.current.delete(name);
    }
    for (const [name, value] of Object.entries(placement)) {
      if (value === null || this.current.get(name) === value) continue;
      style.setProperty(name, value);
      this.current.set(name, value);
    }
    return noChange;
  }

  override render(_placement: Placement): typeof noChange {
    return noChange;
  }
}

const placeDirective = directive(PlaceDirective);

/** Gives the element it stands on these style properties. */
export function place(placement: Placement): DirectiveResult {
  return placeDirective(placement);
}

/** A length for `place`, to a tenth of a pixel. */
export function px(length: number): string {
  return `${Math.round(length * 10) / 10}px`;
}
