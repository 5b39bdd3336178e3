/** An animation that runs on the page. */
export interface Running {
  /** The element whose shadow tree it runs in, and what it moves in there. */
  readonly host: string;
  readonly target: string;
  readonly level: string;
  readonly isHeard: boolean;
  readonly properties: readonly string[];
  /** How often it goes down and up again in one iteration. */
  readonly dips: number;
  readonly durationMs: number;
}

/** What a specimen says and draws. */
export interface Shown {
  readonly name: string;
  /** Through all shadow roots: its texts, and "[drawing]" for an SVG. */
  readonly text: string;
  readonly marks: number;
  readonly isSwatch: boolean;
}

/** Every specimen of the page of elements. Runs in the browser: it may use nothing from outside itself. */
export function shownSpecimens(): Shown[] {
  const collect = (node: Node, said: string[], marks: Element[]): void => {
    if (node instanceof Text && node.data.trim() !== '') said.push(node.data.trim());
    if (!(node instanceof Element || node instanceof ShadowRoot)) return;
    if (node instanceof Element) {
      if (node.matches('style, script')) return;
      if (node.localName === 'role-mark') marks.push(node);
      if (node.shadowRoot !== null) collect(node.shadowRoot, said, marks);
    }
    if (node instanceof SVGSVGElement) {
      if (node.getBoundingClientRect().width > 0) said.push('[drawing]');
      return;
    }
    for (const child of node.childNodes) collect(child, said, marks);
  };
  return [...document.querySelectorAll('[data-specimen]')].map((specimen) => {
    const said: string[] = [];
    const marks: Element[] = [];
    collect(specimen, said, marks);
    return {
      name: specimen.getAttribute('data-specimen') ?? '',
      text: said.join(' '),
      marks: marks.length,
      isSwatch: specimen.closest('.swatch') !== null,
    };
  });
}

/** The names of our elements that are on the page, shadow trees and all. Runs in the browser: it may use nothing from outside itself. */
export function shownTags(): string[] {
  const found = new Set<string>();
  const visit = (root: Document | ShadowRoot): void => {
    for (const element of root.querySelectorAll('*')) {
      if (element.localName.includes('-')) found.add(element.localName);
      if (element.shadowRoot !== null) visit(element.shadowRoot);
    }
  };
  visit(document);
  return [...found];
}

/** Every animation that runs on the page, shadow trees and all. Runs in the browser: it may use nothing from outside itself. */
export function runningAnimations(): Running[] {
  const found = new Set<Animation>();
  const visit = (root: Document | ShadowRoot): void => {
    for (const animation of root.getAnimations()) found.add(animation);
    for (const element of root.querySelectorAll('*')) if (element.shadowRoot !== null) visit(element.shadowRoot);
  };
  visit(document);
  const notOurs = new Set(['offset', 'computedOffset', 'easing', 'composite']);
  return [...found].map((animation) => {
    const effect = animation.effect as KeyframeEffect;
    const frames = effect.getKeyframes();
    const root = effect.target?.getRootNode();
    if (!(root instanceof ShadowRoot)) throw new Error(`${effect.target?.localName ?? 'nothing'} moves outside every element`);
    const host = root.host as HTMLElement & { heard?: boolean };
    const values = frames.map((frame) => Number(frame['opacity'] ?? 1));
    return {
      host: host.localName,
      target: effect.target?.localName ?? '',
      level: host.getAttribute('level') ?? '',
      isHeard: host.heard === true,
      properties: [...new Set(frames.flatMap((frame) => Object.keys(frame)))].filter((name) => !notOurs.has(name)),
      dips: values.filter((value, index) => value < (values[index - 1] ?? value)).length,
      durationMs: Number(effect.getComputedTiming().duration),
    };
  });
}

/** Elements that a style gives a transition or an animation, but for the shape of a role. Runs in the browser. */
export function movedProperties(): string[] {
  const found: string[] = [];
  const visit = (root: Document | ShadowRoot): void => {
    for (const element of root.querySelectorAll('*')) {
      const { animationName, transitionDuration, transitionDelay, scrollBehavior } = getComputedStyle(element);
      const isShape = root instanceof ShadowRoot && root.host.localName === 'role-mark' && element.localName === 'svg';
      const moves = (animationName !== 'none' && !isShape) || scrollBehavior !== 'auto';
      if (moves || /[1-9]/.test(transitionDuration + transitionDelay))
        found.push(`${element.localName}.${element.getAttribute('class') ?? ''}`);
      if (element.shadowRoot !== null) visit(element.shadowRoot);
    }
  };
  visit(document);
  return found;
}
