// The control of one field: something to type, choose or tick, which reads and writes one text. Lists are joined by |.

import { el, plain, sentence } from './format.js';
import { codeWords } from './record-words.js';

const idOf = field => `f-${field.name}`;
const items = text => text.split('|').filter(Boolean);

const hintText = field => [field.required ? 'Needed.' : '', field.hint].filter(Boolean).join(' ');

function cell(field, ...content) {
  return el('div', { class: field.isLong ? 'cell wide' : 'cell' }, el('label', { for: idOf(field) }, field.label), ...content,
    el('p', { class: 'hint', id: `${idOf(field)}-hint` }, hintText(field)), el('p', { class: 'hint meaning', id: `${idOf(field)}-meaning` }));
}

const common = field => ({
  id: idOf(field), name: field.name, 'data-field': field.codes.join(' '), 'aria-describedby': `${idOf(field)}-hint ${idOf(field)}-meaning`,
  'aria-required': field.required ? 'true' : null,
});

/** Something to type; `list` is the id of proposals. A text with line breaks keeps them. */
export function typed(field, { list = null, text = '' } = {}) {
  const isTall = field.isLong && !list;
  const attributes = {
    ...common(field), list, autocomplete: 'off', spellcheck: field.isLong ? null : 'false', autocapitalize: field.isLong ? null : 'off',
    rows: isTall ? 2 : null,
    class: field.refers || field.unit || field.isKey ? 'typed' : null,
  };
  const input = el(isTall || text.includes('\n') ? 'textarea' : 'input', attributes);
  return { node: cell(field, input), input, read: () => input.value.trim(), write: value => { input.value = value; } };
}

/** One of some codes; a text that is none of them is offered as well, so that nothing is lost. */
export function chosen(field, codes, wordsOf = code => codeWords(field.name, code)) {
  const option = (value, text) => el('option', { value }, text);
  const input = el('select', common(field), option('', field.required ? 'Choose' : 'Not recorded'), codes.map(code => option(code, sentence(wordsOf(code)))));
  return {
    node: cell(field, input), input, read: () => input.value,
    write(value) {
      if (value && ![...input.options].some(one => one.value === value)) input.append(option(value, `${value} (not in the list)`));
      input.value = value;
    },
  };
}

function group(field, content) {
  return el('fieldset', { class: 'cell wide', id: idOf(field), 'data-field': field.codes.join(' '), 'aria-describedby': `${idOf(field)}-hint` },
    el('legend', null, field.label), el('p', { class: 'hint', id: `${idOf(field)}-hint` }, hintText(field)), content);
}

/** Any of some `{code, name}`, each to be ticked. */
export function ticked(field, entries) {
  const choices = el('div', { class: 'choices' });
  const offer = ({ code, name }) => choices.append(
    el('label', { class: 'choice' }, el('input', { type: 'checkbox', value: code }), name || sentence(plain(code))));
  entries.forEach(offer);
  const boxes = () => [...choices.querySelectorAll('input')];
  return {
    node: group(field, choices),
    get input() { return boxes()[0]; },
    read: () => boxes().filter(box => box.checked).map(box => box.value).toSorted().join('|'),
    write(text) {
      const wanted = items(text);
      const offered = boxes().map(box => box.value);
      wanted.filter(code => !offered.includes(code)).forEach(code => offer({ code }));
      for (const box of boxes()) box.checked = wanted.includes(box.value);
    },
  };
}

/** A list of things to type, one in each line; an empty line waits at the end. */
export function lines(field, { list = null } = {}) {
  const place = el('div', { class: 'lines' });
  const inputs = () => [...place.querySelectorAll('input')];
  const add = value => place.append(el('input', {
    class: 'typed', value, list, autocomplete: 'off', spellcheck: 'false', autocapitalize: 'off', id: `${idOf(field)}-${inputs().length + 1}`,
    'aria-label': `${field.label}, line ${inputs().length + 1}`,
  }));
  const open = () => { if (inputs().at(-1)?.value !== '') add(''); };
  place.addEventListener('input', open);
  open();
  return {
    node: group(field, place),
    get input() { return inputs()[0]; },
    read: () => inputs().map(input => input.value.trim()).filter(Boolean).join('|'),
    write(text) {
      place.replaceChildren();
      items(text).forEach(add);
      open();
    },
  };
}

/** A control that can become another one and keeps its text meanwhile. */
export function changing(field, first) {
  let control = first;
  return {
    get node() { return control.node; },
    get input() { return control.input; },
    read: () => control.read(),
    write: text => control.write(text),
    hint: text => control.node.querySelector('.hint').replaceChildren(hintText({ ...field, hint: text })),
    become(other) {
      const hadFocus = control.node.contains(document.activeElement);
      other.write(control.read());
      control.node.replaceWith(other.node);
      control = other;
      if (hadFocus) control.input?.focus();
    },
  };
}
