// What cannot hold together, each with the change that would mend it.

import { el, linked, ruled, sentences } from './format.js';
import { money } from './offer-words.js';

const after = member => (member.costThen || member.readyThen
  ? [member.costThen ? el('div', null, money(member.costThen)) : null, member.readyThen ? el('div', null, `ready ${member.readyThen}`) : null]
  : 'not reckoned');

const row = member => ({ 'data-wish': member.wish, cells: [linked(sentences(member.text)), linked(sentences(member.mend)), after(member)] });

/** The members as a table, for a plan that cannot be and for a part that cannot be forced. */
export const conflictTable = members => ruled('What stands against each other', ['What stands against it', 'What would mend it', 'The plan then'],
  members.map(row), { className: 'restack conflicting' });

export const conflictAnswer = conflict => el('section', null, el('h2', null, 'What conflicts'), el('p', null, sentences(conflict.headlineText)),
  conflict.members.length ? [conflictTable(conflict.members),
    el('p', { class: 'quiet small' }, 'Change one of them, whichever you can best live with: what you stated stands under “What you want”.')] : null,
  el('p', { class: 'small acts' }, el('a', { href: conflict.permalink }, 'The same as JSON')));
