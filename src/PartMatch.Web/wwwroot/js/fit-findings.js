// What people found of the part at this position, beside what is reckoned where the two disagree, and who says so.

import { el, evidenceLink, linked, section, sentence, say, sourceText } from './format.js';

const says = {
  mounts: { 'yes': 'Mounts', 'with-work': 'Mounts with work', 'no': 'Does not mount' },
  runs: { same: 'Runs the same', differently: 'Runs differently' },
};

const standings = {
  'counts': 'counts', 'indirect': 'counts one grade lower', 'retracted': 'withdrawn', 'copy': 'a copy', 'other-variant': 'another variant',
  'other-neighbours': 'other neighbours', 'says-nothing': 'says nothing about running',
};

const unmet = { stops: 'no', work: 'with-work', alters: 'differently' };

/** What a finding says, in two words. */
export const outcomeWords = ({ axis, outcome }) => says[axis][outcome];

export const standingWords = finding => standings[finding.standing] ?? finding.standing;

/** The members of a list by what `keyOf` says of each, in the order in which a key first comes. */
function grouped(list, keyOf) {
  const groups = new Map();
  for (const one of list) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return [...groups];
}

const isCounted = finding => finding.rank !== undefined;

const findingOf = (answer, reason) => (reason.by === 'finding' ? answer.findings.find(finding => finding.code === reason.code) : undefined);

/** A step to a reason of the answer; what was found stands in its own place. */
export function reasonLink(answer, id) {
  const reason = answer.reasons.find(one => one.id === id);
  const to = reason?.by === 'finding' ? reason.code : id;
  return el('a', { href: `#${to}` }, to);
}

/** Steps to several reasons, parted by commas; a finding that stands for several cases once. */
export function reasonLinks(answer, ids) {
  const links = ids.map(id => reasonLink(answer, id));
  const once = links.filter((link, index) => links.findIndex(other => other.hash === link.hash) === index);
  return once.flatMap((link, index) => (index ? [', ', link] : [link]));
}

/** Which value of its axis a reason speaks for. */
function saying(answer, reason) {
  if (reason.by === 'finding') return findingOf(answer, reason)?.outcome;
  const [best, worst] = reason.axis === 'mounts' ? ['yes', 'no'] : ['same', 'differently'];
  return reason.met === 'yes' ? best : unmet[reason.effect] ?? worst;
}

/** What is said on one axis: `[{value, rank, reasons}]`, what decides first; nothing where all agree. */
function sidesOf(answer, name) {
  const { disputed, decidedBy, value, rank } = answer[name];
  const known = ids => answer.reasons.filter(reason => ids.includes(reason.id));
  if (disputed) {
    const sides = grouped(known(decidedBy).filter(reason => reason.met !== 'not-known'), reason => saying(answer, reason));
    return sides.length > 1 ? sides.map(([one, reasons]) => ({ value: one, rank, reasons })) : [];
  }

  const others = answer.disagreements.filter(other => other.axis === name && value !== 'not-known');
  if (others.length === 0) return [];
  return [{ value, rank, reasons: known(decidedBy) }, ...others.map(other => ({ value: other.says, rank: other.rank, reasons: known(other.reasons) }))];
}

function short({ grade, author, date, details: more }) {
  return [say('grade', grade), author, date, more?.hours === undefined ? '' : `${more.hours} h`, more?.output?.text, more?.fuel].filter(Boolean).join(', ');
}

function speakers(answer, reasons) {
  const found = reasons.map(reason => findingOf(answer, reason)).filter(Boolean);
  const identity = reasons.find(reason => reason.by === 'identity');
  const reckoned = reasons.filter(reason => !['finding', 'identity'].includes(reason.by)).map(reason => reason.id);
  return el('ul', { class: 'bare' },
    [...new Set(found)].map(finding => el('li', null, sentence(short(finding.evidence)), ' ', el('a', { href: `#${finding.code}` }, finding.code))),
    identity ? el('li', null, 'The maker puts this number there ', reasonLink(answer, identity.id)) : null,
    reckoned.length ? el('li', null, 'Reckoned from what is recorded: ', reasonLinks(answer, reckoned)) : null);
}

function side(answer, name, isDisputed, { value, rank, reasons }, index) {
  const role = isDisputed ? `rank ${rank}, decides nothing` : index === 0 ? `rank ${rank}, decides` : `rank ${rank}, weaker`;
  return el('div', { class: 'side' }, el('p', null, el('strong', null, says[name][value] ?? value), el('span', { class: 'quiet small' }, ` ${role}`)),
    speakers(answer, reasons));
}

