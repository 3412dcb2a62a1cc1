// Fields of a build's statement. Each knows what it says of the document: a text, a whole number, a tick, or nothing.

import { el } from './format.js';

let made = 0;

/** A cell with its label; `control` gets an id of its own. */
export function cell(label, control, hint, { wide = false } = {}) {
  control.id ||= `field-${made += 1}`;
  if (hint) control.setAttribute('aria-describedby', `${control.id}-hint`);
  return el('div', { class: wide ? 'cell wide' : 'cell' }, el('label', { for: control.id }, label), control, hint
    ? el('p', { class: 'hint', id: `${control.id}-hint` }, hint) : null);
}

export function typed(value, attributes) {
  const input = el('input', { autocomplete: 'off', spellcheck: 'false', ...attributes });
  input.value = value ?? '';
  return input;
}

export function chosen(value, options, attributes) {
  const select = el('select', attributes, options.map(([code, text]) => el('option', { value: code }, text)));
  if (value && ![...select.options].some(option => option.value === value)) select.append(el('option', { value }, `${value} (not in the list)`));
  select.value = value ?? '';
  return select;
}

export function tick(text, checked) {
  const input = el('input', { type: 'checkbox' });
  input.checked = Boolean(checked);
  return { input, node: el('label', { class: 'choice' }, input, ` ${text}`) };
}

export const textOf = control => control.value.trim() || undefined;

/** A number where it is one; else what is typed, so that the server can say what is wrong with it. */
export function numberOf(control) {
  const text = control.value.trim();
  return text === '' ? undefined : /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;
}

/** Numbers of parts, apart by commas or blanks. */
export const listOf = control => control.value.split(/[\s,;]+/).filter(Boolean);

/** Says which member of the document a control fills, so that a fault of it is told there. */
export function at(path, control) {
  control.dataset.field = path;
  return control;
}

/** An object without what is not said. */
export const said = members => Object.fromEntries(Object.entries(members).filter(([,
  value]) => value !== undefined && value !== false && !(Array.isArray(value) && value.length === 0)));

/**
 * Entries that can be added and removed. `entry(value)` gives `{node, read(path), focus}`; `read(path)` of the list gives what stands in all of them.
 */
export function entryList({ name, add, values, entry }) {
  const list = el('ul', { class: 'entries' });
  const entries = [];
  const more = el('button', { type: 'button', class: 'plain', onclick: () => put({}, true).focus() }, add);

  function put(value, isNew = false) {
    const one = entry(value, isNew);
    const item = el('li', null, one.node, el('p', { class: 'actions' }, el('button', {
      type: 'button', class: 'plain',
      onclick() {
        entries.splice(entries.indexOf(one), 1);
        item.remove();
        more.focus();
        list.dispatchEvent(new Event('change', { bubbles: true }));
      },
    }, 'Take it out', el('span', { class: 'unseen' }, ` (${name})`))));
    entries.push(one);
    list.append(item);
    if (isNew) list.dispatchEvent(new Event('change', { bubbles: true }));
    return one;
  }

  for (const value of values ?? []) put(value);
  return { node: el('div', null, list, el('p', { class: 'adding' }, more)), read: path => entries.map((one, index) => one.read(`${path}[${index}]`)),
    size: () => entries.length };
}

/** A folded group of fields; `told()` says on its line what is set in it. */
export function group(title, told, ...content) {
  const line = el('span', { class: 'set quiet small' });
  const node = el('details', { class: 'more' }, el('summary', null, title, line), content);
  const tell = () => { line.textContent = told(); };
  for (const type of ['input', 'change']) node.addEventListener(type, tell);
  tell();
  return node;
}
