// Which injectors a goal needs: the need, the goal seen from the air, the catalogue ranked, and the working for a pencil.

import { variantName } from './choices.js';
import { foldNarrow, ranked } from './fold.js';
import { el, facts, linked, pageOf, partLink, ruled, section, sureness, svg, verdict } from './format.js';
import { asks, assumed, boostTaken, cautions, consumption, enoughMark, flags, goalForm, grounds, influences, meaning, ownSums, rangeRow, sameGoal, three, wetted, working } from './fuel-sums.js';
import { addresses, bind, drawStrip } from './page.js';
import { plotFigures, titles } from './plot.js';

const { state, words, prepare, opened } = goalForm(document.querySelector('form[data-question]'));

drawStrip();

const right = text => ({ text, class: 'count' });
const threeHeads = ['As', right('Low'), right('Expected'), right('High'), 'Unit'];

/** More than one injector in a cylinder: the need of all of them, and how they share it. */
function together({ asked, needPerCylinder: { fuel, mass, volume, ratedVolume, shared, firstStage } }) {
  if (asked.injectorsPerCylinder === 1 && !asked.stagedWith) return [];
  return [
    ruled('What each cylinder needs, its injectors together', threeHeads, [
      rangeRow('Fuel burnt', fuel), rangeRow('Mass, held open', mass), rangeRow('Volume of this fuel, held open', volume), rangeRow('Ratings to add up to', ratedVolume),
      ...(firstStage ? [rangeRow('The second stage feeds, held open', firstStage.secondMass), rangeRow('Left to the first stage', firstStage.mass), rangeRow('As a rating for the first stage', firstStage.ratedVolume)] : []),
    ], { className: 'restack' }),
    el('p', null, linked(shared, [asked.stagedWith])),
  ];
}

function need(answer) {
  const { needPerInjector: { mass, volume, ratedVolume }, idle, asked } = answer;
  return [
    ...together(answer),
    asked.stagedWith && asked.injectorsPerCylinder === 1 ? null : ruled(`What each ${asked.stagedWith ? 'pair of stages' : 'injector'} must feed, held open`, threeHeads, [
      rangeRow('Mass', mass), rangeRow('Volume of this fuel', volume), rangeRow(asked.stagedWith ? 'Ratings to add up to' : 'Rating to look for', ratedVolume),
    ], { className: 'restack' }),
    meaning(answer),
    idle ? ruled('What idling asks', threeHeads, [
      rangeRow('Fuel of the engine', idle.fuelFlow), rangeRow('Pressure across under vacuum', idle.pressureAcross), rangeRow('One shot of one injector', idle.perSquirt),
    ], { className: 'restack' }) : null,
  ];
}

const standings = { ordinary: 'Within reach of the air', ambitious: 'Ambitious', unlikely: 'Unlikely', 'not-known': 'Not known' };

function fromTheAir({ airSide: side }) {
  return foldNarrow('The goal seen from the air', standings[side.standing].toLowerCase(),
    el('p', null, side.because),
    el('p', { class: 'quiet small' }, side.ranges),
    facts([['Air flow', side.airFlow?.text], ['Power that it carries', side.power?.text], ['Mean effective pressure of the goal', side.bmep?.text], ['Mean piston speed at the goal', side.pistonSpeed?.text],
      ['In reference air', side.corrected ? side.corrected.text : null]]),
    ruled('Held against', ['Engine', 'Mean effective pressure', 'Mean piston speed', 'Source'],
      side.yardsticks.map(one => [one.of === 'published' ? 'Published' : one.name ?? variantName(state.shown, one.of), one.bmep.text, one.pistonSpeed?.text ?? 'not recorded', one.source]), { className: 'restack' }),
    el('details', { class: 'on-paper' }, el('summary', null, 'Its figures and sums'), assumed(side.assumed), working(side.working)));
}

