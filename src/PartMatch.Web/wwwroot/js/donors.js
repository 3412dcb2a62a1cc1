// Which donor to drive to: the build and what counts first stand in the address; the list of donors is changed here.

import { Refusal, ask, newest } from './api.js';
import { familyOf } from './choices.js';
import { faultSummary } from './faults.js';
import { address, el } from './format.js';
import { choose, drawStrip } from './page.js';

const place = document.getElementById('answer');
const status = document.getElementById('status');
const form = document.getElementById('rank');
const statement = document.getElementById('statement');
const shown = { build: null, version: null, family: null };
const ranking = newest();
let running = null;

drawStrip();

const asked = () => new URLSearchParams(location.search);

function refuse(error) {
  if (error.name === 'AbortError') return;
  if (!(error instanceof Refusal)) throw error;
  for (const old of document.querySelectorAll('.faults')) old.remove();
  place.removeAttribute('aria-busy');
  place.replaceChildren(faultSummary(null, error.problem));
  status.textContent = '';
  place.firstElementChild.focus();
}

function show(content, said, byHand) {
  place.removeAttribute('aria-busy');
  place.replaceChildren(...[content].flat(Infinity).filter(Boolean));
  status.textContent = said;
  if (byHand) place.querySelector('[data-first]')?.focus();
}

async function stop() {
  const { write } = await import('./editor.js');
  await write(`/api/builds/${encodeURIComponent(shown.build.code)}/stop`).catch(refuse);
}

async function rank(query, byHand) {
  running?.abort();
  running = new AbortController();
  const [{ readLines }, { donorsAnswer, waiting }] = await Promise.all([import('./build-stream.js'), import('./donors-answer.js')]);
  const far = waiting(stop);
  place.setAttribute('aria-busy', 'true');
  place.replaceChildren(far.node);
  status.textContent = 'Working it out.';
  const about = address('/api/donors', { build: query.get('build'), objective: query.get('objective'), version: query.get('version'), on: query.get('on') });
  await ranking(() => readLines(about, { signal: running.signal, told: far.told }),
    answer => show(donorsAnswer(answer, { ...shown, take }), answer.headlineText, byHand));
}

/** Makes one of the list the donor of the build. */
async function take(offer) {
  const { write, keptName } = await import('./editor.js');
  const { build, version } = shown;
  try {
    const now = await write(`/api/builds/${encodeURIComponent(build.code)}`,
      { method: 'PUT', version, body: { ...build, donor: offer.donor }, note: { who: keptName(), why: `donor: ${offer.name}` } });
    Object.assign(shown, { build: now.document, version: now.version });
    status.textContent = `${offer.name} is the donor now.`;
    await rank(asked(), true);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    if (error.problem.status === 401) statement.open = true; // the token is typed there
    const told = faultSummary(null, error.problem);
    place.prepend(told);
    told.focus();
  }
}

async function fill() {
  if (!statement.open || statement.dataset.filled) return;
  statement.dataset.filled = 'true';
  const { donorList } = await import('./donors-edit.js');
  document.getElementById('offers').replaceChildren(donorList({
    ...shown, status,
    saved(now) {
      Object.assign(shown, { build: now.document, version: now.version });
      delete statement.dataset.filled;
      statement.open = false;
      statement.querySelector('summary').focus();
      open(true).catch(refuse);
    },
  }));
}

async function open(byHand) {
  const query = asked();
  const { builds } = await ask('/api/builds');
  form.elements.build.replaceChildren(el('option', { value: '' }, builds.length ? 'Choose a build' : 'No build is here yet'),
    ...builds.map(one => el('option', { value: one.build }, one.title)));
  choose(form.elements.build, query.get('build'));
  choose(form.elements.objective, query.get('objective') ?? 'cheapest');
  statement.hidden = !query.get('build');
  if (!query.get('build')) {
    show(el('p', { class: 'quiet' }, builds.length ? 'Choose the build, then rank its donors; or put some on its list first.'
      : ['Donors are of a build: ', el('a', { href: 'builds.html' }, 'begin one'), ' first.']), '', false);
    return;
  }

  const found = await ask(address(`/api/builds/${encodeURIComponent(query.get('build'))}`, { version: query.get('version') }));
  Object.assign(shown, { build: found.document, version: found.version, family: await familyOf(found.document.family) });
  delete statement.dataset.filled;
  await fill();
  await rank(query, byHand);
}

form.addEventListener('submit', event => {
  event.preventDefault();
  const { build, objective } = form.elements;
  history.pushState(null, '', address('donors.html', { build: build.value, objective: objective.value }));
  open(true).catch(refuse);
});
statement.addEventListener('toggle', () => fill().catch(refuse));
window.addEventListener('popstate', () => open(false).catch(refuse));
open(false).catch(refuse);
