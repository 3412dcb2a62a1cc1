// A build that was deleted: what it was, by whom it was deleted, and how it comes back. Its versions stay in the base.

import { Refusal, ask } from './api.js';
import { signature, write } from './editor.js';
import { faultSummary } from './faults.js';
import { el } from './format.js';
import { moment } from './history-words.js';

const addressOf = build => `/api/builds/${encodeURIComponent(build)}`;

/** Its deletion and the last version that states something, or null where it is not deleted. */
async function deletionOf(build) {
  const { versions } = await ask(`${addressOf(build)}/versions`);
  const [newest, ...before] = versions;
  const last = before.find(one => one.link);
  return newest?.saved.act === 'delete' && last ? { deletion: newest.saved, last } : null;
}

/** The document of a deleted build as it stood last, with its version; null where there is none. */
export async function lastStated(build) {
  const found = await deletionOf(build);
  return found && ask(found.last.link);
}

/** Brings back what stood before the deletion, which is the version `deleted`. */
export const restore = (build, deleted, note) => write(`${addressOf(build)}/versions/${deleted - 1}/restore`, { version: deleted, note });

/** The node that says so and offers it back; null where the build was never there. `back()` is called when it is there again. */
export async function deletedAnswer(build, back) {
  const found = await deletionOf(build).catch(error => {
    if (error instanceof Refusal) return null; // never there: no versions
    throw error;
  });
  if (!found) return null;
  const { deletion, last } = found;
  const note = signature();

  async function bringBack(event) {
    event.preventDefault();
    for (const old of place.querySelectorAll('.faults')) old.remove();
    try {
      await restore(build, deletion.version, note.read());
      back();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (error.problem.status === 401) note.askForToken();
      const summary = faultSummary(form, error.problem);
      form.before(summary);
      summary.focus();
    }
  }

  const form = el('form', { class: 'question asking', novalidate: true, onsubmit: bringBack, 'aria-label': 'Bring it back' },
    el('div', { class: 'cells' }, note.cells), el('div', { class: 'actions' }, el('button', null, 'Bring it back')));
  const place = el('section', { class: 'deleted' }, el('h2', { tabindex: '-1' }, 'This build was deleted'),
    el('p', null, `“${last.title}” was deleted `, moment(deletion.at), deletion.who ? ` by ${deletion.who}` : '', '. Nothing of it is lost: ',
      'brought back, it is as it was before.'), form, el('p', null, el('a', { href: 'builds.html' }, 'All builds')));
  return place;
}
