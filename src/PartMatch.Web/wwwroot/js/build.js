// One build: what is wanted, the plan, and what is asked about it. What is shown stands in the address.

import { Refusal, ask, newest } from './api.js';
import { familyOf } from './choices.js';
import { faultSummary } from './faults.js';
import { address, el } from './format.js';
import { drawStrip } from './page.js';
import { showStatement, unsaved } from './build-statement.js';

const place = document.getElementById('answer');
const status = document.getElementById('status');
const form = document.getElementById('plan');
const shown = { build: null, family: null, version: null, key: null, panel: null };
const planning = newest();
let running = null;

place.setAttribute('aria-busy', 'true');
drawStrip();

const asked = () => new URLSearchParams(location.search);
const apiOf = (question, query, more) => address(`/api/builds/${encodeURIComponent(query.get('build'))}/${question}`, {
  // The trade-off is always between cost and days.
  objective: question === 'frontier' ? null : query.get('objective'), version: query.get('version'), on: query.get('on'), donor: query.get('donor'), ...more,
});
/** What has to be worked out anew when it changes; a line that is asked about does not. */
const keyOf = query => ['build', 'version', 'objective', 'show', 'on', 'donor'].map(part => query.get(part) ?? '').join('|');

function refuse(error) {
  if (error.name === 'AbortError') return;
  if (!(error instanceof Refusal)) throw error;
  place.removeAttribute('aria-busy');
  place.replaceChildren(faultSummary(null, error.problem));
  status.textContent = '';
  place.firstElementChild.focus();
}

function show(content, said, { byHand }) {
  place.removeAttribute('aria-busy');
  place.replaceChildren(...[asked().has('objective') || asked().has('show') ? unsaved(shown.build) : null, ...content.flat(Infinity)].filter(Boolean));
  status.textContent = said;
  if (byHand) place.querySelector('[data-first]')?.focus();
}

function wait(node, text) {
  place.setAttribute('aria-busy', 'true');
  place.replaceChildren(node);
  status.textContent = text;
}

async function stop() {
  const { write } = await import('./editor.js');
  try {
    await write(`/api/builds/${encodeURIComponent(shown.build.code)}/stop`);
  } catch (error) {
    refuse(error);
  }
}

async function plan(query, how) {
  const { readLines, waiting } = await import('./build-stream.js');
  const objective = query.get('objective') ?? 'cheapest';
  const far = waiting({ objective, currency: shown.build.currency, stop });
  wait(far.node, 'Working it out.');
  await planning(async () => {
    const answer = await readLines(apiOf('plan', query), { signal: running.signal, told: far.told });
    const [{ planAnswer }, { workSections }, conflict] = await Promise.all([
      import('./build-plan.js'), import('./build-work.js'), answer.status === 'infeasible' ? conflictOf(query) : null]);
    const bench = answer.cost ? workSections(apiOf, query, { book: shown.build.family, family: shown.family }) : [];
    return { answer, content: [planAnswer(answer, { ...shown, query }, conflict), bench] };
  }, ({ answer, content }) => {
    show([content], answer.headlineText, how);
    panel(query, { byHand: true }); // also an address that was sent arrives at the line it asks about
  });
}

async function conflictOf(query) {
  const [{ conflictAnswer }, conflict] = await Promise.all([import('./build-conflict.js'), ask(apiOf('conflict', query), { signal: running.signal })]);
  return conflictAnswer(conflict, shown.family);
}

// What is done once the plan holds: each a sheet of its own.
const benchSheets = { orders: () => import('./build-orders.js'), 'goods-in': () => import('./build-goods-in.js') };

async function benchSheet(query, how) {
  wait(el('p', { class: 'waiting' }, 'Looking it up …'), 'Looking it up.');
  const again = () => {
    shown.key = null;
    answer({ byHand: true });
  };
  await planning(async () => (await benchSheets[query.get('show')]()).benchSheet({ ...shown, query, apiOf, again, signal: running.signal }),
    ({ content, said }) => show([content], said, how));
}

async function tradeOff(query, how) {
  wait(el('p', { class: 'waiting' }, 'Weighing every day against its cost …'), 'Working it out.');
  await planning(async () => {
    const [answer, { frontierAnswer }] = await Promise.all([ask(apiOf('frontier', query, { by: 'days', donor: null }), { signal: running.signal }), import('./build-frontier.js')]);
    return { answer, content: frontierAnswer(answer, { ...shown, query }) };
  }, ({ answer, content }) => show([content], answer.headlineText, how));
}

