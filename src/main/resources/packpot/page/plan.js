// The plan beside the form: it follows every change; the newest change wins.

import { ask, link, Refused, stop } from './ask.js';
import { patch, replace, set, store } from './store.js';
import { h, placeFaults, showFaults } from './form.js';

const $ = (id) => document.getElementById(id);
let kept = null;
let shownText = null;
let whyAsked = false;
let begun = 0;
let pressed = false;
let waiting = [];

export function forget() {
  kept = null;
  shownText = null;
  $('plan-body').replaceChildren();
  $('beside').hidden = true;
  $('sheets').hidden = true;
}

function now(words, busy) {
  $('plan-now').textContent = words;
  $('cancel').hidden = !busy;
  $('plan').setAttribute('aria-busy', String(busy));
}

function summary(words) {
  $('summary').textContent = words;
}

function html(element, text) {
  element.innerHTML = text;
}

function told(words, className = 'fault') {
  return h('p', { class: className }, words);
}

function stale() {
  $('plan-body').classList.add('stale');
}

/** A line of an answer is shown once nothing is pressed: what is built anew under a pointer gets no click. */
function whenReleased(show) {
  if (pressed) {
    waiting.push(show);
  } else {
    show();
  }
}

function released() {
  pressed = false;
  // The click comes after the release; where it asks anew, the old lines are of no use any more.
  setTimeout(() => {
    const shows = waiting;
    waiting = [];
    shows.forEach((show) => show());
  });
}

function energies(dogs) {
  dogs.forEach((dog, i) => {
    const line = document.querySelector(`[data-dog="${i}"]`);
    if (line) {
      line.replaceChildren(...(dog.words ? [h('b', {}, dog.words), ` – ${dog.how}`] : ['The energy is told once weight and age are there.']));
    }
  });
}

function faultsTold(all) {
  showFaults(all);
  const rest = placeFaults();
  $('faults').replaceChildren(
    ...(all.length === 0
      ? []
      : [
          h('p', { class: 'lead' }, all.length === 1 ? 'One thing is to be mended first:' : `${all.length} things are to be mended first:`),
          h('ul', {}, ...all.map(({ path, message }) => h('li', {}, path && !rest.some((each) => each.path === path) ? h('a', { href: '#', 'data-goto': path }, path) : path, `${path ? ': ' : ''}${message}`))),
        ]),
  );
}

function onLine(line, text) {
  if (line.now !== undefined) {
    now(`${line.now || 'Planning'}, ${((performance.now() - begun) / 1000).toFixed(0)} s`, true);
  }
  if (line.dogs) {
    energies(line.dogs);
  }
  if (line.faults) {
    faultsTold(line.faults);
    stale();
    now('', false);
    summary('Not planned: something is to be mended first');
  }
  if (line.failed) {
    html($('plan-body'), '');
    $('plan-body').append(...line.failed.map((words) => told(words)));
    summary('No plan to show');
  }
  // Once it is asked what would mend it, what clashes comes with that answer.
  if (line.none !== undefined && !whyAsked) {
    html($('plan-body'), line.none);
    $('plan-body').classList.remove('stale');
    $('beside').hidden = true;
    $('sheets').hidden = true;
    summary('There is no plan that meets every wish');
  }
  if (line.plan) {
    html($('plan-body'), line.html);
    $('plan-body').classList.remove('stale');
    if (!line.first) {
      shownText = text;
      // While a household is entered for the first time there is nothing to keep yet, only half-typed ones.
      if (store.version !== '') {
        kept ??= text;
      }
    }
    $('beside').hidden = line.compared === '';
    html($('beside-body'), line.compared);
    $('sheets').hidden = line.first;
    $('sheets-html').href = link('sheets.html', { plan: line.plan });
    $('sheets-pdf').href = link('sheets.pdf', { plan: line.plan });
    summary(line.summary);
    dispatchEvent(new CustomEvent('planned', { detail: { ms: performance.now() - begun, first: line.first } }));
  }
}