function throughBoost({ pressureThrough }) {
  return ruled('Pressure across an injector, from idling to the goal', ['Manifold, gauge', 'As asked', 'Flow against the goal', 'Hose to the manifold', 'Held over ambient'],
    pressureThrough.map(row => [row.boost.text, row.across.text, row.flow.text, row.referenced.text, row.fixed.text]), { className: 'restack' });
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

const join = (...lines) => lines.filter(Boolean).map(line => el('div', null, line));

/** How it does with little fuel and with little time; of one that is not enough it is folded away. */
const small = ({ idle, shut }) => [idle ? el('p', null, idle.because) : null, shut?.expected > 0 ? el('p', null, `Shut between shots for ${shut.text}.`) : null];

/** What a cylinder gets more of than it has places for is fitted nowhere. */
const only = fit => (fit?.onlyFor ? ` for ${fit.onlyFor} only` : '');

/** Fuels that eat what was made for petrol. */
const touchy = ['e85', 'ethanol', 'methanol'];

function injectorRow(injector, asked, query) {
  const { duty: limit, stagedWith } = asked;
  const { rated } = injector;
  return [
    [el('span', { class: 'rank' }, `${injector.rank}.`), ' ', partLink(injector.part), el('div', { class: 'plain-name' }, injector.name)],
    join(rated.flow ?? 'flow not recorded', [rated.pressure ? `at ${rated.pressure}` : 'pressure not recorded', ', ', rated.fluid ?? 'fluid not recorded'].join('')),
    enoughMark(injector.enough),
    injector.duty ? [el('span', { class: 'spread' }, injector.duty.text), dutyScale(injector.duty, limit), el('span', { class: 'spread' }, injector.powerAtDuty.text)] : 'not known',
    injector.fit ? [el('a', { class: 'across', href: pageOf(injector.fit.link) }, verdict(injector.fit.headline, { short: true })), el('div', null, sureness(injector.fit.sureness), only(injector.fit))] : 'not asked',
    [el('p', null, linked(injector.because, [stagedWith])), injector.enough === 'no' ? null : small(injector),
      injector.wettedFor === 'recorded' || touchy.includes(asked.fuel) ? el('p', null, wetted[injector.wettedFor]) : null, injector.missing.map(fact => el('p', null, fact.text)), injector.warnings.map(warning => el('p', null, warning.text)),
      ownSums(injector.working, injector.part, { more: injector.enough === 'no' ? small(injector) : [] }),
      el('p', { class: 'acts' }, el('a', { href: sameGoal('fuel-supply.html', query, { injector: injector.part }) }, 'Is the supply enough for it?', el('span', { class: 'unseen' }, ` (${injector.part.replace(/^[^:]*:/, '')})`)))],
  ];
}

/** A tenth is far below what is known of the figure. */
const whole = text => (Number(text) >= 100 ? String(Math.round(Number(text))) : text);

function render(answer, query) {
  const { asked } = answer;
  const first = answer.injectors[0];
  const sized = answer.injectors.filter(injector => injector.enough === 'yes').length;
  const { firstStage } = answer.needPerCylinder;
  const [least, expected, most, unit] = three(firstStage?.ratedVolume ?? answer.needPerInjector.ratedVolume);
  const variant = variantName(state.shown, asked.variant);
  const size = `${whole(expected)} ${unit.replace(/,.*$/, '')}`;
  const sure = most ? `, ${whole(most)} to be sure` : '';
  const heading = firstStage?.mass.expected === 0 ? 'The second stage alone feeds the goal' : `Look for ${size} each${firstStage ? ' in the first stage' : asked.stagedWith ? ' pair of stages' : ''}${sure}`;
  return {
    title: `${asked.power.text} at ${asked.speed.text}`,
    summary: `${variant}, ${asked.power.text} at ${asked.speed.text}, boost ${asked.boost.text}, ${words('fuel', query.get('fuel') ?? asked.fuel)}, ${asked.pressure.text}, ${words('supply', asked.supply)}, duty up to ${Math.round(asked.duty * 1000) / 10} %.`,
    said: `${heading}; ${sized} of ${answer.injectors.length} injectors are enough.`,
    content: [
      el('section', { class: 'headline' },
        el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', { class: 'why' }, `Rated on n-heptane at 3 bar. ${whole(expected)} is enough if the expected figures hold${most ? `; with the worst of them it takes ${whole(most)}, with the best of them ${whole(least)} would do` : ''}.`),
        facts([
          ['First of the list', first ? [partLink(first.part), ` ${first.name}: `, enoughMark(first.enough), '. ', first.fit ? el('a', { class: 'across', href: pageOf(first.fit.link) }, verdict(first.fit.headline)) : '', only(first.fit)] : 'no injector is recorded'],
          ...answer.injectors.filter(injector => injector.fit?.isFitted && injector !== first).map(fitted =>
            ['As fitted by the maker', [partLink(fitted.part), ` ${fitted.name}: `, enoughMark(fitted.enough), fitted.duty ? `, open ${fitted.duty.text} of the time` : '']]),
          ['Enough', `${sized} of ${answer.injectors.length} in the catalogue, in the worst case too`],
          ['Pressure across', answer.pressureAcross.text], ['Boost', boostTaken(answer)], ['Specific consumption', consumption(answer)],
          ['The goal', [el('strong', null, standings[answer.airSide.standing]), `, seen from the air`]],
          ['Taken as', `${asked.cylinders} cylinders × ${asked.injectorsPerCylinder}${asked.stagedWith ? `, staged with ${asked.stagedWith.replace(/^[^:]*:/, '')}` : ''}, ${asked.shots} shot${asked.shots === 1 ? '' : 's'} a cycle, ${asked.voltage.text}`],
          ['Next', el('a', { href: sameGoal('fuel-supply.html', query) }, 'Does the fuel reach them? Pump, line and regulator for this goal')],
        ])),
      flags(answer, [asked.stagedWith]),
      cautions(answer),
      section('Injectors, ranked', el('p', { class: 'quiet small' }, `Fit is judged against ${variant} as built: the control unit is set for the flow of the fitted injectors, so one of another flow always counts as running differently. Each row says whether only the flow differs, and what is known of the dead time. What the maker fitted is not moved up for it.`), ranked('Every injector of the catalogue: enough by the sums first, then fit, then the smallest', ['Injector', 'Rated', 'Enough', 'Duty at the goal, power at the limit', 'Will it fit', 'Because'],
        answer.injectors.map(injector => injectorRow(injector, asked, query)), { what: 'injector' })),
      influences(answer, asked.stagedWith ? 'what the ratings of a pair add up to' : 'the rating to look for'),
      foldNarrow('What each must feed', answer.needPerInjector.mass.text, need(answer)),
      foldNarrow('Pressure through the boost', answer.pressureAcross.text, throughBoost(answer)),
      fromTheAir(answer),
      foldNarrow('Drawn', titles(answer.plots), plotFigures(answer.plots)),
      grounds(answer, first),
      addresses(answer),
    ],
  };
}

bind({
  prepare,
  toApi: query => (asks(query) ? `/api/injectors?${query}` : null),
  render,
  empty: () => el('p', { class: 'quiet' }, 'Write the goal with its units, one value or low..expected..high; a bare hp or a decimal comma is asked about, never guessed.'),
}).then(opened);
