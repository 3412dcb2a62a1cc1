// Letting a reading count for the number: a second step that says what it does.

import { changeForm } from './change-form.js';
import { write } from './editor.js';
import { el, partLink, plain } from './format.js';

/** The step for one reading of the item. */
export function promotion(reading, { answer, status, cancel, saved }) {
  const { asked, part } = answer;
  const number = part.replace(/^[^:]*:/, '');
  const link = `/api/items/${encodeURIComponent(asked.family)}/${encodeURIComponent(asked.item)}/promote?feature=${encodeURIComponent(reading.feature)}`;
  const form = changeForm({
    book: asked.family, name: `promote ${reading.feature}`, label: 'Let it count for the number', button: 'Yes, let it count',
    why: 'Why it speaks for the number', status, cancel, saved,
    ask: [`${plain(reading.reading.text)}, read on this one item, becomes a value of `, partLink(part),
      `: one measured example among the sources of ${number}, for every part that bears the number. `,
      reading.ofNumber ? `Recorded of the number so far: ${plain(reading.ofNumber.text)}. ` : 'Nothing is recorded of the number so far. ',
      'A used part may be worn: let only count what wear cannot have changed, or what you would order by. What a maker’s document says goes before it. ',
      'The reading itself stays as it is, and the step can be taken back in the history.'],
    cells: el('p', { class: 'unseen' }),
    send: note => write(link, { note }),
  });
  return { ...form, focus: () => form.form.querySelector('.signature input').focus() };
}
