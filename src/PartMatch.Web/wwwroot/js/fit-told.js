// What a change did to an answer, said above the answer as it is now.

import { standingWords } from './fit-findings.js';
import { el, facts, say } from './format.js';
import { changeLink } from './history-words.js';

const axis = (name, { value, sureness, disputed }) => `${name} ${disputed ? 'disputed' : say(name, value)}, ${sureness}`;

const inShort = ({ headlineText, mounts, runs }) => `${headlineText} (${axis('mounts', mounts)}; ${axis('runs', runs)})`;

/** `now` is null where the answer could not be asked again; `findings` are the codes just added. */
export function whatChanged(before, now, { change, findings = [] }, did = 'Recorded') {
  const silent = (now?.findings ?? []).filter(finding => findings.includes(finding.code) && finding.rank === undefined);
  const differs = now && inShort(before) !== inShort(now);
  return el('div', { class: 'notice done', tabindex: '-1', role: 'group', 'aria-label': 'What changed' },
    el('p', null, el('strong', null, did), ' as ', changeLink(change), ', which can be taken back there.'),
    differs ? facts([['Before', inShort(before)], ['Now', inShort(now)]]) : null,
    now && !differs ? el('p', null, `The answer stays as it was: ${inShort(now)}.`) : null,
    now ? null : el('p', null, 'The answer could not be asked again: open the page anew.'),
    silent.map(finding => el('p', null, `${finding.code} does not count in this answer: ${standingWords(finding)}.`)));
}
