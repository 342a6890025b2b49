// The steps in the order in which a cook thinks: who eats, what is there, where it is cooked, how it should look.

import { add, get, remove, set, store } from './store.js';
import { field, h, pathWords, slider } from './form.js';

let foods = [];
let shape = {};

export function know(start) {
  foods = start.foods;
  shape = start.shape;
}

function section(id, title, lead, ...children) {
  return h('section', { id: `step-${id}`, class: 'step', 'aria-labelledby': `title-${id}` }, h('h2', { id: `title-${id}`, tabindex: '-1' }, title), lead ? h('p', {}, lead) : null, ...children);
}

function fault(path) {
  return h('p', { class: 'fault', 'data-fault': path });
}

function more(title, ...children) {
  return h('details', {}, h('summary', {}, title), ...children);
}

function button(label, onclick, more = {}) {
  return h('button', { type: 'button', onclick, ...more }, label);
}

function items(path) {
  const list = get(path);
  return Array.isArray(list) ? list : [];
}

// Dogs

const DOG_FIRST = ['age', 'born', 'sex', 'neutered', 'activity', 'conditionScore'];
const DOG_MORE = ['goalWeight', 'weeklyChange', 'expectedAdultWeight', 'treats', 'otherFood', 'avoid', 'vetEnergy', 'profile', 'comes', 'leaves', 'comesFrom', 'transitionDays', 'fedEnergy', 'note'];

function dog(i) {
  const at = (name) => ['dogs', i, name];
  const name = get(at('name')) || 'new dog';
  return h(
    'fieldset',
    { class: 'card' },
    h('legend', {}, String(name)),
    fault(`dogs[${i}]`),
    h('div', { class: 'fields' }, field(at('name'), { live: true }), slider(at('weight'), `weight of ${name}`), ...DOG_FIRST.map((each) => field(at(each), { live: each !== 'sex' && each !== 'activity' }))),
    h('p', { class: 'reckoned', 'data-dog': i, 'aria-live': 'polite' }),
    more(
      'Goal, growth, treats, what it must not get, coming and leaving',
      h('div', { class: 'fields' }, ...DOG_MORE.map((each) => field(at(each)))),
      h('h4', {}, 'In whelp or nursing'),
      h('div', { class: 'fields' }, field([...at('gestation'), 'week'], { label: 'week of gestation' }), field([...at('gestation'), 'expectedPuppies']), field([...at('lactation'), 'week'], { label: 'week of nursing' }), field([...at('lactation'), 'puppies'])),
      h('h4', {}, 'Weigh-ins'),
      ...items(at('weighIns')).map((_, k) => h('div', { class: 'fields' }, field([...at('weighIns'), k, 'date']), field([...at('weighIns'), k, 'weight']), button('Remove', () => remove(at('weighIns'), k), { 'aria-label': `remove this weigh-in of ${name}` }))),
      button('Add a weigh-in', () => add(at('weighIns'), { date: '', weight: '' })),
    ),
    button('Remove this dog', () => remove(['dogs'], i), { 'aria-label': `remove ${name}` }),
  );
}

function dogs() {
  return section(
    'dogs',
    'Dogs',
    'Who eats from the pot. The energy that each needs is reckoned as you type.',
    fault('dogs'),
    ...items(['dogs']).map((_, i) => dog(i)),
    button('Add a dog', () => add(['dogs'], { name: '', weight: '', age: '' }), { id: 'add-dog' }),
  );
}

// Pantry

const ITEM_FIRST = ['price', 'pack', 'onHand', 'outOfStock'];
const ITEM_MORE = ['mustUse', 'atMost', 'wholePacks', 'where', 'cook', 'note'];

function item(i) {
  const at = (name) => ['pantry', i, name];
  const name = String(get(at('food')) ?? '');
  return h(
    'fieldset',
    { class: 'card item', 'data-out': get(at('outOfStock')) === true },
    h('legend', {}, name || 'food'),
    fault(`pantry[${i}]`),
    fault(`pantry[${i}].food`),
    h('div', { class: 'fields' }, ...ITEM_FIRST.map((each) => field(at(each)))),
    more('Must be used, most, packs, how it is cooked', h('div', { class: 'fields' }, ...ITEM_MORE.map((each) => field(at(each))))),
    button('Remove', () => remove(['pantry'], i), { 'aria-label': `remove ${name}` }),
  );
}

