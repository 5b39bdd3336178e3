/** A piece of text as it is drawn. */
export interface DrawnText {
  readonly text: string;
  /** Tag and class of the element, within which of ours. */
  readonly where: string;
  readonly sizePx: number;
  /** The ink, not the line box: descenders and all. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** WCAG 2's contrast ratio of the text to what is painted under it. */
  readonly contrast: number;
}

/**
 * Everything that the page has written, through all shadow roots, but for what only screen readers get. Runs in the
 * browser: it may use nothing from outside itself.
 */
export function measurePage(): DrawnText[] {
  const canvas = document.createElement('canvas').getContext('2d');
  if (canvas === null) throw new Error('no canvas');
  const drawn: DrawnText[] = [];

  const channels = (color: string): number[] => (color.match(/[\d.]+/g) ?? []).map(Number);
  const luminance = (color: string): number => {
    const [red = 0, green = 0, blue = 0] = channels(color).map((value) => {
      const share = value / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const isOpaque = (color: string): boolean => {
    const [, , , alpha = 1] = channels(color);
    return color !== 'transparent' && alpha === 1;
  };
  const groundUnder = (element: Element, x: number, y: number): string => {
    let root = element.getRootNode() as Document | ShadowRoot;
    for (;;) {
      for (const candidate of root.elementsFromPoint(x, y)) {
        if (candidate.getRootNode() !== root) continue;
        const { backgroundColor } = getComputedStyle(candidate);
        if (isOpaque(backgroundColor)) return backgroundColor;
      }
      if (!(root instanceof ShadowRoot)) return 'rgb(255, 255, 255)';
      root = root.host.getRootNode() as Document | ShadowRoot;
    }
  };
  /** A canvas does not know `font-size-adjust`: how much smaller or larger than there the page draws, by the height of an H. */
  const drawnScale = ({ fontSize, fontSizeAdjust }: CSSStyleDeclaration): number => {
    const wanted = /^cap-height ([\d.]+)$/.exec(fontSizeAdjust)?.[1];
    if (wanted === undefined) return 1;
    return (Number(wanted) * Number.parseFloat(fontSize)) / canvas.measureText('H').actualBoundingBoxAscent;
  };
  const take = (node: Text): void => {
    const element = node.parentElement ?? (node.getRootNode() as ShadowRoot).host;
    const text = node.data.trim();
    if (text === '' || element.closest('.unseen') !== null || element.closest('style') !== null) return;
    const style = getComputedStyle(element);
    canvas.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
    const ink = canvas.measureText(text);
    const scale = drawnScale(style);
    const range = document.createRange();
    range.selectNodeContents(node);
    const rects = [...range.getClientRects()].filter((rect) => rect.width > 0);
    for (const rect of rects) {
      // The rectangle of an inline text reaches from the font's ascent to its descent around the baseline.
      const baseline = rect.top + (rect.height * ink.fontBoundingBoxAscent) / (ink.fontBoundingBoxAscent + ink.fontBoundingBoxDescent);
      const ground = luminance(groundUnder(element, rect.left + rect.width / 2, baseline - (ink.actualBoundingBoxAscent * scale) / 2));
      const own = luminance(style.color);
      const host = (element.getRootNode() as ShadowRoot).host;
      drawn.push({
        text,
        where: `${host === undefined ? '' : host.localName} ${element.localName}.${element.className}`,
        sizePx: Number.parseFloat(style.fontSize),
        left: rect.left,
        right: rect.right,
        top: baseline - ink.actualBoundingBoxAscent * scale,
        bottom: baseline + ink.actualBoundingBoxDescent * scale,
        contrast: (Math.max(own, ground) + 0.05) / (Math.min(own, ground) + 0.05),
      });
    }
  };
  const walk = (root: Node): void => {
    for (const node of root.childNodes) {
      if (node instanceof Text) take(node);
      else if (node instanceof Element) {
        if (node.shadowRoot !== null) walk(node.shadowRoot);
        walk(node);
      }
    }
  };
  walk(document.body);
  return drawn;
}

/** Boxes whose content is wider than they are, or whose lines stand outside them, in words. Runs in the browser. */
export function overflowingBoxes(): string[] {
  const found: string[] = [];
  const walk = (root: ParentNode): void => {
    for (const element of root.querySelectorAll('*')) {
      if (element.shadowRoot !== null) walk(element.shadowRoot);
      if (element.matches('.unseen')) continue;
      const { scrollWidth, clientWidth } = element;
      // The wall's whole picture may stand up to 2 px aside, so that nothing burns in.
      const shiftPx = element.localName === 'wall-page' ? 2 : 0;
      if (clientWidth > 0 && scrollWidth > clientWidth + 1 + shiftPx)
        found.push(`${element.localName}.${element.className} ${scrollWidth} > ${clientWidth} px wide`);
      if (!element.matches('main, .floor, ol, section, .line, .lanes, wall-lines, wall-ovens')) continue;
      // By boxes, not by scrollHeight: that counts the empty part of a font's ascent and descent too.
      const box = element.getBoundingClientRect();
      for (const child of element.shadowRoot?.children ?? element.children) {
        const { top, bottom } = child.getBoundingClientRect();
        if (!child.matches('.unseen') && (top < box.top - 1 || bottom > box.bottom + 1)) {
          found.push(
            `${child.localName}.${child.className} from ${top} to ${bottom} px in ${element.localName}.${element.className} from ${box.top} to ${box.bottom} px`,
          );
        }
      }
    }
  };
  walk(document);
  return found;
}
