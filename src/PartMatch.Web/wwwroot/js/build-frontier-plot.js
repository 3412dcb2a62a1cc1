// Cost over days, drawn from the answer that is there: asking for the server's drawing would work everything out again.

import { el, svg } from './format.js';
import { money } from './offer-words.js';

// On 640 × 300; left and below is room for what the axes say.
const paper = { width: 640, height: 300 };
const sheet = { left: 96, right: 600, top: 40, bottom: 240 };

/** From a value to its place; the axis ends where the values end. */
const scale = (values, from, to) => {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return value => from + (value - least) / (most - least) * (to - from);
};

const text = (x, y, said, attributes) => svg('text', { x, y, class: 'plot-number', 'text-anchor': 'middle', ...attributes }, said);

/** Does it stand clear of those before it? What would lie on another is left to the table. */
function clear(places, apart) {
  const kept = [];
  return places.map(at => {
    const isClear = kept.every(one => Math.abs(one - at) >= apart);
    if (isClear) kept.push(at);
    return isClear;
  });
}

/**
 * At least two points from the soonest, each cheaper than the one before: as steps, for between two plans nothing is gained by waiting.
 * `link` is the server's own drawing.
 */
export function frontierPlot(points, link) {
  const days = scale(points.map(point => point.days), sheet.left, sheet.right);
  const cost = scale(points.map(point => Number(point.cost.amount)), sheet.bottom, sheet.top);
  const at = points.map(point => ({ ...point, x: days(point.days), y: cost(Number(point.cost.amount)) }));
  const steps = at.slice(1).map(({ x, y }) => `H${x} V${y}`).join(' ');
  const [isDayClear, isCostClear] = [clear(at.map(({ x }) => x), 28), clear(at.map(({ y }) => y), 18)];
  return el('figure', { class: 'plot-sheet', 'data-plot': 'frontier' },
    el('div', { class: 'plot-holder', tabindex: '0', role: 'group', 'aria-label': 'Cost against days' },
      svg('svg', { viewBox: `0 0 ${paper.width} ${paper.height}`, class: 'plot', role: 'img', 'aria-labelledby': 'frontier-title' },
        svg('title', { id: 'frontier-title' }, `Cost against days: ${points.map(point => `${money(point.cost)} after ${point.days} days`).join('; ')}`),
        at.map(({ x, y }) => svg('path', { d: `M${sheet.left - 8} ${y} H${x} V${sheet.bottom + 12}`, class: 'plot-grid', fill: 'none' })),
        svg('path', { d: `M${sheet.left - 8} ${sheet.top - 8} V${sheet.bottom + 12} H${sheet.right + 8}`, class: 'plot-axis', fill: 'none' }),
        svg('path', { d: `M${at[0].x} ${at[0].y} ${steps}`, class: 'plot-line', fill: 'none', 'stroke-width': 2.5 }),
        at.map(({ x, y }) => svg('circle', { cx: x, cy: y, r: 5, class: 'plot-dot' })),
        at.map(({ x, days: after }, index) => (isDayClear[index] ? text(x, sheet.bottom + 30, String(after)) : null)),
        at.map(({ y, cost: { amount } }, index) => (isCostClear[index] ? text(sheet.left - 14, y + 5, amount, { 'text-anchor': 'end' }) : null)),
        text(sheet.right, sheet.bottom + 52, 'ready after so many days', { class: 'plot-name', 'text-anchor': 'end' }),
        text(8, 18, `cost, ${points[0].cost.currency}`, { class: 'plot-name', 'text-anchor': 'start' }))),
    el('figcaption', null, el('strong', null, 'Cost against days'),
      ': the cheapest plan that is ready by a day. The axes begin and end with the plans, not at nothing.',
      link ? [' ', el('a', { class: 'acts', href: link }, 'Address of the drawing')] : null));
}