/** Foods of the catalogue that hold every word. */
export function found(text, most) {
  const wanted = text.toLowerCase().split(/\s+/).filter((word) => word !== '');
  return wanted.length === 0
    ? []
    : foods
        .filter(([label, group, , aliases]) => wanted.every((word) => `${label} ${group} ${aliases}`.toLowerCase().includes(word)))
        .sort((a, b) => a[0].length - b[0].length)
        .slice(0, most);
}

function search(label, id, onPick) {
  const list = h('ul', { class: 'found', id: `${id}-found` });
  const count = h('p', { class: 'hint', role: 'status' });
  const input = h('input', {
    type: 'search',
    id,
    autocomplete: 'off',
    oninput: () => {
      const hits = found(input.value, 8);
      list.replaceChildren(
        ...hits.map(([name, group, kcal]) => h('li', {}, button(`Add ${name}`, () => {
          onPick(name);
        }), h('span', { class: 'hint' }, ` ${group}, ${kcal} kcal in 100 g`))),
      );
      count.textContent = input.value.trim() === '' ? '' : hits.length === 0 ? 'No food of the catalogue is called so; a food from its label goes under "ownFoods" in the file’s text.' : `${hits.length} found`;
    },
  });
  return h('div', { class: 'search' }, h('label', { for: id }, label), input, count, list);
}

function pantry() {
  const filter = h('input', {
    type: 'search',
    id: 'pantry-filter',
    oninput: () => {
      const words = filter.value.toLowerCase();
      document.querySelectorAll('#pantry-items > fieldset').forEach((each) => {
        each.hidden = !each.querySelector('legend').textContent.toLowerCase().includes(words);
      });
    },
  });
  return section(
    'pantry',
    'Pantry and shop',
    'What you have and what you can buy. Tick what is out of stock, and the plan follows.',
    fault('pantry'),
    search('Find a food to add', 'food-search', (name) => add(['pantry'], { food: name })),
    h('p', {}, h('label', { for: 'pantry-filter' }, 'Show only '), filter),
    h('div', { id: 'pantry-items' }, ...items(['pantry']).map((_, i) => item(i))),
  );
}

// Kitchen

function held(i) {
  const at = ['kitchen', 'freezer', 'holds'];
  return h('div', { class: 'fields' }, ...['what', 'volume', 'bags'].map((each) => field([...at, i, each])), button('Remove', () => remove(at, i), { 'aria-label': 'remove this from the freezer' }));
}

function kitchen() {
  const at = (name) => ['kitchen', name];
  return section(
    'kitchen',
    'Kitchen and freezer',
    'For how many days you cook, and what it must fit into.',
    fault('kitchen'),
    h('div', { class: 'fields' }, ...['days', 'mealsPerDay', 'pot', 'mostPotLoads', 'bin', 'bag', 'mostBags', 'fridgeDays', 'shopDaysBefore'].map((each) => field(at(each), { live: each === 'days' }))),
    h('h3', {}, 'Freezer'),
    fault('kitchen.freezer'),
    h('div', { class: 'fields' }, slider([...at('freezer'), 'volume'], 'volume of the freezer'), field([...at('freezer'), 'kind']), field([...at('freezer'), 'packing'])),
    h('h4', {}, 'What is in it already'),
    ...items([...at('freezer'), 'holds']).map((_, i) => held(i)),
    button('Add something that it holds', () => add([...at('freezer'), 'holds'], { what: '' })),
  );
}

// Wishes

function share(band) {
  const at = (end) => ['shape', 'shares', band.key, end];
  const usual = (end) => `${100 * (band[end] ?? (end === 'most' ? 1 : 0))} %`;
  const cell = (end) => {
    const one = field(at(end), { label: `${band.label}, ${end}` });
    one.querySelector('input').placeholder = usual(end);
    return h('td', {}, one);
  };
  return h('tr', {}, h('th', { scope: 'row' }, band.label), cell('least'), cell('most'));
}

function wishes() {
  return section(
    'wishes',
    'Wishes',
    'The household, the profile that every dog is held to, the budget, and how the pot should look.',
    h('div', { class: 'fields' }, ...['name', 'start', 'currency', 'units', 'locale', 'profile', 'margin', 'budget', 'energyEquation', 'growthEquation', 'foodEnergy', 'note'].map((each) => field([each]))),
    h('h3', {}, 'How the pot should look'),
    h('div', { class: 'fields' }, ...['mostFoods', 'fewestFoods', 'mostStirredIn', 'mostAdditions', 'smallestUseful', 'oneFoodMost'].map((each) => field(['shape', each]))),
    more('Shares of the cooked pot by kind of food', h('table', { class: 'shares' }, h('thead', {}, h('tr', {}, h('th', { scope: 'col' }, 'kind'), h('th', { scope: 'col' }, 'at least'), h('th', { scope: 'col' }, 'at most'))), h('tbody', {}, ...(shape.bands ?? []).map(share)))),
  );
}

