// A photograph of an item: the picture is stored first, then the row that says what it shows.

import { ask } from './api.js';
import { nextCode, rowWith } from './book-rows.js';
import { changeForm, missing } from './change-form.js';
import { authorization } from './editor.js';
import { cell, typedInput } from './evidence-choice.js';
import { el } from './format.js';

const types = ['image/jpeg', 'image/png'];

/** The form; the source of the item is that of its photographs. */
export async function addPhoto({ answer, status, cancel, saved }) {
  const { asked } = answer;
  const row = await rowWith(asked.family, 'items', { item: asked.item });
  const file = el('input', { type: 'file', name: 'image', accept: types.join(','), 'aria-required': 'true' });
  const caption = typedInput('caption', { spellcheck: 'true' });
  return changeForm({
    book: asked.family, name: 'photo', label: `A photograph of ${asked.item}`, button: 'Store it', status, cancel, saved,
    ask: 'A JPEG or PNG. What the camera wrote into it (place, time, owner) is taken out before it is stored.',
    cells: [cell('photo-file', 'The picture', file), cell('photo-caption', 'What it shows', caption, 'In words, also for those who cannot see it.')],
    async gather(set) {
      const [picture] = file.files;
      if (!picture || !types.includes(picture.type)) throw missing('image', 'a JPEG or PNG file', 'choose the picture');
      const { image } = await ask('/api/images', { method: 'POST', headers: { 'Content-Type': picture.type, ...authorization() }, body: picture });
      const photo = await nextCode(asked.family, 'photos', 'photo', 'ph');
      set.add('photos', { photo, image, evidence: row?.row.evidence, item: asked.item, caption: caption.value.trim() }, { photo: file, image: file, caption });
    },
  });
}
