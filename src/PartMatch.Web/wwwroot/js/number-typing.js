// While a number is typed: the first numbers that begin so or contain it, and the first that are a slip or two away. The whole list comes with the button.

import { Refusal, asker } from './api.js';
import { el, slips } from './format.js';

const fewest = 4;
const most = 5;
const letters = text => text.replace(/[^\p{L}\p{N}]/gu, '');

/** Words of a name have no digit, and of three characters nearly everything is near. */
const isNumber = text => /\p{N}/u.test(text) && letters(text).length >= fewest;

const line = (words, entries) => entries.length === 0 ? null
  : el('p', null, el('span', { class: 'quiet' }, `${words} `), entries.flatMap((entry, index) => [index ? ', ' : '', entry].flat()));

/** Shows them below the field; `to(part)` is the address that a number leads to. */
export function whileTyping(field, to) {
  const place = el('div', { class: 'typing', 'aria-live': 'polite' });
  field.closest('.cell').append(place);
  const [known, near] = [asker(), asker()];
  const link = (part, number) => el('a', { href: to(part), class: 'number' }, number);

  async function show() {
    const written = field.value;
    if (!isNumber(written)) {
      place.replaceChildren();
      return;
    }

    const [{ parts }, { numbers }] = await Promise.all([
      known(`/api/parts?limit=${most}&q=${encodeURIComponent(written.trim())}`),
      near(`/api/numbers/${encodeURIComponent(written.trim())}/near?limit=${most}`),
    ]);
    if (written !== field.value) return;
    const shown = new Set(parts.map(part => part.part));
    const lines = [
      line('Recorded:', parts.map(part => link(part.part, part.number))),
      line('Nearly so:', numbers.filter(number => !shown.has(number.part)).map(number => [link(number.part, number.number), ` (${slips(number)})`])),
    ].filter(Boolean);
    place.replaceChildren(...(lines.length ? lines : [el('p', { class: 'quiet' }, 'No number begins so, and none is a slip or two away.')]));
  }

  field.addEventListener('input', async () => {
    try {
      await show();
    } catch (error) {
      // A later key has asked anew; what is refused, the button tells with the whole answer.
      if (error.name !== 'AbortError' && !(error instanceof Refusal)) throw error;
      if (error instanceof Refusal) place.replaceChildren();
    }
  });
  field.form.addEventListener('submit', () => place.replaceChildren());
}
