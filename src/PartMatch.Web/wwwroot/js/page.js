// What every page shares: the strip with the other sheets, and a form whose state is the address of the page.

import { el } from './format.js';
import { Refusal, asker } from './api.js';
import { clearFaults, faultSummary } from './faults.js';

const groups = [
  ['Parts', [['fit.html', 'Will it fit'], ['compare.html', 'Compare'], ['look-alikes.html', 'Look-alikes'], ['tell-apart.html', 'Tell apart'], ['search.html', 'Find a part'], ['items.html', 'Items']]],
  ['Base', [['family.html', 'Families'], ['consistency.html', 'Consistency'], ['books.html', 'Parts books'], ['history.html', 'History']]],
  ['Buying', [['builds.html', 'Builds'], ['donors.html', 'Donors'], ['listing.html', 'Listings'], ['offers.html', 'Offers'], ['sellers.html', 'Sellers']]],
  ['Sums', [['injectors.html', 'Injectors and fuel'], ['fuel-supply.html', 'Fuel supply'], ['valve-timing.html', 'Valve timing'], ['compression.html', 'Compression'], ['tightening.html', 'Tightening']]],
];

const related = { 'build.html': 'builds.html', 'part.html': 'search.html', 'record.html': 'books.html', 'bench.html': 'family.html', 'problems.html': '' };

/** Fills the strip on top and the line below the sheet. Every page calls it once. */
export function drawStrip() {
  const here = location.pathname.split('/').pop() || 'index.html';
  const link = ([page, name]) => el('li', null, el('a', { href: page, 'aria-current': page === here ? 'page' : page === related[here] ? 'true' : null }, name));
  const nav = el('nav', { 'aria-label': 'Sheets', id: 'sheets' }, groups.map(([group, sheets]) =>
    el('div', { class: 'strip-group' }, el('span', { class: 'strip-kind', id: `sheets-${group}` }, group), el('ul', { class: 'strip-sheets', 'aria-labelledby': `sheets-${group}` }, sheets.map(link)))));
  const toggle = el('button', {
    type: 'button', class: 'plain strip-toggle', 'aria-expanded': 'false', 'aria-controls': 'sheets',
    onclick: () => toggle.setAttribute('aria-expanded', String(nav.toggleAttribute('data-open'))),
  }, 'Sheets');
  document.querySelector('header.strip').replaceChildren(
    el('div', { class: 'strip-inner' }, el('a', { class: 'strip-name', href: 'index.html' }, 'PartMatch'), toggle, nav));
}

/** The fields of a form as a query: disabled and unnamed ones and empty values left out, `data-join` lists joined by commas. */
export function readQuestion(form) {
  const query = new URLSearchParams();
  for (const control of form.elements) {
    if (!control.name || control.disabled || control.dataset.aside !== undefined || (/radio|checkbox/.test(control.type) && !control.checked)) continue;
    const value = control.value.trim();
    if (value === '') continue;
    if (control.dataset.join && query.has(control.name)) query.set(control.name, `${query.get(control.name)},${value}`);
    else query.append(control.name, value);
  }
  return query;
}

/** Chooses a value; one that is not offered is added, so that the server can say what is wrong with it. */
export function choose(select, value) {
  if (value && ![...select.options].some(option => option.value === value)) select.append(el('option', { value }, `${value} (not in the list)`));
  select.value = value ?? '';
  if (select.selectedIndex < 0) select.selectedIndex = 0;
}

/**
 * Puts a query into a form; controls that stand several times are left to the page. A field that the query leaves out shows what the server then
 * takes (`data-standard`); only a form that asks nothing yet shows proposals (`data-proposal`).
 */
export function fillForm(form, query) {
  const absent = control => control.dataset.standard ?? (query.size === 0 ? control.dataset.proposal : '') ?? '';
  for (const control of form.elements) {
    if (!control.name || control.dataset.aside !== undefined || control.dataset.row !== undefined) continue;
    const value = query.get(control.name);
    if (control.type === 'checkbox') control.checked = (value ?? '').split(',').includes(control.value);
    else if (control.type === 'radio') control.checked = value === null ? control.defaultChecked : control.value === value;
    else if (control.tagName === 'SELECT') choose(control, value ?? absent(control));
    else control.value = value ?? absent(control);
  }
  tellSet(form);
}

const setText = control => (control.tagName === 'SELECT' ? control.selectedOptions[0]?.text : control.value.trim());

/** Says on the line of each folded group of fields what is set in it. */
export function tellSet(form) {
  for (const more of form.querySelectorAll('details.more')) {
    const summary = more.querySelector('summary');
    const line = summary.querySelector('.set') ?? summary.appendChild(el('span', { class: 'set quiet small' }));
    line.textContent = [...more.querySelectorAll('[name]:not(:disabled)')].filter(control => control.value.trim() !== '').map(control => `${control.labels[0].textContent}: ${setText(control)}`).join('; ');
  }
}

