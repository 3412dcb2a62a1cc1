// Which injectors a goal needs: the need, what was assumed, the catalogue ranked, and the working for a pencil.

import { familyOf, offerFamilies, offerVariants, variantName } from './choices.js';
import { el, facts, pageOf, partLink, plain, ruled, section, sentence, sureness, svg, verdict } from './format.js';
import { addresses, bind, drawStrip } from './page.js';

const form = document.querySelector('form[data-question]');
const { family, variant } = form.elements;
let shown = null;

drawStrip();

async function showFamily(code) {
  shown = code ? await familyOf(code) : null;
  offerVariants(variant, shown, '');
}

form.addEventListener('change', event => {
  if (event.target === family) showFamily(family.value);
});

const names = { 'bsfc': 'specific consumption', 'density': 'density of the fuel', 'rated-density': 'density of the rated fluid' };

/** Low, expected and high of a range as three cells; the text holds them with one unit. */
function three(range) {
  const [, ...found] = /^(\S+) … (\S+) … (\S+) (.*)$/.exec(range.text) ?? [];
  return found.length === 4 ? found : ['', range.text, '', ''];
}

function needRow(name, range) {
  const [low, expected, high, unit] = three(range);
  return [name, low, el('strong', null, expected), high, unit];
}

function need(answer) {
  const { mass, volume, ratedVolume } = answer.needPerInjector;
  const right = text => ({ text, class: 'count' });
  return ruled('What each injector must feed, held open', ['As', right('Low'), right('Expected'), right('High'), 'Unit'], [
    needRow('Mass', mass), needRow('Volume of this fuel', volume), needRow('Rating to look for', ratedVolume),
  ], { className: 'restack' });
}

const widest = 1.5;

/** Low to high as a bar, expected as a stroke, the limit as a bracket, on a scale that ends at 150 %; beyond it an arrow. */
function dutyScale(duty, limit) {
  const x = share => 95 * Math.min(share, widest) / widest;
  const beyond = duty.low > widest;
  return svg('svg', { viewBox: '0 0 100 18', class: 'scale', 'aria-hidden': 'true', focusable: 'false' },
    svg('rect', { x: 0, y: 3, width: x(limit), height: 12, class: 'band' }), svg('path', { d: `M${x(limit) - 3} 3 H${x(limit)} V15 H${x(limit) - 3}`, class: 'outline' }),
    beyond ? null : svg('rect', { x: x(duty.low), y: 6, width: Math.max(1, x(duty.high) - x(duty.low)), height: 6, class: 'solid' }),
    duty.expected > widest ? null : svg('path', { d: `M${x(duty.expected)} 3 V15`, class: 'outline' }),
    duty.high > widest ? svg('path', { d: 'M92 4 L99 9 L92 14', class: 'outline' }) : null);
}

const enough = { 'yes': ['✚', 'enough'], 'no': ['−', 'not enough'], 'not-known': ['?', 'perhaps'] };

function enoughMark(value) {
  const [mark, words] = enough[value];
  return el('span', { class: 'status' }, el('b', { 'aria-hidden': 'true' }, mark), ` ${words}`);
}

const join = (...lines) => lines.filter(Boolean).map(line => el('div', null, line));

function injectorRow(injector, limit) {
  const { rated } = injector;
  return [
    [el('span', { class: 'rank' }, `${injector.rank}.`), ' ', partLink(injector.part), el('div', { class: 'plain-name' }, injector.name)],
    join(rated.flow ?? 'flow not recorded', [rated.pressure ? `at ${rated.pressure}` : 'pressure not recorded', ', ', rated.fluid ?? 'fluid not recorded'].join('')),
    enoughMark(injector.enough),
    injector.duty ? [el('span', { class: 'spread' }, injector.duty.text), dutyScale(injector.duty, limit)] : 'not known',
    injector.powerAtDuty ? el('span', { class: 'spread' }, injector.powerAtDuty.text) : 'not known',
    injector.fit ? [el('a', { class: 'across', href: pageOf(injector.fit.link) }, verdict(injector.fit.headline, { short: true })), el('div', null, sureness(injector.fit.sureness))] : 'not asked',
    [el('p', null, injector.because), injector.missing.map(fact => el('p', null, fact.text)), injector.warnings.map(warning => el('p', null, warning.text)),
      injector.working.length ? el('details', { class: 'sums' }, el('summary', null, 'Its sums', el('span', { class: 'unseen' }, ` of ${injector.part}`)), working(injector.working)) : null],
  ];
}

