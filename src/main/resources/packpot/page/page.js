// Puts the page together: files, steps, and what follows a change.

import { json, page, Refused, wanted } from './ask.js';
import { canRedo, canUndo, isDirty, keepNow, onChange, open, redo, replace, resume, save, set, store, undo } from './store.js';
import { h, placeFaults, useSchema } from './form.js';
import { know, STEPS } from './steps.js';
import { askFor, forget, listen, plan } from './plan.js';

const $ = (id) => document.getElementById(id);
const NEW = { packpot: 1, name: 'My dogs', dogs: [], kitchen: { days: 7 }, pantry: [] };
let step = 'dogs';
let files = [];

// Notices: what a person must decide or know, each until it is dealt with.

function notice(words, ...actions) {
  const box = h('div', { class: 'notice' }, h('p', {}, words));
  const close = () => box.remove();
  actions.forEach(([label, act]) => box.append(h('button', { type: 'button', onclick: () => {
    close();
    act?.();
  } }, label), ' '));
  if (actions.length === 0) {
    box.append(h('button', { type: 'button', onclick: close }, 'Understood'));
  }
  $('notices').append(box);
}

function failed(e) {
  notice(e instanceof Refused ? e.message : `Something went wrong in this page: ${e.message}`);
}

// Steps

function showStep(id, focus) {
  step = store.doc ? id : 'text';
  document.querySelectorAll('#steps button').forEach((button) => {
    const here = button.dataset.step === step;
    here ? button.setAttribute('aria-current', 'step') : button.removeAttribute('aria-current');
    button.disabled = !store.doc && button.dataset.step !== 'text';
  });
  document.querySelectorAll('.step').forEach((section) => {
    section.hidden = section.id !== `step-${step}`;
  });
  if (focus) {
    $(`title-${step}`).focus();
  }
}

/** Builds the form anew; the field that had the focus has it again. */
function build() {
  const focused = document.activeElement?.dataset?.path ?? null;
  const id = document.activeElement?.id ?? '';
  const open = [...document.querySelectorAll('#form details[open] > summary')].map((each) => `${each.closest('fieldset')?.querySelector('legend')?.textContent ?? ''}/${each.textContent}`);
  const answers = ['recipe-answer', 'weeks-answer'].map((each) => [each, $(each)]);
  $('form').replaceChildren(...(store.doc ? STEPS : STEPS.filter(([each]) => each === 'text')).map(([, , make]) => make()));
  answers.forEach(([each, old]) => old && $(each)?.replaceWith(old));
  document.querySelectorAll('#form details > summary').forEach((each) => {
    each.parentElement.open = open.includes(`${each.closest('fieldset')?.querySelector('legend')?.textContent ?? ''}/${each.textContent}`);
  });
  showStep(step, false);
  placeFaults();
  const back = focused ? document.querySelector(`[data-path="${CSS.escape(focused)}"]`) : id ? $(id) : null;
  back?.focus();
}

function goTo(path) {
  const control = document.querySelector(`[data-path="${CSS.escape(path)}"]`) ?? document.querySelector(`[data-fault="${CSS.escape(path)}"]`);
  const section = control?.closest('.step');
  if (section) {
    showStep(section.id.replace('step-', ''), false);
    const details = control.closest('details');
    if (details) {
      details.open = true;
    }
    control.focus();
    control.scrollIntoView({ block: 'center' });
  }
}

// Files

function bar() {
  $('household').textContent = store.doc?.name || store.name || 'Packpot';
  document.title = `${isDirty() ? '• ' : ''}${store.doc?.name || store.name || 'Packpot'}`;
  $('saved').textContent = store.name === '' ? '' : isDirty() ? 'not saved; kept for the next start' : 'saved';
  $('undo').disabled = !canUndo();
  $('redo').disabled = !canRedo();
  const names = files.includes(store.name) || store.name === '' ? files : [...files, store.name].sort();
  $('file').replaceChildren(h('option', { value: '' }, 'choose…'), ...names.map((name) => h('option', { value: name }, name)));
  $('file').value = store.name;
}

async function openFile(name) {
  try {
    const file = await json('GET', 'api/file', { name });
    await keepNow();
    $('notices').replaceChildren();
    forget();
    open(name, file.text, file.version);
    history.replaceState(null, '', withFile(name));
    file.drafts.forEach((draft) => offer(name, draft, file.version));
  } catch (e) {
    failed(e);
    bar();
  }
}

function withFile(name) {
  const address = new URL(location.href);
  address.searchParams.set('file', name);
  return address.href;
}

