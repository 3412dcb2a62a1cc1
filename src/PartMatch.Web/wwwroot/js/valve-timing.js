// Valve timing: which events these camshafts make, set like this, and what is trapped then.

import { offerFamilies, variantName } from './choices.js';
import { foldNarrow } from './fold.js';
import { el, facts, ruled, section, sentence } from './format.js';
import { addresses, bind, drawStrip } from './page.js';
import { plotFigures, titles } from './plot.js';
import { askedFor, assumedSection, cautionsSection, differences, hasRole, mattersMost, offerFamily, partsSection, printed, showRecorded, variantsSection, warningsNotice, willItFit, workingSection } from './sums.js';

const form = document.querySelector('form[data-question]');
const { family, variant } = form.elements;
let shown = null;

drawStrip();

/** An engine with one camshaft has nothing to set on the exhaust side alone. */
function showExhaust() {
  const isOne = shown !== null && !hasRole(shown, 'exhaust-camshaft');
  for (const block of form.querySelectorAll('[data-exhaust]')) {
    block.hidden = isOne;
    for (const control of block.querySelectorAll('input, select')) control.disabled = isOne;
  }
}

const showFamily = code => offerFamily(form, code, found => {
  shown = found;
  showExhaust();
});

const recorded = () => showRecorded(form, family.value, variant.value);

form.addEventListener('change', async event => {
  if (event.target === family) await showFamily(family.value);
  if (event.target === family || event.target === variant) await recorded();
});

const rows = [
  ['intakeAdvance', 'Intake shifted'], ['intakeOpens', 'Intake opens'], ['intakeCloses', 'Intake closes'], ['exhaustAdvance', 'Exhaust shifted'], ['exhaustOpens', 'Exhaust opens'], ['exhaustCloses', 'Exhaust closes'],
  ['intakeDuration', 'Intake open for'], ['exhaustDuration', 'Exhaust open for'], ['intakeCentre', 'Intake lobe centre'], ['exhaustCentre', 'Exhaust lobe centre'], ['separation', 'Lobe separation'],
  ['overlap', 'Overlap'], ['enclosed', 'Stroke enclosed'], ['trapped', 'Trapped compression'],
];

function events(answer, name) {
  const states = [answer.atRest, ...answer.swept, ...(answer.asBuilt && answer.changes.length ? [answer.asBuilt] : [])];
  return foldNarrow('Events', states.map(state => (state === answer.asBuilt ? 'as built' : state.what)).join(', '), el('p', { class: 'quiet small' }, answer.convention),
    ruled(`Degrees of the crank at ${answer.asked.atLift.text} lift, low … expected … high`, ['Event', ...states.map(state => (state === answer.asBuilt ? `${name} as built` : sentence(state.what)))],
      rows.map(([member, name]) => [name, ...states.map(state => state[member]?.text ?? 'not known')]), { className: 'restack' }));
}

function wheels(answer) {
  return foldNarrow('A tooth', answer.wheels.map(wheel => `${wheel.valve === 'all' ? 'the camshaft' : wheel.valve} ${wheel.perTooth.text}`).join('; '), answer.wheels.length ? ruled('What one tooth is worth', ['Camshaft', 'Teeth', 'One tooth', 'Which way'], answer.wheels.map(wheel =>
    [wheel.valve === 'all' ? 'The camshaft' : sentence(wheel.valve), String(wheel.teeth), wheel.perTooth.text, wheel.direction]), { className: 'restack' }) : null);
}

function wanted(answer) {
  return section('Turned round', answer.wantedClosing ? el('p', null, answer.wantedClosing.text) : null, answer.wantedEvents.map(one => [
    el('p', null, sentence(one.text)),
    one.choices.length ? ruled(`Whole teeth, ${one.valve}`, ['Teeth', 'Shift', 'Opens', 'Closes', 'Off by'], one.choices.map(choice =>
      [choice.teeth === 0 ? 'none' : String(choice.teeth).replace('-', '−'), choice.advance.text, choice.opens.text, choice.closes.text, choice.off.text]), { className: 'restack' }) : null,
  ]));
}

function render(answer) {
  const { asked, atRest } = answer;
  const name = variantName(shown, asked.variant);
  const heading = atRest.trapped ? `Traps ${atRest.trapped.expected.toFixed(2)} to 1` : `Overlap ${atRest.overlap.text}`;
  return {
    title: `Valve timing, ${name}`,
    summary: `${name}, valves at ${asked.atLift.text}${askedFor(form, ['family', 'variant', 'at-lift'])}.`,
    said: `${heading}. ${sentence(differences(answer))}`,
    content: [
      el('section', { class: 'headline' },
        el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', { class: 'why' }, `Against ${name} as built: ${differences(answer)}`),
        facts([
          ...willItFit(answer.parts),
          ['Intake', `opens ${atRest.intakeOpens.text}, closes ${atRest.intakeCloses.text}`],
          ['Exhaust', `opens ${atRest.exhaustOpens.text}, closes ${atRest.exhaustCloses.text}`],
          ['Overlap', atRest.overlap.text],
          ['Trapped', atRest.trapped ? `${atRest.trapped.text}: geometry only, the valve taken as shut at ${asked.atLift.text} of lift; it does not predict knock` : 'not known'],
          ['Matters most', mattersMost(answer.influences)],
        ])),
      wanted(answer),
      warningsNotice(answer.warnings),
      cautionsSection(answer.cautions),
      events(answer, name),
      foldNarrow('Drawings', titles(answer.plots), plotFigures(answer.plots)),
      wheels(answer),
      variantsSection(answer.variants, asked.variant),
      partsSection(answer.parts),
      assumedSection(answer.assumed),
      workingSection(answer.working),
      addresses(answer),
      printed(),
    ],
  };
}

bind({
  prepare: async query => {
    await showFamily(await offerFamilies(family, query.get('family')));
    await showRecorded(form, query.get('family') ?? family.value, query.get('variant'));
  },
  toApi: (query, byHand) => (query.get('variant') || (byHand && query.size) ? `/api/valve-timing?${query}` : null),
  render,
  empty: () => el('p', { class: 'quiet' }, 'Choose the engine, then the camshaft that you have in hand. What is left empty is taken as recorded; what nobody has recorded is asked for.'),
});