/** Plans what stands on the page. */
export async function plan() {
  stop('why');
  whyAsked = false;
  if (!store.doc) {
    return;
  }
  waiting = [];
  begun = performance.now();
  const { text, name } = store;
  faultsTold([]);
  now('Planning', true);
  try {
    const newest = await ask('plan', { name, scenario: text, kept }, (line) => whenReleased(() => onLine(line, text)));
    if (newest) {
      now('', false);
    }
  } catch (e) {
    now(e instanceof Refused ? e.message : `Something went wrong in this page: ${e.message}`, false);
    stale();
  }
}

async function why() {
  whyAsked = true;
  begun = performance.now();
  $('ask-why').disabled = true;
  now('Looking for what would mend it', true);
  try {
    await ask('why', { name: store.name, scenario: store.text }, (line) => {
      if (line.now !== undefined) {
        now(`${line.now}, ${((performance.now() - begun) / 1000).toFixed(0)} s`, true);
      }
      if (line.html) {
        html($('plan-body'), line.html);
        document.querySelectorAll('[data-mend]').forEach((button) => {
          const edits = line.edits[Number(button.dataset.mend)];
          button.disabled = edits.length === 0;
          button.textContent = edits.length === 0 ? 'to be done by hand' : 'Do this';
          button.addEventListener('click', () => patch(edits));
        });
      }
      if (line.failed) {
        $('plan-body').prepend(...line.failed.map((words) => told(words)));
      }
    });
    now('', false);
  } catch (e) {
    now(e.message, false);
  }
}

/** A question of a step that is answered in that step. */
export async function askFor(kind, onDone) {
  const state = $(`${kind}-now`);
  const start = performance.now();
  state.textContent = 'At it';
  try {
    await ask(kind, { name: store.name, scenario: store.text }, (line) => {
      if (line.now !== undefined) {
        state.textContent = `${line.now}, ${((performance.now() - start) / 1000).toFixed(0)} s`;
      }
      if (line.html) {
        html($(`${kind}-answer`), line.html);
        onDone?.(line);
      }
      if (line.faults) {
        faultsTold(line.faults);
        $(`${kind}-answer`).replaceChildren(...line.faults.map(({ path, message }) => told(`${path}: ${message}`)));
      }
      if (line.failed) {
        $(`${kind}-answer`).replaceChildren(...line.failed.map((words) => told(words)));
      }
    });
    state.textContent = '';
  } catch (e) {
    state.textContent = e.message;
  }
}

export function listen() {
  addEventListener('tried', () => {
    kept ??= shownText;
  });
  $('plan').addEventListener('pointerdown', () => {
    pressed = true;
  });
  addEventListener('pointerup', released);
  addEventListener('pointercancel', released);
  addEventListener('pointermove', (e) => {
    // It was let go outside of the window.
    if (pressed && e.buttons === 0) {
      released();
    }
  });
  $('plan').addEventListener('click', (e) => {
    const strike = e.target.closest('[data-strike]');
    if (strike) {
      kept ??= shownText;
      set(['pantry', Number(strike.dataset.strike), 'outOfStock'], true);
      dispatchEvent(new CustomEvent('rebuild'));
    }
    if (e.target.id === 'ask-why') {
      why();
    }
    const goto = e.target.closest('[data-goto]');
    if (goto) {
      e.preventDefault();
      dispatchEvent(new CustomEvent('goto', { detail: goto.dataset.goto }));
    }
  });
  $('cancel').addEventListener('click', () => {
    stop('plan');
    stop('why');
    stale();
    now('Stopped; the plan below is the one before the last change.', false);
  });
  $('keep').addEventListener('click', () => {
    kept = shownText;
    $('beside').hidden = true;
    $('plan-title').focus();
  });
  $('back').addEventListener('click', () => {
    if (kept !== null) {
      replace(kept);
    }
  });
}
