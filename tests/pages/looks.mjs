// What is asked of a page while it stands in the browser. Each runs there and gives back complaints in words.

/// Nothing sticks out of the viewport; only tables and drawings scroll, each within its own frame.
export function outside() {
  const width = document.documentElement.clientWidth, all = [];
  if (document.documentElement.scrollWidth > width) all.push(`the page is ${document.documentElement.scrollWidth} wide in ${width}`);
  for (const node of document.querySelectorAll('svg, .scroll, figure, table, fieldset')) {
    if (node.matches('.scroll *, fieldset *, .defs')) continue;
    const box = node.getBoundingClientRect();
    if (box.width > 0 && (box.left < -0.5 || box.right > width + 0.5)) all.push(`${node.tagName}.${node.className.baseVal ?? node.className} from ${box.left} to ${box.right}`);
  }
  return all;
}

/// By the letters as they are: in a picture no text lies over another, and none is cut off by its frame.
export function overlaps() {
  const all = [];
  for (const svg of document.querySelectorAll('main svg')) {
    const texts = [...svg.querySelectorAll('text')].filter((text) => text.textContent.trim() && text.getClientRects().length);
    const frame = svg.getBoundingClientRect();
    const boxes = texts.map((text) => {
      const box = text.getBoundingClientRect(), ease = box.height * 0.16;  // the line's height holds more than the letters
      return { said: text.textContent, left: box.left, right: box.right, top: box.top + ease, bottom: box.bottom - ease };
    });
    boxes.forEach((a, i) => {
      if (a.left < frame.left - 1 || a.right > frame.right + 1 || a.top < frame.top - 1 || a.bottom > frame.bottom + 1) all.push(`"${a.said}" is cut off`);
      for (const b of boxes.slice(0, i)) if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom) all.push(`"${a.said}" lies over "${b.said}"`);
    });
  }
  return all;
}

/// Letters in pictures are large enough to read, and stand out from their paper (WCAG 2.2: 4.5 to 1).
export function legible(least_pixels) {
  const channel = (value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
  const numbers = (color) => (color.match(/[\d.]+/g) ?? []).map(Number);
  const light = (color) => {
    const [r, g, b] = numbers(color).map((value) => channel(value / 255));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const paper = (node) => {
    for (; node; node = node.parentElement) {
      const color = numbers(getComputedStyle(node).backgroundColor);
      if (color.length === 3 || color[3] === 1) return getComputedStyle(node).backgroundColor;
    }
    return 'rgb(255, 255, 255)';
  };
  const all = [];
  for (const text of document.querySelectorAll('main svg text')) {
    if (!text.getClientRects().length) continue;
    const style = getComputedStyle(text), pixels = parseFloat(style.fontSize) * text.getScreenCTM().a;
    if (pixels < least_pixels) all.push(`"${text.textContent}" has ${pixels.toFixed(1)} pixels`);
    const [a, b] = [light(style.fill), light(paper(text.closest('svg').parentElement))].sort((x, y) => y - x);
    if ((a + 0.05) / (b + 0.05) < 4.5) all.push(`"${text.textContent}" has a contrast of ${((a + 0.05) / (b + 0.05)).toFixed(2)}`);
  }
  return [...new Set(all)];
}

/// Curves and fills that mean something stand out 3 to 1.
export function curves_stand_out() {
  const channel = (value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
  const light = (color) => {
    const [r, g, b] = (color.match(/[\d.]+/g) ?? []).map((value) => channel(Number(value) / 255));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const all = [];
  for (const figure of document.querySelectorAll('figure')) {
    const paper = light(getComputedStyle(figure).backgroundColor);
    for (const line of figure.querySelectorAll('.curve .line, .trace .line')) {
      const [a, b] = [light(getComputedStyle(line).stroke), paper].sort((x, y) => y - x);
      if ((a + 0.05) / (b + 0.05) < 3) all.push(`a curve of ${line.getAttribute('class')} has a contrast of ${((a + 0.05) / (b + 0.05)).toFixed(2)}`);
    }
  }
  return [...new Set(all)];
}

export async function axe_violations() {
  for (const fold of document.querySelectorAll('details')) fold.open = true;
  const { violations } = await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
  return violations.map((one) => `${one.id}: ${one.help}: ${one.nodes.slice(0, 3).map((node) => node.target.join(' ') + ' ' + (node.any[0]?.message ?? '')).join('; ')}`);
}

/// What the keyboard must reach. Marked, so that it is known again.
export function mark_controls() {
  const wanted = [...document.querySelectorAll('a[href], button, input, summary, [tabindex="0"]')].filter((node) => node.checkVisibility() && !node.disabled);
  wanted.forEach((node, i) => (node.dataset.control = i));
  document.activeElement?.blur();
  return wanted.length;
}
export function focused() {
  const node = document.activeElement, style = getComputedStyle(node);
  return { control: node.dataset.control, seen: node === document.body || style.outlineStyle !== 'none' };
}

export function all_values() {
  return [...document.querySelectorAll('data[data-at]')].map((node) => [node.dataset.at, node.value]);
}