function working(steps) {
  return el('ol', { class: 'working' }, steps.map(step => el('li', null,
    el('div', null, el('strong', null, sentence(step.what)), ' = ', step.formula), el('div', { class: 'number' }, `= ${step.with}`), el('div', { class: 'number result' }, `= ${step.result}`), el('div', { class: 'quiet small' }, step.source))));
}

/** A tenth is far below what is known of the figure. */
const whole = text => (Number(text) >= 100 ? String(Math.round(Number(text))) : text);

function render(answer, query) {
  const { asked } = answer;
  const first = answer.injectors[0];
  const sized = answer.injectors.filter(injector => injector.enough === 'yes').length;
  const [least, expected, most, unit] = three(answer.needPerInjector.ratedVolume);
  const heading = `Look for ${whole(expected)} ${unit.replace(/,.*$/, '')} each`;
  return {
    title: `${asked.power.text} at ${asked.speed.text}`,
    summary: `${variantName(shown, asked.variant)}, ${asked.power.text} at ${asked.speed.text}, boost ${asked.boost.text}, ${query.get('fuel') ?? asked.fuel}, ${asked.pressure.text}, ${asked.supply.replaceAll('-', ' ')}, duty up to ${Math.round(asked.duty * 1000) / 10} %.`,
    said: `${heading}; ${sized} of ${answer.injectors.length} injectors are enough.`,
    content: [
      el('section', { class: 'headline' },
        el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', { class: 'why' }, `Rated on n-heptane at 3 bar: enough if the expected figures hold. With the worst of them it takes ${whole(most)}, with the best of them ${whole(least)} would do.`),
        facts([
          ['First of the list', first ? [partLink(first.part), ` ${first.name}: `, enoughMark(first.enough), '. ', first.fit ? el('a', { class: 'across', href: pageOf(first.fit.link) }, verdict(first.fit.headline)) : ''] : 'no injector is recorded'],
          ['Enough', `${sized} of ${answer.injectors.length} in the catalogue, in the worst case too`],
          ['Pressure across', answer.pressureAcross.text],
          ['Taken as', `${asked.cylinders} cylinders × ${asked.injectorsPerCylinder}, ${asked.shots} squirt${asked.shots === 1 ? '' : 's'} a cycle, ${asked.voltage.text}`],
        ])),
      answer.warnings.length ? el('div', { class: 'notice' }, el('ul', null, answer.warnings.map(warning => el('li', null, warning.text)))) : null,
      section('What each must feed', need(answer)),
      section('Injectors, ranked', el('p', { class: 'quiet small' }, `Fit is judged against ${variantName(shown, asked.variant)} as built: the control unit is set for the flow of the fitted injectors, so one of another flow always counts as running differently. Whether anything else differs stands in its fit answer.`), ruled('Every injector of the catalogue: enough first, then fit, then the smallest', ['Injector', 'Rated', 'Enough', 'Duty at the goal', 'Power at the limit', 'Will it fit', 'Because'],
        answer.injectors.map(injector => injectorRow(injector, asked.duty)), { className: 'restack ranked' })),
      section('What was assumed', ruled('Assumed figures and where they come from', ['Figure', 'Low … expected … high', 'Source'], answer.assumed.map(one => [sentence(names[one.name] ?? plain(one.name)), one.range.text, one.source]), { className: 'restack' })),
      section('The working', working(answer.working)),
      section('Cautions', answer.cautions.length ? el('ul', { class: 'cautions' }, answer.cautions.map(caution => el('li', null, caution.text))) : null),
      addresses(answer),
    ],
  };
}

bind({
  prepare: async query => showFamily(await offerFamilies(family, query.get('family'))),
  toApi: query => (query.size ? `/api/injectors?${query}` : null),
  render,
  empty: () => el('p', { class: 'quiet' }, 'Write the goal with its units; a bare hp or a decimal comma is asked about, never guessed.'),
});
