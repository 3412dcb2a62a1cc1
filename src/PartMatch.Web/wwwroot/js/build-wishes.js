// What is asked of positions and groups.

import { askOnce } from './api.js';
import { at, cell, chosen, entryList, group, listOf, said, textOf, tick, typed } from './build-fields.js';
import { keeps, wishText } from './build-words.js';
import { el, plain, sentence } from './format.js';

/** One list for both: a whole group, or one position. */
function placeSelect(wish, family) {
  const select = el('select', null, el('option', { value: '' }, 'Choose a position or a group'),
    el('optgroup', { label: 'A whole group' }, family.groups.map(name => el('option', { value: `group:${name}` }, sentence(plain(name))))),
    family.groups.map(name => el('optgroup', { label: sentence(plain(name)) },
      family.positions.filter(one => one.group === name).map(one => el('option', { value: `position:${one.position}` }, one.name)))));
  const value = wish.position ? `position:${wish.position}` : wish.group ? `group:${wish.group}` : '';
  if (![...select.options].some(option => option.value === value)) select.append(el('option', { value }, `${value} (not in the base)`));
  select.value = value;
  return select;
}

const placed = select => (select.value ? { [select.value.split(':')[0]]: select.value.slice(select.value.indexOf(':') + 1) } : {});

/** Takes a number of the catalogue into one of the two lists. */
function catalogue(family, place, only, refuse) {
  const select = chosen('', [['', 'Choose a part']]);
  const take = (input, text) => el('button', {
    type: 'button', class: 'plain',
    onclick() {
      if (!select.value || listOf(input).includes(select.value)) return;
      input.value = [...listOf(input), select.value].join(', ');
      input.dispatchEvent(new Event('input', { bubbles: true }));
    },
  }, text);
  async function offer() {
    const { position } = placed(place);
    const kind = family.positions.find(one => one.position === position)?.kind;
    const rows = kind ? (await askOnce(`/api/books/${encodeURIComponent(family.family)}/parts?where=kind:${encodeURIComponent(kind)}&limit=1000`)).rows : [];
    if (placed(place).position !== position) return; // another was chosen meanwhile
    select.replaceChildren(el('option', { value: '' }, rows.length ? 'Choose a part' : 'First choose a position'), ...rows.map(({ row }) =>
      el('option', { value: row.part }, `${row.part.replace(/^[^:]*:/, '')} – ${row.name ?? plain(kind)}`)));
  }
  place.addEventListener('change', offer);
  select.addEventListener('focus', offer, { once: true });
  const field = cell('From the catalogue', select);
  field.append(el('p', { class: 'buttons' }, take(only, 'Only this'), take(refuse, 'Not this')));
  return field;
}

function wishEntry(family) {
  return (wish, isNew) => {
    const place = placeSelect(wish, family);
    const keep = chosen(wish.keep ?? 'either', Object.entries(keeps));
    const [only, refuse, note] = [typed(wish.parts?.join(', '), { class: 'typed' }), typed(wish.refuse?.join(', '), { class: 'typed' }), typed(wish.note)];
    const like = family.variants.map(variant => ({ code: variant.variant, ...tick(variant.name, wish.like?.includes(variant.variant)) }));
    const [onlyNew, trust] = [tick('buy only new parts', wish.onlyNew), tick('take on trust what nobody knows', wish.admitNotKnown)];
    const likes = el('fieldset', { class: 'cell' }, el('legend', null, 'Running like'), like.map(one => one.node));
    const read = (path = 'wishes[]') => said({
      ...placed(at(`${path} ${path}.position ${path}.group`, place)), like: (at(`${path}.like`, likes), keptOrder(wish.like, like)),
        parts: listOf(at(`${path}.parts`, only)), refuse: listOf(at(`${path}.refuse`, refuse)),
      keep: at(`${path}.keep`, keep).value === 'either' ? undefined : keep.value, onlyNew: onlyNew.input.checked, admitNotKnown: trust.input.checked,
        note: textOf(at(`${path}.note`, note)),
    });
    const node = group('', () => wishText(read(), family), el('div', { class: 'cells' },
      cell('Where', place), cell('Of the donor’s own', keep), likes,
        cell('Only these', only, 'Numbers with their maker, as pellworth:P-11-4003-A; “none” leaves it empty.'), cell('Not these', refuse),
      catalogue(family, place, only, refuse), el('div', { class: 'cell' }, onlyNew.node, trust.node), cell('Note', note)));
    node.classList.add('wish');
    node.querySelector('.set').classList.remove('quiet', 'small');
    node.open = isNew;
    return { node, read, focus: () => place.focus() };
  };
}

/** The order of the variants counts: those that were there keep theirs, new ones come behind. */
function keptOrder(before = [], like) {
  const ticked = like.filter(one => one.input.checked).map(one => one.code);
  return [...before.filter(code => ticked.includes(code)), ...ticked.filter(code => !before.includes(code))];
}

export const wishList = (wishes, family) => entryList({ name: 'wish', add: 'Add a wish', values: wishes, entry: wishEntry(family) });