/** Unsaved work of this page is there again; that of another is offered. */
function offer(name, draft, version) {
  const { base, text } = JSON.parse(draft.draft);
  const at = new Date(draft.savedAt).toLocaleString('en');
  const changed = base === version ? '' : ' The file itself was changed since; saving will ask you first.';
  if (draft.page === page) {
    resume(text, base);
    notice(`Your unsaved work of ${at} is back.${changed}`, ['Good'], ['Go back to the file', () => openAsSaved(name)]);
    return;
  }
  notice(
    `There is unsaved work on ${name} of ${at}, from another page or an earlier start.${changed}`,
    ['Take it over', async () => {
      resume(text, base);
      await json('DELETE', 'api/draft', { name, page: draft.page }).catch(failed);
    }],
    ['Throw it away', () => json('DELETE', 'api/draft', { name, page: draft.page }).catch(failed)],
    ['Leave it'],
  );
}

async function openAsSaved(name) {
  try {
    const file = await json('GET', 'api/file', { name });
    open(name, file.text, file.version);
    await keepNow();
  } catch (e) {
    failed(e);
  }
}

async function saveFile(name = store.name, base = name === store.name ? store.version : '') {
  try {
    await save(name, base);
    if (!files.includes(name)) {
      files = [...files, name].sort();
    }
    history.replaceState(null, '', withFile(name));
    bar();
  } catch (e) {
    if (e.status === 409 && e.data.version !== undefined && name === store.name) {
      notice(
        `Not saved: ${e.message}. Your work stays here.`,
        ['Save under another name', saveAs],
        ['Open what is there now', () => openFile(name)],
        ['Write over it', () => saveFile(name, e.data.version)],
      );
    } else {
      failed(e);
    }
  }
}

function saveAs() {
  const input = h('input', { type: 'text', id: 'new-name', value: store.name.replace(/\.json$/, ''), autocomplete: 'off' });
  const box = h('form', { class: 'notice' }, h('label', { for: 'new-name' }, 'Name of the new file '), input, h('button', { type: 'submit' }, 'Save'), h('button', { type: 'button', onclick: () => box.remove() }, 'Do not'));
  box.addEventListener('submit', (e) => {
    e.preventDefault();
    box.remove();
    saveFile(`${input.value.trim().replace(/\.json$/, '')}.json`);
  });
  $('notices').append(box);
  input.focus();
}

function newFile() {
  let name = 'my-dogs.json';
  for (let i = 2; files.includes(name); i++) {
    name = `my-dogs-${i}.json`;
  }
  forget();
  open(name, `${JSON.stringify(NEW, null, 2)}\n`, '');
  showStep('dogs', true);
}

// What follows what

const QUICK_MS = 8;
let soon = null;

function planSoon() {
  clearTimeout(soon);
  soon = setTimeout(plan, QUICK_MS);
}

onChange((what) => {
  bar();
  if (what === 'opened' || what === 'shaped') {
    build();
  }
  if (what instanceof Refused) {
    $('saved').textContent = `not saved and not kept: ${what.message}`;
  }
  if (what === 'opened' || what === 'shaped' || what === 'edited') {
    if (!store.doc) {
      showStep('text', false);
    }
    what === 'edited' ? planSoon() : plan();
  }
});

function keys(e) {
  const control = e.ctrlKey || e.metaKey;
  const typing = /^(INPUT|TEXTAREA)$/.test(e.target.tagName) && e.target.type !== 'range' && e.target.type !== 'checkbox';
  if (control && e.key === 's') {
    e.preventDefault();
    saveFile();
  } else if (control && e.key.toLowerCase() === 'z' && !typing) {
    e.preventDefault();
    e.shiftKey ? redo() : undo();
  }
}

async function start() {
  STEPS.forEach(([id, title]) => $('steps').append(h('li', {}, h('button', { type: 'button', 'data-step': id, onclick: () => showStep(id, true) }, title))));
  listen();
  $('file').addEventListener('change', (e) => e.target.value && openFile(e.target.value));
  $('new').addEventListener('click', newFile);
  $('save').addEventListener('click', () => saveFile());
  $('save-as').addEventListener('click', saveAs);
  $('undo').addEventListener('click', undo);
  $('redo').addEventListener('click', redo);
  addEventListener('keydown', keys);
  addEventListener('rebuild', build);
  addEventListener('goto', (e) => goTo(e.detail));
  addEventListener('take-text', (e) => replace(e.detail));
  addEventListener('ask-weeks', () => askFor('weeks'));
  addEventListener('ask-recipe', () => askFor('recipe', (line) => {
    document.querySelectorAll('[data-recipe]').forEach((button) => {
      button.addEventListener('click', () => {
        set(['recipe'], line.recipes[Number(button.dataset.recipe)]);
        build();
      });
    });
  }));
  try {
    const told = await json('GET', 'api/start');
    files = told.files;
    useSchema(told.scenario);
    know(told);
    bar();
    const first = wanted && files.includes(wanted) ? wanted : files.length === 1 ? files[0] : null;
    if (first) {
      await openFile(first);
    } else if (files.length === 0) {
      newFile();
    } else {
      $('form').replaceChildren(h('section', { class: 'step' }, h('h2', {}, 'Which household?'), h('ul', {}, ...files.map((name) => h('li', {}, h('button', { type: 'button', onclick: () => openFile(name) }, name))))));
    }
  } catch (e) {
    failed(e);
  }
}

start();
