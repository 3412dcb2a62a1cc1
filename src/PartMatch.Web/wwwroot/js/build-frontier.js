// What each day sooner costs: every plan that no other betters in both, as table and drawing, and what would change the cheapest.

import { fold, ranked } from './fold.js';
import { address, count, el, facts, linked, ruled, section, sentence, sentences, sureness } from './format.js';
import { money } from './offer-words.js';
import { positionName } from './choices.js';
import { addresses } from './page.js';
import { frontierPlot } from './build-frontier-plot.js';
import { changesTable } from './build-why-not.js';

const kinds = { price: 'a price', delay: 'a delay', fit: 'an unknown fit' };

function pointRow(point, index, points) {
  const cheaper = points[index + 1];
  return [
    [count(point.days, 'day'), el('div', { class: 'quiet small plain-name' }, `ready ${point.readyOn}`)], { cell: money(point.cost), class: 'count' },
    point.dayCosts ? `${money(point.dayCosts)} a day` : el('span', { class: 'quiet' }, 'the cheapest'), sureness(point.sureness),
    point.differs.length ? el('details', { class: 'on-paper' },
      el('summary', null, `${count(point.differs.length, 'line')} otherwise than ${cheaper ? count(cheaper.days, 'day') : 'the next'}`),
      changesTable('Than in the next, cheaper plan', point.differs)) : '',
  ];
}

const subjectOf = (subject, family) => {
  if (!subject.includes('/')) return sentence(positionName(family, subject));
  const [book, code] = subject.split('/');
  return el('a', { href: address('record.html', { book, table: 'offers', key: code }) }, `offer ${code}`);
};

const swings = (list, family) => (list.length ? ranked('What would change the cheapest plan, were it otherwise',
  ['What', 'Of', 'How far it may move', 'The plan then'], list.map(swing => [
  sentence(kinds[swing.what] ?? swing.what), subjectOf(swing.subject, family),
    [linked(sentences(swing.text)), swing.room ? el('div', { class: 'small' }, `Room: ${money(swing.room)}`) : null], swing.becomes
    ? linked(sentences(swing.becomes)) : '',
]), { what: 'thing' }) : null);

export function frontierAnswer(answer, { build, family, query }) {
  const { points } = answer;
  const [soonest, cheapest] = [points[0], points.at(-1)];
  const plan = objective => address('build.html', { build: build.code, version: query.get('version'), objective, on: query.get('on') });
  return [
    el('section', { class: 'headline', 'data-status': answer.status },
      el('h2', { 'data-first': true, tabindex: '-1' }, answer.headlineText),
      points.length ? facts([
        ['The cheapest', [el('a', { href: plan('cheapest') }, `${money(cheapest.cost)}, ready ${cheapest.readyOn}`)]],
        ['The soonest', points.length > 1 ? [el('a', { href: plan('soonest') }, `${money(soonest.cost)}, ready ${soonest.readyOn}`)] : ''],
      ]) : null),
    points.length ? section('What each day sooner costs',
      points.length > 1 ? frontierPlot(points, answer.plot) : null,
      ruled('Every plan that no other betters in both, the soonest first',
        ['Days', { text: 'Cost', class: 'count' }, 'A day sooner costs', 'The weakest line', 'What is otherwise'], points.map(pointRow),
        { className: 'restack' })) : null,
    fold('What would change the plan', count(answer.swings.length, 'thing'), swings(answer.swings, family)),
    addresses(answer),
  ];
}
