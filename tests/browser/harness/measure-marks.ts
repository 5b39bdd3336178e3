/** Something drawn that says something without a text. */
export interface DrawnMark {
  /** Element and class, within which of ours. */
  readonly what: string;
  /** WCAG 2's contrast ratio to the page's ground of whatever of it differs most: fill, outline or border. */
  readonly contrast: number;
}

/** Marks, edges, strips, loads and ticks of the wall. Runs in the browser: it may use nothing from outside itself. */
export function measureMarks(): DrawnMark[] {
  const MARKS =
    '.ring, .gone, .hand, .call, .late, .lost, .edge, .bake, .due, .rest, .way, .ripe, .join, .in, .booked, .clash, .blocked, .hatch, .tick, .comb, .now';
  const HOSTS = ['role-mark', 'wall-row', 'wall-strip', 'wall-lanes', 'wall-ticks', 'wall-deck', 'wall-ovens', 'wall-page'];
  const colours = (text: string): number[][] =>
    (text.match(/rgba?\([^)]*\)/g) ?? [])
      .map((colour) => (colour.match(/[\d.]+/g) ?? []).map(Number))
      .filter(([, , , alpha = 1]) => alpha > 0.99);
  const luminance = (channels: readonly number[]): number => {
    const [red = 0, green = 0, blue = 0] = channels.map((value) => {
      const share = value / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const wall = document.querySelector('wall-page');
  const [paper] = colours(wall === null ? '' : getComputedStyle(wall).backgroundColor);
  if (paper === undefined) throw new Error('the wall has no ground');
  const ground = luminance(paper);
  const ratio = (colour: readonly number[]): number => {
    const own = luminance(colour);
    return (Math.max(own, ground) + 0.05) / (Math.min(own, ground) + 0.05);
  };
  const drawnColours = (element: Element): number[][] => {
    const style = getComputedStyle(element);
    if (element instanceof SVGElement) return [...colours(style.fill), ...(style.stroke === 'none' ? [] : colours(style.stroke))];
    const borders = (['Top', 'Right', 'Bottom', 'Left'] as const)
      .filter((side) => style[`border${side}Style`] !== 'none' && Number.parseFloat(style[`border${side}Width`]) >= 2)
      .flatMap((side) => colours(style[`border${side}Color`]));
    return [...colours(style.backgroundColor), ...colours(style.backgroundImage), ...borders];
  };
  const isText = (element: Element): boolean => element.matches('.count, .word, .countdown, .verb, .note');
  const found: DrawnMark[] = [];
  const walk = (root: ParentNode): void => {
    for (const element of root.querySelectorAll('*')) {
      if (element.shadowRoot !== null) walk(element.shadowRoot);
      const { host } = element.getRootNode() as ShadowRoot;
      if (host === undefined || !HOSTS.includes(host.localName) || !element.matches(MARKS) || isText(element)) continue;
      const name = element.getAttribute('class') ?? '';
      found.push({ what: `${host.localName} ${element.localName}.${name}`, contrast: Math.max(1, ...drawnColours(element).map(ratio)) });
    }
  };
  walk(document);
  return found;
}