function apart(answer, name) {
  const sides = sidesOf(answer, name);
  if (sides.length === 0) return null;
  const { disputed } = answer[name];
  const about = name === 'mounts' ? 'whether it mounts' : 'how the engine runs';
  return el('div', { class: 'apart' },
    el('h3', null, disputed ? `Disputed: ${about}` : `Not all agree on ${about}`),
    el('div', { class: 'sides' }, sides.map((one, index) => side(answer, name, disputed, one, index))),
    el('p', { class: 'small quiet' }, disputed ? 'Equally good sources disagree, so none of them decides.'
      : 'The better rank decides; that something says otherwise makes the answer a step less sure.'));
}

/** Disagreements that stand nowhere side by side: where an answer depends on the engine, each case has its own. */
export const untold = answer => answer.disagreements.filter(other => sidesOf(answer, other.axis).length === 0);

function decides(answer, finding) {
  const { decidedBy, rank } = answer[finding.axis];
  if (!isCounted(finding)) return false;
  const isBest = !answer.findings.some(other => other.axis === finding.axis && isCounted(other) && other.rank < finding.rank);
  return rank === undefined ? isBest : answer.reasons.some(reason => decidedBy.includes(reason.id) && findingOf(answer, reason) === finding);
}

const sourceId = code => `source-${code}`;

/** A code of evidence that leads to who says so, at the end of the answer. */
export const sourceStep = code => el('a', { class: 'number small', href: `#${sourceId(code)}` }, code);

function entry(finding, turnedOut) {
  const { code, rank, standing, text, evidence } = finding;
  return el('article', { class: 'finding', id: code, 'data-standing': standing, tabindex: '-1' },
    el('p', null, el('strong', null, outcomeWords(finding)), ' ',
      el('span', { class: 'standing' }, standingWords(finding), rank === undefined ? '' : `, rank ${rank}`)),
    el('p', null, linked(text)),
    el('div', { class: 'small rests' }, el('span', null, el('span', { class: 'reason-id' }, code), ' rests on ', sourceStep(evidence.evidence)),
      standing === 'retracted' ? null : turnedOut(finding)));
}

/** What the folded ones are: `a copy, withdrawn (2)`. */
function tally(findings) {
  return grouped(findings, finding => (isCounted(finding) ? 'weaker' : standingWords(finding)))
    .map(([words, { length }]) => (length > 1 ? `${words} (${length})` : words)).join(', ');
}

/** The section of findings; `turnedOut(finding)` gives the way to retract it, `recording` the way to add one. */
export function foundSection(answer, { turnedOut, recording }) {
  const open = answer.findings.filter(finding => decides(answer, finding));
  const folded = answer.findings.filter(finding => !open.includes(finding));
  const what = answer.asked.part === 'none' ? 'leaving this position empty' : 'trying this part here';
  return section('What was found',
    answer.findings.length === 0 ? el('p', { class: 'quiet' }, `Nobody has recorded ${what}.`) : null,
    apart(answer, 'mounts'), apart(answer, 'runs'),
    open.map(finding => entry(finding, turnedOut)),
    folded.length ? el('details', { class: 'folded' },
      el('summary', null, `${folded.length}${open.length ? ' more' : ''} that ${folded.length === 1 ? 'does' : 'do'} not decide: ${tally(folded)}`),
      folded.map(finding => entry(finding, turnedOut))) : null,
    recording);
}

/** Every source that the answer cites; a code that stands in two books stands here twice, the first has the address. */
export function sourcesSection({ sources, asked }) {
  return section('Who says so', sources.length === 0 ? null : el('ul', { class: 'bare sources' }, sources.map((source, index) =>
    el('li', { id: sources[index - 1]?.evidence === source.evidence ? null : sourceId(source.evidence) },
      evidenceLink(asked.family, source.evidence), ' ', sourceText(source), details(source)))));
}

function details({ details: more }) {
  if (!more) return '';
  const { page, instrument, hours, output, fuel, note } = more;
  const told = [page, instrument, hours === undefined ? '' : `${hours} h under load`, output?.text, fuel ? `on ${fuel}` : '', note].filter(Boolean).join('; ');
  return told ? el('span', { class: 'quiet' }, ` – ${told}`) : '';
}
