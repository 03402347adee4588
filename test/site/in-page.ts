/**
 * Questions asked inside the browser, of the page as it is laid out.
 *
 * Each function is sent there as text, so it can use nothing from outside itself.
 */

export interface Looked {
  /** What is wrong, in words. */
  readonly faults: readonly string[];
  /** How many pieces of text were looked at. */
  readonly looked: number;
}

/** By how many CSS pixels the document is wider than its window. */
export function overflowPx(): number {
  const { scrollWidth, clientWidth } = document.documentElement;
  return Math.max(0, scrollWidth - clientWidth);
}

/**
 * Text whose contrast with the ground behind it is below `least`: HTML text by its colour, text of drawings
 * by its fill. Contrast as in WCAG 2.2 ("contrast ratio" and "relative luminance").
 */
export function contrastFaults(least: number): Looked {
  type Colour = readonly [red: number, green: number, blue: number, alpha: number];
  const parse = (text: string): Colour => {
    const [, inside = ''] = /^rgba?\((.*)\)$/.exec(text) ?? [];
    const [red, green, blue, alpha = 1] = inside.split(/[\s,/]+/).map(Number);
    if (red === undefined || green === undefined || blue === undefined || [red, green, blue, alpha].some(Number.isNaN))
      throw new Error(`a colour in another notation: ${text}`);
    return [red, green, blue, alpha];
  };
  const over = (top: Colour, ground: Colour): Colour => {
    const mix = (index: 0 | 1 | 2): number => top[index] * top[3] + ground[index] * (1 - top[3]);
    return [mix(0), mix(1), mix(2), 1];
  };
  const luminance = ([red, green, blue]: Colour): number => {
    const linear = (value: number): number =>
      value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4;
    return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
  };
  const ancestors = (element: Element): Element[] => [
    element,
    ...(element.parentElement ? ancestors(element.parentElement) : []),
  ];
  const groundOf = (element: Element): Colour =>
    ancestors(element)
      .toReversed()
      .reduce((ground, one) => over(parse(getComputedStyle(one).backgroundColor), ground), [
        255, 255, 255, 1,
      ] as Colour);

  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const faults: string[] = [];
  let looked = 0;
  while (walker.nextNode()) {
    const text = walker.currentNode.nodeValue?.trim() ?? '';
    const element = walker.currentNode.parentElement;
    // A title and a description of a drawing are read aloud, not seen.
    if (text === '' || !element?.checkVisibility() || element.closest('svg title, svg desc')) continue;
    const style = getComputedStyle(element);
    const isDrawn = element.namespaceURI === 'http://www.w3.org/2000/svg';
    const [red, green, blue, alpha] = parse(isDrawn ? style.fill : style.color);
    const opacity = ancestors(element).reduce(
      (product, one) => product * Number(getComputedStyle(one).opacity),
      isDrawn ? Number(style.fillOpacity) : 1,
    );
    const ground = groundOf(element);
    const [darker, lighter] = [luminance(over([red, green, blue, alpha * opacity], ground)), luminance(ground)].sort(
      (a, b) => a - b,
    ) as [number, number];
    const contrast = (lighter + 0.05) / (darker + 0.05);
    looked += 1;
    if (!(contrast >= least))
      faults.push(
        `${contrast.toFixed(2)}:1 in <${element.tagName} class="${element.getAttribute('class') ?? ''}">: ${text.slice(0, 60)}`,
      );
  }
  return { faults, looked };
}

/** Text of visible drawings that is set smaller than `leastPx` on the screen, or reaches out of its drawing. */
export function chartFaults(leastPx: number): Looked {
  const faults: string[] = [];
  let looked = 0;
  const ink = document.createElement('canvas').getContext('2d')!;
  for (const svg of document.querySelectorAll('svg')) {
    if (!svg.checkVisibility()) continue;
    const box = svg.getBoundingClientRect();
    for (const text of svg.querySelectorAll('text')) {
      if ((text.textContent ?? '').trim() === '') continue;
      looked += 1;
      const { fontWeight, fontSize, fontFamily } = getComputedStyle(text);
      const toScreen = text.getScreenCTM()!;
      const sizePx = parseFloat(fontSize) * Math.hypot(toScreen.a, toScreen.b);
      if (!(sizePx >= leastPx)) faults.push(`${sizePx.toFixed(1)} px: ${text.textContent}`);
      // The box of a text is as high as its font; what shows is the ink.
      ink.font = `${fontWeight} ${fontSize} ${fontFamily}`;
      const { actualBoundingBoxAscent: up, actualBoundingBoxDescent: down } = ink.measureText(text.textContent);
      const { x, width } = text.getBBox();
      const baseline = text.getStartPositionOfChar(0).y;
      const corners = [
        [x, baseline - up],
        [x + width, baseline - up],
        [x, baseline + down],
        [x + width, baseline + down],
      ].map(([atX, atY]) => new DOMPoint(atX, atY).matrixTransform(toScreen));
      const out = Math.max(
        ...corners.map((corner) =>
          Math.max(box.left - corner.x, corner.x - box.right, box.top - corner.y, corner.y - box.bottom),
        ),
      );
      // Half a pixel can be rounding.
      if (!(out <= 0.5)) faults.push(`${out.toFixed(1)} px outside its drawing: ${text.textContent}`);
    }
  }
  return { faults, looked };
}

/**
 * Tables of which something does not show: cells that reach out of the box of their table, and tables whose box has to
 * be scrolled to be read. Counts the cells looked at.
 */
export function hiddenColumns(): Looked {
  /** By how many CSS pixels the ink of a cell reaches out to either side. */
  const outPx = (cell: Element, { left, right }: DOMRect): number => {
    const range = document.createRange();
    range.selectNodeContents(cell);
    const inks = [cell.getBoundingClientRect(), ...range.getClientRects()].filter(({ width }) => width > 0);
    return Math.max(0, ...inks.map((ink) => Math.max(left - ink.left, ink.right - Math.min(right, innerWidth))));
  };
  // The head of stacked rows is there for readers aloud only; its words stand on the cells.
  const isSeen = (cell: Element): boolean =>
    cell.checkVisibility() && !(cell.closest('thead') && getComputedStyle(cell.closest('table')!).display === 'block');
  const found = [...document.querySelectorAll('table')]
    .filter((table) => table.checkVisibility())
    .map((table) => {
      const box = table.closest('.table') ?? document.documentElement;
      const name = (table.querySelector('caption') ?? table).textContent.trim().slice(0, 60);
      const cells = [...table.querySelectorAll('td, th, caption')].filter(isSeen);
      const out = cells
        .map((cell) => ({ cell, px: outPx(cell, box.getBoundingClientRect()) }))
        // Half a pixel can be rounding.
        .filter(({ px }) => px > 0.5)
        .map(({ cell, px }) => `${Math.round(px)} px out of its box: ${name}: ${cell.textContent.trim().slice(0, 40)}`);
      const scrolled = box.scrollWidth > box.clientWidth ? [`has to be scrolled: ${name}`] : [];
      return { faults: [...scrolled, ...out], looked: cells.length };
    });
  return {
    faults: found.flatMap(({ faults }) => faults),
    looked: found.reduce((sum, { looked }) => sum + looked, 0),
  };
}
