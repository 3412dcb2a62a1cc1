// The price list that is to be read: a file, or a table pasted from a page.

const markup = new WeakMap();
const types = { html: 'text/html', htm: 'text/html', xhtml: 'application/xhtml+xml', mhtml: 'message/rfc822', mht: 'message/rfc822' };

/** The clipboard holds a table twice: as words with tabs, which stand in the field, and as markup, which knows merged cells and feet. */
export function keepMarkup(form) {
  const { list, pasted } = form.elements;
  pasted.addEventListener('paste', event => {
    const html = event.clipboardData?.getData('text/html') ?? '';
    const whole = pasted.selectionStart === 0 && pasted.selectionEnd === pasted.value.length;
    markup.set(pasted, whole && /<table\b/i.test(html) ? html : '');
    list.value = '';
  });
  pasted.addEventListener('input', event => {
    if (event.inputType !== 'insertFromPaste') markup.delete(pasted); // changed by hand: the markup would say something else
    if (pasted.value) list.value = '';
  });
  list.addEventListener('change', () => {
    if (!list.files.length) return;
    pasted.value = '';
    markup.delete(pasted);
  });
}

/** What is to be read, with its type; null where there is nothing. */
export function listSent({ list, pasted }) {
  const [file] = list.files;
  if (file) return { body: file, type: types[file.name.split('.').pop().toLowerCase()] ?? 'text/csv' };
  const html = markup.get(pasted) || (/^\s*</.test(pasted.value) ? pasted.value : '');
  return html ? { body: html, type: 'text/html; charset=utf-8' } : pasted.value.trim() ? { body: pasted.value, type: 'text/csv' } : null;
}
