// What is wanted of a build: in short on the line of its fold; its fields come when it is opened.

import { el } from './format.js';
import { hasDraft, wantText } from './build-words.js';

const statement = document.getElementById('statement');
const summary = statement.querySelector('summary');
const name = document.title;

function tell({ build, family }) {
  document.querySelector('h1').textContent = build.title;
  document.title = `${build.title} – ${name}`;
  summary.replaceChildren(el('strong', null, 'What you want: '), wantText(build, family), ' ', el('span', { class: 'change' }, 'Change'));
}

/** A plan is of what is stored: what is typed and not saved is not in it, and that has to be said where it is read. */
export function unsaved(build) {
  if (!build || !hasDraft(build.code)) return null;
  const open = () => {
    statement.open = true;
    summary.focus();
  };
  return el('div', { class: 'notice unsaved', role: 'group', 'aria-label': 'Typed and not saved' },
    el('p', null, el('strong', null, 'Not of what you typed: '),
      'this is planned from what is saved. What you typed under “What you want” is not saved and not in it.'),
    el('p', { class: 'buttons' }, el('button', { type: 'button', class: 'plain', onclick: open }, 'Go to what I typed')));
}

async function fill(shown, saved) {
  if (!statement.open || statement.dataset.filled) return;
  statement.dataset.filled = 'true';
  const { statementForm } = await import('./build-form.js');
  statement.querySelector('#wants').replaceChildren(await statementForm({
    ...shown, status: document.getElementById('status'),
    saved(now) {
      Object.assign(shown, { build: now.document, version: now.version });
      tell(shown);
      delete statement.dataset.filled;
      statement.open = false;
      summary.focus();
      saved();
    },
  }));
}

/** Shows what is stated; `saved()` is called when `shown` has become another version. */
export function showStatement(shown, { saved, refuse }) {
  tell(shown);
  statement.addEventListener('toggle', () => fill(shown, saved).catch(refuse));
  if (location.hash === '#statement') statement.open = true;
}
