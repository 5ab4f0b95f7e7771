// SPDX-License-Identifier: Apache-2.0
// What any page must keep, looked at in the page itself; says what is wrong, one line a fault.
(() => {
  const faults = [];
  const shown = (node) => node.getClientRects().length > 0;
  const named = (node) => `${node.tagName.toLowerCase()} '${(node.textContent || node.id).trim().slice(0, 30)}'`;

  // Colours by WCAG 2.1: 4.5 to 1, 3 to 1 for large letters.
  const channels = (colour) => colour.match(/[\d.]+/g).map(Number);
  const luminance = (colour) => {
    const [r, g, b] = channels(colour).map((part) => part / 255).map(
        (part) => part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = (node) => {
    for (let at = node; at; at = at.parentElement) {
      const colour = getComputedStyle(at).backgroundColor, alpha = channels(colour)[3];
      if (alpha === undefined || alpha > 0) return colour;
    }
    return 'rgb(255, 255, 255)';
  };
  for (const node of document.body.querySelectorAll('*')) {
    const own = [...node.childNodes].some((child) => child.nodeType === 3 && child.textContent.trim());
    if (!shown(node) || !(own || node.matches('input, select'))) continue;
    const style = getComputedStyle(node), size = parseFloat(style.fontSize);
    const large = size >= 24 || size >= 18.66 && Number(style.fontWeight) >= 700;
    const [low, high] = [luminance(style.color), luminance(ground(node))].sort((a, b) => a - b);
    const ratio = (high + 0.05) / (low + 0.05);
    if (ratio < (large ? 3 : 4.5)) faults.push(`${named(node)}: contrast ${ratio.toFixed(2)}`);
  }

  // Structure.
  if (!document.documentElement.lang) faults.push('the page names no language');
  let level = 0;
  for (const heading of document.querySelectorAll('h1, h2, h3, h4, h5, h6')) {
    const own = Number(heading.tagName[1]);
    if (own > level + 1) faults.push(`${named(heading)} follows a heading of level ${level}`);
    level = own;
  }
  for (const image of document.images) if (!image.alt) faults.push('an image without words');
  for (const image of document.images) if (!image.naturalWidth) faults.push(`an image is not drawn: ${image.alt}`);
  for (const input of document.querySelectorAll('input, select, button')) {
    if (!(input.labels && input.labels.length) && !input.getAttribute('aria-label') && !input.textContent.trim()) {
      faults.push(`${named(input)}: no label`);
    }
  }
  const ids = [...document.querySelectorAll('[id]')].map(({id}) => id);
  for (const id of ids) if (ids.indexOf(id) !== ids.lastIndexOf(id)) faults.push(`two elements are called ${id}`);
  if (document.documentElement.scrollWidth > window.innerWidth) {
    faults.push(`the page is ${document.documentElement.scrollWidth} wide on ${window.innerWidth}`);
  }
  return faults;
})()
