// Compression: volume by volume, with the squish beside it, and how much of it is trapped.

import { offerFamilies, variantName } from './choices.js';
import { foldNarrow } from './fold.js';
import { el, facts, plain, ruled, section, sentence } from './format.js';
import { addresses, bind, drawStrip } from './page.js';
import { plotFigures, titles } from './plot.js';
import { askedFor, assumedSection, cautionsSection, differences, mattersMost, offerFamily, partsSection, printed, showRecorded, variantsSection, warningsNotice, willItFit, workingSection } from './sums.js';

const form = document.querySelector('form[data-question]');
const { family, variant } = form.elements;
let shown = null;

drawStrip();

const showFamily = code => offerFamily(form, code, found => { shown = found; });

form.addEventListener('change', async event => {
  if (event.target === family) await showFamily(family.value);
  if (event.target === family || event.target === variant) await showRecorded(form, family.value, variant.value);
});

function volumes(answer) {
  return foldNarrow('Volumes of one cylinder', 'chamber, bowl, gasket and deck, against those as built', ruled('Low … expected … high', ['Volume', 'As built', 'As asked'], [
    ...answer.volumes.map(term => [sentence(term.name), term.asBuilt?.text ?? 'not known', term.volume.text]),
    ['Compression ratio', answer.asBuiltRatio?.text ?? 'not known', el('strong', null, answer.ratio.text)],
    ['Squish', answer.asBuiltSquish?.text ?? 'not known', el('strong', null, answer.squish.text)],
  ], { className: 'restack' }));
}

function wanted(answer) {
  return section('Ways to the ratio wanted', answer.wanted.length ? ruled(`To ${answer.asked.wantedRatio.text} to 1, each alone`, ['Way', 'To', 'Squish then', 'Because'], answer.wanted.map(way =>
    [sentence(way.what), way.amount?.text ?? 'does not lead there', way.squish?.text ?? '–', sentence(way.text)]), { className: 'restack' }) : null);
}

function render(answer) {
  const { asked, squishWanted } = answer;
  const name = variantName(shown, asked.variant);
  const heading = `Compression ${answer.ratio.expected.toFixed(2)} to 1${answer.trapped ? `, traps ${answer.trapped.expected.toFixed(2)}` : ''}`;
  return {
    title: `Compression, ${name}`,
    summary: `${name}${answer.parts.filter(part => !part.isFitted).map(part => `, ${plain(part.position)} ${part.part.replace(/^[^:]*:/, '')}`).join('')}${askedFor(form, ['family', 'variant', 'head', 'head-gasket', 'piston', 'intake-cam'])}.`,
    said: `${heading}. ${sentence(differences(answer))}`,
    content: [
      el('section', { class: 'headline' },
        el('h2', { 'data-first': true, tabindex: '-1' }, heading),
        el('p', { class: 'why' }, `Against ${name} as built: ${differences(answer)}`),
        facts([
          ...willItFit(answer.parts),
          ['Ratio', answer.ratio.text],
          ['Squish', [`${answer.squish.text}${squishWanted ? `; the base wants ${squishWanted.band}` : ''}`, el('div', { class: 'quiet small' }, answer.squishSays)]],
          ['Trapped', answer.trapped ? `${answer.trapped.text}, intake closing ${answer.intakeCloses.text}: geometry only, the valve taken as shut at 1 mm of lift; it does not predict knock` : 'not known'],
          ['Recorded ratio', answer.recordedRatio ? `${answer.recordedRatio.text}: valve timing reckons with this one, this sheet with the volumes` : 'not recorded'],
          ['Ideal efficiency', `${answer.idealEfficiency.text} of the air-standard cycle: to compare two ratios by, no engine reaches it`],
          ['Matters most', mattersMost(answer.influences)],
        ])),
      wanted(answer),
      warningsNotice(answer.warnings),
      cautionsSection(answer.cautions),
      volumes(answer),
      foldNarrow('Drawings', titles(answer.plots), plotFigures(answer.plots)),
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
  toApi: (query, byHand) => (query.get('variant') || (byHand && query.size) ? `/api/compression?${query}` : null),
  render,
  empty: () => el('p', { class: 'quiet' }, 'Choose the engine, then the gasket, piston or head that you have in hand, or what will be skimmed. What is left empty is taken as recorded.'),
});
