// Sheets of a build that are read away from the bench: the yard list, and the parts list with what was found.

import { ask } from './api.js';
import { fold } from './fold.js';
import { address, count, danger, el, linked, partLink, plain, ruled, section, sentence, sentences, sureness, verdict } from './format.js';
import { conditionText, money } from './offer-words.js';
import { addresses } from './page.js';
import { checkList, markWords, toolWords } from './yard-checks.js';

const numberOf = part => part.replace(/^[^:]*:/, '');

const paper = text => el('p', { class: 'buttons' }, el('button', { type: 'button', class: 'plain', onclick: () => window.print() }, text));

const way = query => address('build.html', { build: query.get('build'), objective: query.get('objective') ?? 'cheapest', donor: query.get('donor') });

const numbers = find => el('p', { class: 'numbers' }, find.numbers.map((one, index) => [index ? ', ' : '',
  index === 0 ? partLink(find.part, one.written) : one.written,
    one.identifies ? '' : el('span', { class: 'quiet small' }, ' (mark: narrows, does not name)')]));

const mistaken = find => (find.lookAlikes.length === 0 ? null : el('ul', { class: 'mistaken' }, find.lookAlikes.map(one => el('li', null,
  el('div', null, 'Not ', partLink(one.part, one.number), one.name ? ` ${one.name}` : '', ' ', danger(one.danger)),
  el('div', { class: 'small' }, linked(sentences(one.tellApartText)), one.toldApart ? '' : el('strong', null, ' Not told apart in a yard.'),
    one.sitsOn.length ? el('span', { class: 'quiet' }, ` On ${one.sitsOn.join('; ')}.`) : '')))));

const others = parts => `else it is ${parts.map(numberOf).join(' or ')}`;

function known(find) {
  return [numbers(find), el('p', { class: 'small' }, find.sitsOn.length ? `On ${find.sitsOn.join('; ')}.` : el('span', { class: 'quiet' },
    'No maker of this family fitted it.')),
    checkList(find.recognise, others), mistaken(find)];
}

/** The one thing to look for before anything is measured: what stands on it, or what one glance shows. */
const atSight = find => find?.recognise.find(one => ['photo', 'eye', 'label', 'count'].includes(one.check.method));

const mark = one => (one ? `${sentence(one.check.name)}: ${markWords(one.expect)}` : '');

/** Folded to one line on a phone: the position, the number to look for and the mark to know it by. */
function yardPart(part) {
  const [first, ...rest] = part.oneOf;
  return el('details', { class: 'find on-paper', 'data-position': part.position, open: matchMedia('(min-width: 60rem)').matches },
    el('summary', null, el('h3', null, sentence(part.name), part.pieces > 1 ? ` × ${part.pieces}` : ''),
      el('span', { class: 'seek' }, el('span', { class: 'number' }, first?.numbers[0]?.written ?? 'no number recorded'), atSight(first) ? `; ${mark(atSight(first))}` : '')),
    el('p', { class: 'quiet small' }, [part.access && `To reach it: ${part.access}`,
      part.planned && `planned for ${money(part.planned)}${part.isShare ? ' (its share of one price for several: pulling it alone saves nothing)' : ''}${part.condition ? `, ${conditionText({ condition: part.condition })}` : ''} from ${part.from}`]
      .filter(Boolean).join('; '), '.'),
    rest.length ? el('p', { class: 'small' }, el('strong', null, 'One of several, chosen by measurement: '), 'what you need is known after measuring.') : null,
    first ? known(first) : null,
    rest.map(find => el('details', { class: 'grades on-paper' }, el('summary', null, `Or ${find.number}`), known(find))));
}

const byGroup = (parts, draw) => [...new Set(parts.map(part => part.group))].map(group => section(sentence(plain(group)),
  el('div', { class: 'finds' }, parts.filter(part => part.group === group).map(draw))));

function yardList(answer, query, { build }) {
  const [pull, isNew] = [answer.parts.filter(part => !part.buyNew), answer.parts.filter(part => part.buyNew)];
  return [
    el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, answer.headlineText),
      el('p', { class: 'why' }, 'Of ', el('a', { href: way(query) }, 'the plan'), ` of version ${answer.asked.version} of ${build.title}. `,
        el('a', { href: address('donors.html', { build: build.code }) }, 'Whether an engine is what it is said to be'), ' stands with the donors.'),
          paper('Print the yard list')),
    section('Before you touch it', el('ul', { class: 'cautions' }, answer.cautions.map(caution => el('li', null, caution.text)))),
    section('Bring', el('ul', null, answer.tools.map(tool => el('li', null, sentence(toolWords[tool.tool] ?? tool.tool),
      el('span', { class: 'quiet small' }, tool.tool === 'photo' ? ': to compare at home, and to send' : `: for ${tool.for.map(name => name.charAt(0).toLowerCase() + name.slice(1)).join(', ')}`))),
    el('li', null, 'What takes the parts off: no book records that',
      el('span', { class: 'quiet small' }, '; gloves, eye protection, rags and caps for open lines')))),
    byGroup(pull, yardPart),
    fold('Not from a yard', count(isNew.length, 'position'), isNew.length ? ruled('Bought new', ['Position', 'Why', 'Planned'], isNew.map(part =>
      [sentence(part.name), part.buyNew, part.planned ? money(part.planned) : 'not known']), { className: 'restack slim' }) : null),
    addresses(answer),
  ];
}