// A recipe of one's own

function recipeLine(list, i, names) {
  const at = ['recipe', list, i];
  return h('div', { class: 'fields line' }, fault(pathWords(at)), ...names.map((each) => field([...at, each])), button('Remove', () => remove(['recipe', list], i), { 'aria-label': `remove ${get([...at, 'food'])} from the recipe` }));
}

function recipe() {
  return section(
    'recipe',
    'My recipe',
    'What you cook today: is it any good, and what would mend it?',
    fault('recipe'),
    h('div', { class: 'fields' }, field(['recipe', 'name']), field(['recipe', 'days'])),
    h('h3', {}, 'Into the pot'),
    fault('recipe.foods'),
    ...items(['recipe', 'foods']).map((_, i) => recipeLine('foods', i, ['food', 'amount', 'weighed'])),
    search('Find a food to add to the recipe', 'recipe-search', (name) => add(['recipe', 'foods'], { food: name, amount: '' })),
    h('h3', {}, 'Into single bowls, a day'),
    ...items(['recipe', 'additions']).map((_, i) => recipeLine('additions', i, ['food', 'dog', 'amount'])),
    button('Add something for a bowl', () => add(['recipe', 'additions'], { food: '', amount: '' })),
    h('p', {}, button('Check my recipe', () => dispatchEvent(new CustomEvent('ask-recipe')), { id: 'check-recipe', class: 'main' })),
    h('p', { id: 'recipe-now', role: 'status' }),
    h('div', { id: 'recipe-answer' }),
  );
}

// Several cook days

const DAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

function cookOn(day) {
  const path = ['horizon', 'cookOn'];
  const id = `cook-${day}`;
  const box = h('input', {
    type: 'checkbox',
    id,
    onchange: (e) => {
      const days = DAYS.filter((each) => (each === day ? e.target.checked : items(path).includes(each)));
      set(path, days.length === 0 ? undefined : days);
    },
  });
  box.checked = items(path).includes(day);
  return h('span', { class: 'check' }, box, h('label', { for: id }, day));
}

function weeks() {
  return section(
    'weeks',
    'Cook days',
    'Several batches, one after the other: dogs grow, packs and leftovers are carried over, the freezer fills and empties.',
    fault('horizon'),
    h('div', { class: 'fields' }, ...['weeks', 'cookDays', 'choose', 'pricePerSession'].map((each) => field(['horizon', each]))),
    h('fieldset', { class: 'card' }, h('legend', {}, 'Days of the week on which I can cook'), fault('horizon.cookOn'), ...DAYS.map(cookOn)),
    h('p', {}, button('Plan these weeks', () => dispatchEvent(new CustomEvent('ask-weeks')), { id: 'plan-weeks', class: 'main' })),
    h('p', { id: 'weeks-now', role: 'status' }),
    h('div', { id: 'weeks-answer' }),
  );
}

// The file's own text

function text() {
  const area = h('textarea', { id: 'text', rows: '28', spellcheck: 'false', 'aria-describedby': 'text-broken' });
  area.value = store.text;
  return section(
    'text',
    'The file’s text',
    'All that a scenario file can say, foods from their labels (“ownFoods”) and meals frozen before among it.',
    h('p', { class: 'fault', id: 'text-broken' }, store.broken ? `This is not valid JSON, so the steps cannot show it: ${store.broken}. Mend it here; nothing is lost.` : ''),
    h('p', {}, h('label', { for: 'text' }, 'text of the file')),
    area,
    h('p', {}, button('Take this text', () => dispatchEvent(new CustomEvent('take-text', { detail: area.value })), { id: 'take-text', class: 'main' })),
  );
}

export const STEPS = [
  ['dogs', 'Dogs', dogs],
  ['pantry', 'Pantry', pantry],
  ['kitchen', 'Kitchen', kitchen],
  ['wishes', 'Wishes', wishes],
  ['recipe', 'My recipe', recipe],
  ['weeks', 'Cook days', weeks],
  ['text', 'Text', text],
];
