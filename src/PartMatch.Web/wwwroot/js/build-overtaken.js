// Somebody else saved the build meanwhile: where the two differ, and which of them to take.

import { positionName } from './choices.js';
import { el, plain, ruled, sentence } from './format.js';
import { whoChanged } from './record-conflict.js';
import { wishText } from './build-words.js';

/** What can be taken from one or the other by itself, as path and value: the states by position, lists as a whole. */
function piecesOf(document) {
  const pieces = new Map();
  for (const [name, value] of Object.entries(document)) {
    if (name === 'goal') for (const [part, text] of Object.entries(value)) pieces.set(`goal ${part}`, text);
    else if (name === 'donor') {
      for (const [part, text] of Object.entries(value)) if (part !== 'states') pieces.set(`donor ${part}`, text);
      for (const state of value.states ?? []) pieces.set(`state ${state.position}`, state);
    } else if (!Array.isArray(value) || value.length) pieces.set(name, value);
  }
  if (pieces.get('admitNotKnown') === false) pieces.delete('admitNotKnown');
  return pieces;
}

function documentOf(pieces, code, family) {
  const document = { code, family, donor: { states: [] } };
  for (const [path, value] of pieces) {
    const [name, part] = path.split(' ');
    if (name === 'state') document.donor.states.push(value);
    else if (name === 'donor') document.donor[part] = value;
    else if (name === 'goal') (document.goal ??= {})[part] = value;
    else document[name] = value;
  }
  return document;
}

const names = {
  neededBy: 'needed by', startOn: 'ordered on', inHand: 'parts in hand', refusedSellers: 'sellers refused', admitNotKnown: 'taken on trust anywhere',
    offersAtMostDaysOld: 'offers at most so many days old',
  daysWhereNotSaid: 'days where not said', sendingWhereNotSaid: 'sending where not said', importPercentWhereNotSaid: 'import charge where not said',
    budget: 'at most', sellsFor: 'sells for',
};

const nameOf = (path, family) => {
  const [name, part] = path.split(' ');
  return sentence(name === 'state' ? `how the ${positionName(family, part)} was found` : plain(names[part ?? name] ?? part ?? name));
};

function textOf(path, value, family) {
  if (value === undefined) return el('i', null, 'empty');
  if (path === 'wishes') return el('ul', { class: 'bare' }, value.map(wish => el('li', null, wishText(wish, family))));
  const say = one => (one !== null && typeof one === 'object'
    ? Object.entries(one).filter(([name]) => name !== 'position').map(([, text]) => text).join(', ') : one === true ? 'yes' : String(one));
  return [value].flat().map(say).join('; ');
}

const isSaid = value => !(value === false || value === 'either' || (Array.isArray(value) && value.length === 0));

const isApart = (one, other) => stable(one) !== stable(other);

/** Without the order of members, and without what says nothing. */
const stable = value => JSON.stringify(value, (_, one) => (one && typeof one === 'object' && !Array.isArray(one)
  ? Object.fromEntries(Object.keys(one).toSorted().filter(name => isSaid(one[name])).map(name => [name, one[name]])) : one));

/** The two versions; `save(document)` sends what is picked. */
export function conflictOf({ base, mine, present, family, save }) {
  const [was, own, theirs] = [base, mine, present.document].map(piecesOf);
  const apart = [...new Set([...theirs.keys(), ...own.keys()])].filter(path => isApart(own.get(path), theirs.get(path)));
  const picked = new Map(apart.map(path => [path, isApart(own.get(path), was.get(path)) ? own : theirs]));
  const choice = (path, from, whose) => el('label', { class: 'choice' },
    el('input', { type: 'radio', name: `take-${path}`, checked: picked.get(path) === from, onchange: () => picked.set(path, from) }),
      el('span', null, textOf(path, from.get(path), family), el('span', { class: 'unseen' }, ` (${whose})`)));
  function together() {
    const pieces = new Map(theirs);
    for (const [path, from] of picked) {
      if (from.has(path)) pieces.set(path, from.get(path));
      else pieces.delete(path);
    }
    return documentOf(pieces, base.code, base.family);
  }
  return el('section', { class: 'conflict', tabindex: '-1', 'aria-labelledby': 'conflict-title' },
    el('h2', { id: 'conflict-title' }, 'Somebody else changed this build while you were at it'),
    el('p', null, 'Theirs is stored: ', whoChanged(present.saved), '. Yours is not stored yet, and nothing you typed is lost.'),
    apart.length ? ruled('Where the two differ', ['What', 'It was', 'Theirs', 'Yours'], apart.map(path =>
      [nameOf(path, family), textOf(path, was.get(path), family), choice(path, theirs, 'theirs'), choice(path, own, 'yours')]),
        { className: 'restack versions' }) : el('p', null, 'Both come to the same.'),
    el('p', null, 'Where both changed the same, yours is picked. Look at it before you save.'),
    el('p', { class: 'buttons' }, el('button', { type: 'button', onclick: () => save(together()) }, 'Save what is picked')));
}
