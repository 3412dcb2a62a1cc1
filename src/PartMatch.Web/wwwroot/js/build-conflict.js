// What cannot hold together, each with the change that would mend it; and behind the first conflict all the others.

import { groupHead } from './build-table.js';
import { count, el, linked, ruled, sentence, sentences } from './format.js';
import { positionName } from './choices.js';
import { money } from './offer-words.js';

const after = member => (member.costThen || member.readyThen
  ? [member.costThen ? el('div', null, money(member.costThen)) : null, member.readyThen ? el('div', null, `ready ${member.readyThen}`) : null]
  : 'not reckoned');

const row = member => ({ 'data-wish': member.wish, cells: [linked(sentences(member.text)), linked(sentences(member.mend)), after(member)] });

/** The members as a table, for a plan that cannot be and for a part that cannot be forced. */
export const conflictTable = members => ruled('What stands against each other', ['What stands against it', 'What would mend it', 'The plan then'],
  members.map(row), { className: 'restack conflicting' });

const obtainable = /^obtainable:/;

/** Of a part that is not to be had the position is enough: that it has to be there is said once, over the table. */
const shortRow = (member, family) => ({
  'data-wish': member.wish,
  cells: [obtainable.test(member.wish) ? sentence(positionName(family, member.wish.replace(obtainable, ''))) : linked(sentences(member.text)),
    linked(sentences(member.mend))],
});

/** One table of all that stands behind: those of one member as one list, the others under a head of their own each. */
function behind(further, family) {
  const alone = further.filter(one => one.members.length === 1);
  const together = further.filter(one => one.members.length > 1);
  const rows = [
    ...alone.length && together.length ? [groupHead('Each of these has to be mended', 2)] : [], ...alone.flatMap(one => one.members),
    ...together.flatMap(one => [groupHead(`One of these ${one.members.length} has to be mended`, 2), ...one.members]),
  ].map(one => (one.wish ? shortRow(one, family) : one));
  const isMissing = further.some(one => one.members.some(member => obtainable.test(member.wish)));
  return el('section', { class: 'behind' }, el('h3', null, 'And behind it'),
    el('p', null, `With the first one mended, ${count(further.length, 'conflict')} still ${further.length === 1 ? 'keeps' : 'keep'} every plan away.`,
      isMissing ? ' Where only a position is named, something that fits has to be there: of the donor, in hand or for sale.' : ''),
    ruled('What else has to be mended', ['What stands in the way', 'What would mend it'], rows, { className: 'restack slim' }));
}

/** What the build does not say comes first: with it said, most of the rest is to be had. */
const notStated = found => (found.length === 0 ? null : el('section', { class: 'not-stated notice' },
  el('p', null, el('strong', null, 'The build does not say enough for these to count. '), 'State it under “What you want”, and plan again:'),
  el('ul', null, found.map(one => el('li', null, sentences(one.text))))));

export function conflictAnswer(conflict, family) {
  const further = conflict.further ?? [];
  return el('section', null, el('h2', null, 'What conflicts'), notStated(conflict.notStated ?? []), el('p', null, sentences(conflict.headlineText)),
    conflict.members.length ? conflictTable(conflict.members) : null,
    conflict.members.length > 0 ? el('p', { class: 'quiet small' },
      'What you stated stands under “What you want”, and is changed there.') : null,
    further.length ? behind(further, family) : null,
    el('p', { class: 'small acts' }, el('a', { href: conflict.permalink }, 'The same as JSON')));
}
