// Does the fuel reach the injectors of a goal: what the pump has to do, which link gives out first, and the pumps of the catalogue.

import { variantName } from './choices.js';
import { foldNarrow, ranked } from './fold.js';
import { el, facts, linked, pageOf, partLink, ruled, section, sentence, sureness, verdict } from './format.js';
import { asks, boostTaken, cautions, consumption, enoughMark, flags, goalForm, grounds, influences, meaning, ownSums, rangeRow, sameGoal, three, wetted } from './fuel-sums.js';
import { addresses, bind, drawStrip } from './page.js';
import { plotFigures, titles } from './plot.js';

const { state, words, prepare, opened } = goalForm(document.querySelector('form[data-question]'));

drawStrip();

const right = text => ({ text, class: 'count' });

function need({ need: pump }) {
  return ruled('What the pump has to do at the goal', ['As', right('Low'), right('Expected'), right('High'), 'Unit'], [
    rangeRow('Burnt', pump.burnt), rangeRow('Wanted, with the return', pump.wanted), rangeRow('Rail, gauge', pump.railPressure), rangeRow('At the pump, gauge', pump.pressureAtPump),
    rangeRow('Hydraulic power', pump.hydraulicPower), ...(pump.injectorsHeldOpen ? [rangeRow('All injectors held open', pump.injectorsHeldOpen)] : []),
  ], { className: 'restack' });
}

function chain({ links, asked }) {
  return ruled('From the injectors back to the tank', ['Link', 'Part', 'Enough', 'Power that it carries', 'Because'], links.map(link => [
    sentence(link.link), link.part ? partLink(link.part) : '–', enoughMark(link.enough, link.enough === 'not-known' && !link.power), link.power ? el('span', { class: 'spread' }, link.power.text) : link.enough === 'not-known' ? 'not known' : link.link === 'return' ? 'counts at idle' : 'no limit of its own', [el('p', null, linked(link.because, [asked.injector, asked.pump])), ownSums(link.working, link.link, { onPaper: true })],
  ]), { className: 'restack' });
}

function pumpRow(pump) {
  return [
    [el('span', { class: 'rank' }, `${pump.rank}.`), ' ', partLink(pump.part), el('div', { class: 'plain-name' }, pump.name)],
    enoughMark(pump.enough),
    pump.flow ? [el('div', { class: 'spread' }, pump.flow.text), el('div', { class: 'quiet small' }, `margin ${pump.margin.text}`)] : 'not known',
    pump.power ? el('span', { class: 'spread' }, pump.power.text) : 'not known',
    pump.fit ? [el('a', { class: 'across', href: pageOf(pump.fit.link) }, verdict(pump.fit.headline, { short: true })), el('div', null, sureness(pump.fit.sureness))] : 'not asked',
    [el('p', null, pump.because), el('p', null, wetted[pump.wettedFor]), pump.reliefPressure ? null : el('p', null, 'Its relief pressure is not recorded.'), ownSums(pump.working, pump.part)],
  ];
}

function render(answer, query) {
  const { asked } = answer;
  const [, expected, most, unit] = three(answer.need.wanted);
  const variant = variantName(state.shown, asked.variant);
  const sized = answer.pumps.filter(pump => pump.enough === 'yes').length;
  const heading = `The pump has to deliver ${expected} ${unit}${most ? `, ${most} to be sure,` : ''} at ${answer.need.pressureAtPump.text.replace(/^\S+ … (\S+) … \S+/, '$1')}`;
  return {
    title: `${asked.power.text} at ${asked.speed.text}`,
    summary: `${variant}, ${asked.power.text} at ${asked.speed.text}, boost ${asked.boost.text}, ${words('fuel', asked.fuel)}, ${asked.pressure.text}, ${words('supply', asked.supply)}.`,
    said: `${heading}. ${answer.firstToGiveOut}`,
    content: [
      el('section', { class: 'headline' },
        el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', { class: 'why' }, answer.firstToGiveOut),
        facts([
          ['Pump', asked.pump ? partLink(asked.pump) : 'none recorded: choose one'], ['Injectors', asked.injector ? partLink(asked.injector) : 'none recorded: choose some'],
          ['Regulator', asked.regulator ? partLink(asked.regulator) : 'none recorded'], ['Voltage at the pump', asked.pumpVoltage.text], ['Loss of line and filter', `${asked.lineLoss.text} at ${asked.lineLossFlow.text}${query.has('line-loss') ? '' : ': not recorded, the usual one is taken'}`],
          ['Boost', boostTaken(answer)], ['Specific consumption', consumption(answer)],
          ['Enough', `${sized} of ${answer.pumps.length} pumps in the catalogue, in the worst case too`],
          ['Back', el('a', { href: sameGoal('injectors.html', query) }, 'The injectors for this goal')],
        ])),
      flags(answer, [asked.pump]),
      cautions(answer),
      section('Which link gives out first', chain(answer)),
      section('Pumps, ranked', ranked('Every pump of the catalogue: enough first, then recorded for the fuel, then fit, then the smallest',
        ['Pump', 'Enough', 'Delivery there, margin', 'Power that it carries', 'Will it fit', 'Because'], answer.pumps.map(pumpRow), { what: 'pump', className: 'pumps' })),
      influences(answer, 'what the pump has to deliver'),
      foldNarrow('What the pump has to do', answer.need.wanted.text, need(answer), meaning(answer)),
      foldNarrow('Drawn', titles(answer.plots), plotFigures(answer.plots)),
      grounds(answer, answer.pumps[0]),
      addresses(answer),
    ],
  };
}

bind({
  prepare,
  toApi: query => (asks(query) ? `/api/fuel-supply?${query}` : null),
  render,
  empty: () => el('p', { class: 'quiet' }, 'Write the goal with its units, one value or low..expected..high. Pump, injectors and regulator are those that the maker fitted unless you choose others.'),
}).then(opened);