/** A sheet that is read away from the plan: in a yard, or by other builders. */
async function sheet(query, how) {
  wait(el('p', { class: 'waiting' }, 'Working it out …'), 'Working it out.');
  await planning(async () => {
    const { sheetOf } = await import('./build-sheets.js');
    return sheetOf(query, { ...shown, apiOf, signal: running.signal, again: () => sheet(query, { byHand: true }) });
  }, ({ content, said }) => show([content], said, how));
}

/** Opens what is asked about a line, under it. */
async function panel(query, how) {
  const line = query.get('line');
  if (!line && !shown.panel) return;
  const { openPanel } = await import('./build-why.js');
  shown.panel = openPanel(place, query, { ...how, shown, apiOf });
}

async function answer(how) {
  const query = asked();
  const isSame = keyOf(query) === shown.key;
  shown.key = keyOf(query);
  if (isSame) {
    await panel(query, how);
    return;
  }

  running?.abort();
  running = new AbortController();
  shown.panel = null;
  delete document.body.dataset.sheet;
  for (const radio of form.elements.objective) radio.checked = radio.value === (query.get('objective') ?? 'cheapest');
  try {
    if (benchSheets[query.get('show')]) {
      document.body.dataset.sheet = query.get('show'); // what the paper is for
      await benchSheet(query, how);
    } else if (query.get('show') === 'trade-off') await tradeOff(query, how);
    else if (query.has('show')) await sheet(query, how);
    else if (query.has('objective')) await plan(query, how);
    else await planning(async () => null, () => show([el('p', { class: 'quiet' },
      'Choose what counts first, then ask for the plan. Every line of it can be asked why.')], '', { byHand: false }));
  } catch (error) {
    refuse(error);
  }
}

function go(href) {
  history.pushState(null, '', href);
  answer({ byHand: true });
}

form.addEventListener('submit', event => {
  event.preventDefault();
  const query = asked();
  shown.key = null; // asked by hand, it is worked out again
  go(address('build.html', {
    build: query.get('build'), version: query.get('version'), objective: form.elements.objective.value, on: query.get('on'), donor: query.get('donor'),
      show: event.submitter?.name === 'show' ? event.submitter.value : '',
  }));
});

document.getElementById('main').addEventListener('click', event => {
  const link = event.target.closest('a[href]');
  const isPlain = event.button === 0 && !event.ctrlKey && !event.metaKey && !event.shiftKey && !event.altKey;
  if (!link || !isPlain || link.origin !== location.origin || link.pathname !== location.pathname || link.search === location.search) return;
  if (new URLSearchParams(link.search).get('build') !== asked().get('build')) return;
  event.preventDefault();
  go(link.href);
});
place.addEventListener('asked', event => go(event.detail));
window.addEventListener('popstate', () => {
  if (shown.build) answer({ byHand: false }); // without one a step within the sheet, such as to its content, asks nothing
});

/** The build, or nothing where it was deleted: then that is said, with the way back. */
async function read(query) {
  const build = query.get('build');
  try {
    return await ask(address(`/api/builds/${encodeURIComponent(build)}`, { version: query.get('version') }));
  } catch (error) {
    if (!(error instanceof Refusal) || error.problem.status !== 404) throw error;
    const node = await (await import('./build-deleted.js')).deletedAnswer(build, () => location.reload());
    if (!node) throw error;
    show([node], 'This build was deleted.', { byHand: false });
    node.querySelector('h2').focus();
    return null;
  }
}

async function open() {
  const query = asked();
  if (!query.has('build')) {
    const { builds } = await ask('/api/builds');
    show([el('p', null, builds.length ? 'Choose a build:' : 'No build is here yet.'),
      el('ul', null, builds.map(one => el('li', null, el('a', { href: address('build.html', { build: one.build }) }, one.title)))),
      el('p', null, el('a', { href: 'builds.html' }, 'All builds, and a new one'))], '', { byHand: false });
    return;
  }

  const found = await read(query);
  if (!found) return;
  Object.assign(shown, { build: found.document, version: found.version, family: await familyOf(found.document.family) });
  document.getElementById('build').hidden = false;
  showStatement(shown, {
    refuse,
    saved() {
      shown.key = null;
      go(address('build.html', { build: shown.build.code, objective: asked().get('objective'), show: asked().get('show') }));
    },
  });
  await answer({ byHand: false });
}

open().catch(refuse);