const queryText = query => query.toString().replaceAll('%3A', ':').replaceAll('%2C', ',').replaceAll('%40', '@');

/**
 * Joins a form, the address of the page and the answer.
 * `prepare(query)` makes the choices ready and may fill the form; `toApi(query, byHand)` gives the address to ask, or null when nothing is asked yet;
 * `refused(problem)` may offer what would mend it;
 * `render(answer, query, again)` gives `{title, summary, said, content}`: the heading of the window, the question in short, what is announced, and the
 * nodes; `again(done)` asks anew what stands in the address, and shows until the answer is there that something is done already.
 */
export function bind({ toApi, render, prepare = async () => {}, empty = () => [], refused = () => {} }) {
  const form = document.querySelector('form[data-question]');
  const holder = form.closest('details');
  const place = document.getElementById('answer');
  const status = document.getElementById('status');
  const name = document.title;
  const inquire = asker();
  let shownFor = null; // the query of the address that the form and the answer show

  function show(...content) {
    place.removeAttribute('aria-busy');
    place.replaceChildren(...content.flat(Infinity).filter(Boolean));
  }

  function refuse(problem) {
    if (holder) holder.open = true;
    show();
    refused(problem);
    const summary = faultSummary(form, problem);
    (holder ?? form).before(summary);
    status.textContent = '';
    summary.focus();
  }

  function fold(summary) {
    if (!holder) return;
    holder.open = false;
    holder.querySelector('summary').replaceChildren(el('strong', null, 'Question: '), summary, ' ', el('span', { class: 'change' }, 'Change'));
  }

  function wait(done) {
    place.setAttribute('aria-busy', 'true');
    place.replaceChildren(...[done, el('p', { class: 'waiting' }, 'Working it out …')].filter(Boolean));
    status.textContent = [done?.textContent, 'Working it out.'].filter(Boolean).join(' ');
    done?.focus();
  }

  async function answerTo(query, { byHand, done }) {
    clearFaults(form);
    for (const old of document.querySelectorAll('.faults')) old.remove();
    const address = toApi(query, byHand);
    if (address === null) {
      if (holder) holder.open = true;
      document.title = name;
      show(await empty());
      return;
    }

    wait(done);
    try {
      const answer = await inquire(address);
      const { title, summary, said, content } = await render(answer, query, already => fromAddress({ byHand: true, done: already }));
      document.title = `${title} – ${name}`;
      fold(summary ?? title);
      show(content);
      status.textContent = said;
      if (byHand) place.querySelector('[data-first]')?.focus();
    } catch (error) {
      if (error instanceof Refusal) refuse(error.problem);
      else if (error.name !== 'AbortError') throw error;
    }
  }

  async function fromAddress({ byHand, done }) {
    if (done) wait(done); // the choices of the form may take their time as well
    const query = new URLSearchParams(location.search);
    const own = shownFor = location.search;
    try {
      await prepare(query);
      if (own !== shownFor) return; // asked something else meanwhile
      fillForm(form, query);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (own !== shownFor) return;
      fillForm(form, query); // choices are missing, what was asked is not
      refuse(error.problem);
      return;
    }

    await answerTo(query, { byHand, done });
  }

  for (const type of ['input', 'change']) form.addEventListener(type, () => tellSet(form));
  form.addEventListener('submit', event => {
    event.preventDefault();
    const query = readQuestion(form);
    history.pushState(null, '', query.size ? `?${queryText(query)}` : location.pathname);
    shownFor = location.search;
    answerTo(query, { byHand: true });
  });

  // A link of the answer that asks this page something else keeps the reader's place: the focus goes to the new answer.
  place.addEventListener('click', event => {
    const link = event.target.closest('a[href]');
    const isPlain = event.button === 0 && !event.ctrlKey && !event.metaKey && !event.shiftKey && !event.altKey;
    if (!link || !isPlain || link.origin !== location.origin || link.pathname !== location.pathname || link.search === location.search) return;
    event.preventDefault();
    history.pushState(null, '', link.href);
    fromAddress({ byHand: true });
  });
  // A step within the sheet, such as to a reason, is no new question.
  window.addEventListener('popstate', () => location.search === shownFor || fromAddress({ byHand: false }));
  return fromAddress({ byHand: false });
}

/** A line that holds the two addresses of an answer: this page, and the same as data. */
export function addresses(answer) {
  return el('p', { class: 'addresses small' }, el('a', { href: location.pathname + location.search }, 'Address of this answer'), ' · ', el('a', { href: answer.permalink }, 'The same as JSON'));
}