const outcomes = { 'yes': 'went on', 'with-work': 'went on after work', 'no': 'did not go on', 'same': 'ran the same', 'differently': 'ran differently' };

const told = line => [line.mounts, line.runs].filter(Boolean).map(outcome => outcomes[outcome]).join(', ');

function sitting(source) {
  const { details } = source;
  return [`${source.date ?? 'on no recorded day'}${source.author ? `, ${source.author}` : ''}`,
    details?.hours !== undefined ? `${details.hours} hours under load` : '',
    details?.output?.text, details?.fuel].filter(Boolean).join('; ');
}

/** Worth reading: what was seen, or came out otherwise than everybody hopes. */
const isNews = line => line.note || line.runs === 'differently' || (line.mounts && line.mounts !== 'yes');

const foundRows = lines => lines.map(line => [sentence(line.name), line.part === 'none' ? 'nothing' : partLink(line.part), told(line),
  line.with.length ? el('span', { class: 'small' }, line.with.map(one => one.replace(/=(?:[^:]*:)?/, ' ')).join(', ')) : 'as built', line.note ?? '–']);

const foundHeads = ['Position', 'Part', 'Found', 'With', 'What was seen'];

function learned(answer) {
  const [news, others] = [answer.learned.filter(isNews), answer.learned.filter(line => !isNews(line))];
  return answer.learned.length === 0 ? null : [
    news.length ? ruled('What was seen, and what came out otherwise', foundHeads, foundRows(news), { className: 'restack' }) : null,
    others.length ? el('details', { class: 'learned-others' }, el('summary', null, `${news.length ? 'The others' : 'All'}: ${count(others.length, 'position')} went on or ran the same`),
      ruled('Went on, or ran the same', foundHeads, foundRows(others), { className: 'restack' })) : null,
    el('ul', { class: 'small' }, answer.sources.map(source => el('li', null,
      el('a', { href: address('record.html', { book: answer.book, table: 'evidence', key: source.evidence }) }, source.evidence), `: ${sitting(source)}`))),
  ];
}

const partRow = part => [
  sentence(part.name), part.oneOf.length === 0 ? el('span', { class: 'quiet' }, 'nothing') : [part.oneOf.length > 1 ? 'one of ' : '',
    part.oneOf.map((one, index) => [index ? ', ' : '', partLink(one)]),
    part.pieces > 1 ? ` × ${part.pieces}` : '', part.partName ? el('div', { class: 'small' }, part.partName) : null],
  [part.actionText, part.works.map(work => el('div', { class: 'small' }, `Work: ${work}`))],
  part.standing === 'built' ? el('strong', null, 'built so') : 'planned',
    part.headline ? [verdict(part.headline, { short: true }), ' ', sureness(part.sureness, { short: true })] : '–',
];

function partsList(answer, query, about) {
  const own = answer.parts.filter(part => part.oneOf.length || part.standing === 'built');
  const holder = el('div');
  const recording = el('details', { class: 'fold', id: 'record' }, el('summary', null, el('h2', null, 'Record what fitted and what ran'),
    el('span', { class: 'quiet small' }, 'for all lines in one sitting')), holder);
  recording.addEventListener('toggle', async () => {
    if (!recording.open || holder.hasChildNodes()) return;
    const { sittingForm } = await import('./build-sitting.js');
    holder.replaceChildren(sittingForm(answer, about));
  });
  return [
    el('section', { class: 'headline' }, el('h2', { 'data-first': true, tabindex: '-1' }, answer.title),
      el('p', { class: 'why' }, answer.engine, answer.goal ? `: ${answer.goal}` : ''),
      el('p', { class: 'why' }, sentences(answer.headlineText), answer.cost ? ` The plan costs ${money(answer.cost)}, without the donor.` : ''),
        paper('Print the parts list')),
    section('What was learned', learned(answer)),
    ruled('What is in it', ['Position', 'Part', 'What was done', 'Standing', 'Fit'], own.map(partRow), { className: 'restack parts-list' }),
    section('Works', answer.works.length ? ruled('In the order in which they are done', ['Work', 'Who', 'Days', 'Price'], answer.works.map(work =>
      [work.name, work.who ?? 'not recorded', work.days === undefined ? 'not recorded' : String(work.days), work.price ? money(work.price) : 'not recorded']), { className: 'restack slim' }) : null),
    section('Cautions', answer.cautions.length ? el('ul', { class: 'cautions' }, answer.cautions.map(caution => el('li', null, caution.text))) : null),
    recording, addresses(answer),
  ];
}

const draw = { 'yard-list': yardList, 'parts-list': partsList };

/** The sheet that the address asks for: its nodes and what is announced. */
export async function sheetOf(query, about) {
  const name = query.get('show') in draw ? query.get('show') : 'parts-list';
  const answer = await ask(about.apiOf(name, query), { signal: about.signal });
  document.body.dataset.sheet = name;
  return { content: draw[name]({ ...answer, book: about.build.family }, query, about), said: answer.headlineText };
}
