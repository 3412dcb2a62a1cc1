// Builds: what is planned here, a new one, one's file in and out.

import { Refusal, ask, askOnce } from './api.js';
import { familyOf, familyShower, offerFamilies, offerVariants } from './choices.js';
import { signature, write } from './editor.js';
import { clearFaults, faultSummary } from './faults.js';
import { address, el, ruled } from './format.js';
import { engineText, hasDraft } from './build-words.js';
import { lastStated, restore } from './build-deleted.js';
import { drawStrip } from './page.js';

const list = document.getElementById('builds');
const status = document.getElementById('status');
const form = document.getElementById('new');
const fileForm = document.getElementById('import');
const { title, code, family, variant, target, currency } = form.elements;
const note = signature({ why: 'Why' });
const isDeletedShown = new URLSearchParams(location.search).get('deleted') === 'true';

drawStrip();
form.querySelector('.signature').append(...note.cells);

const pageOf = build => address('build.html', { build });
const day = at => at.slice(0, 10);

const state = ({ build, saved, deleted }) => [
  `${deleted ? 'Deleted' : `Version ${saved.version}`}, ${day(saved.at)}${saved.who ? ` by ${saved.who}` : ''}`,
  hasDraft(build) ? el('div', null, el('strong', null, 'Typed here and not saved')) : null,
];

async function bringBack({ build, saved }) {
  try {
    await restore(build, saved.version, note.read());
    status.textContent = `${build} is there again.`;
    await drawBuilds();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    refuse(form, error.problem);
  }
}

async function row(one) {
  if (one.deleted) {
    const last = (await lastStated(one.build))?.document;
    return [
      [last?.title ?? one.build, el('div', { class: 'quiet small plain-name' }, one.build)],
      last ? engineText(last, await familyOf(last.family)) : '–', last?.budget ? `at most ${last.budget} ${last.currency}` : '–', state(one),
      el('button', { type: 'button', class: 'plain', onclick: () => bringBack(one) }, 'Bring it back', el('span', { class: 'unseen' }, ` (${one.build})`)),
    ];
  }

  const shown = await familyOf(one.family);
  return [
    [el('a', { href: pageOf(one.build) }, one.title), el('div', { class: 'quiet small plain-name' }, one.build)],
    [engineText({ donor: { variant: one.donor }, target: one.target }, shown), el('div', { class: 'quiet' }, shown.title)],
    [one.budget ? `at most ${one.budget} ${one.currency}` : `no limit, in ${one.currency}`, one.neededBy ? el('div', null, `by ${one.neededBy}`) : null],
    state(one), el('a', { href: `/api/builds/${encodeURIComponent(one.build)}/file`, download: `${one.build}.build.json` }, `${one.build}.build.json`),
  ];
}

async function drawBuilds() {
  list.replaceChildren(el('p', { class: 'waiting' }, 'Reading the base …'));
  try {
    const { builds } = await ask(address('/api/builds', { deleted: isDeletedShown ? 'true' : '' }));
    list.replaceChildren(
      builds.length === 0 ? el('p', { class: 'notice' }, 'No build is here yet. Begin one below.')
        : ruled('Builds in the base', ['Build', 'Engine', 'Purse', 'State', 'Take it out'], await Promise.all(builds.map(row)), { className: 'restack' }),
      el('p', { class: 'small acts' }, el('a', { href: isDeletedShown ? 'builds.html' : 'builds.html?deleted=true' }, isDeletedShown
        ? 'Without the deleted ones' : 'Deleted ones as well')));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    list.replaceChildren(faultSummary(null, error.problem));
  }
}

function refuse(at, problem) {
  for (const old of document.querySelectorAll('.faults')) old.remove();
  if (problem.status === 401) note.askForToken();
  const summary = faultSummary(at, problem);
  at.before(summary);
  status.textContent = '';
  summary.focus();
}

/** Sends a form once; what is refused is told at its fields. */
function sending(at, send) {
  at.addEventListener('submit', async event => {
    event.preventDefault();
    clearFaults(at);
    for (const old of document.querySelectorAll('.faults')) old.remove();
    const button = at.querySelector('.actions button');
    button.disabled = true;
    status.textContent = 'Saving.';
    try {
      location.assign(`${pageOf((await send()).document.code)}#statement`);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refuse(at, error.problem);
    } finally {
      button.disabled = false;
    }
  });
}

const missing = (field, expected, mend) => new Refusal({ type: '', title: 'Something is missing', errors: [{ field, found: '', expected, mend }] });

async function readFile() {
  const [file] = fileForm.elements.file.files;
  if (!file) throw missing('file', 'the file of a build', 'choose it');
  const text = await file.text();
  const as = fileForm.elements.as.value.trim();
  if (!as) return text;
  try {
    return JSON.stringify({ ...JSON.parse(text), code: as });
  } catch {
    return text; // the server says what is wrong with it
  }
}

sending(form, () => write('/api/builds', {
  body: {
    code: code.value.trim(), title: title.value.trim(), family: family.value, donor: { variant: variant.value, states: [] },
    ...(target.value ? { target: target.value } : {}), currency: currency.value.trim().toUpperCase(),
  },
  note: note.read(),
}));
sending(fileForm, async () => write('/api/builds', { json: await readFile(), note: note.read() }));

let isCodeTyped = false;
code.addEventListener('input', () => { isCodeTyped = code.value !== ''; });
title.addEventListener('input', () => {
  if (!isCodeTyped) code.value = title.value.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
});

const showFamily = familyShower();
const offer = () => showFamily(family.value, shown => {
  offerVariants(variant, shown, '');
  offerVariants(target, shown, '', 'what it is: nothing changes');
});
family.addEventListener('change', offer);

await Promise.all([drawBuilds(), askOnce('/api/families').then(() => offerFamilies(family, '')).then(offer)]);
