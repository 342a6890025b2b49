// Fields of a scenario. What each expects, and which words it chooses from, stands in the schema of scenario files.

import { get, set } from './store.js';

let schemas = {};
let faults = [];

export function useSchema(schema) {
  schemas = schema;
}

/** An element with attributes, listeners (on…) and children. */
export function h(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  Object.entries(attributes).forEach(([key, value]) => {
    if (value === undefined || value === null || value === false) {
      return;
    }
    if (key.startsWith('on')) {
      element.addEventListener(key.slice(2), value);
    } else {
      element.setAttribute(key, value === true ? '' : value);
    }
  });
  element.append(...children.flat().filter((child) => child !== null && child !== undefined));
  return element;
}

function schemaOf(path) {
  return path.reduce((node, key) => (typeof key === 'number' ? node?.items : node?.properties?.[key]), schemas) ?? {};
}

/** The way faults name a field: dogs[1].weight. */
export function pathWords(path) {
  return path.reduce((words, key) => (typeof key === 'number' ? `${words}[${key}]` : words ? `${words}.${key}` : key), '');
}

function words(name) {
  return String(name).replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function hint(schema) {
  const parts = [];
  if (schema.description) {
    parts.push(schema.description);
  }
  if (schema.type === 'integer' && schema.minimum !== undefined) {
    parts.push(`${schema.minimum} to ${schema.maximum}`);
  }
  if (schema.default !== undefined && schema.type !== 'boolean') {
    parts.push(`usual: ${schema.default}`);
  }
  return parts.join('; ');
}

function example(schema) {
  return (schema.examples ?? []).join(' or ') || (schema.format === 'date' ? 'year-month-day' : '');
}

/** What was typed becomes what the file holds; what cannot is kept as typed, and the fault says what was expected. */
function valueOf(schema, text) {
  const typed = text.trim();
  if (typed === '') {
    return undefined;
  }
  if (schema.type === 'integer' && /^\d{1,9}$/.test(typed)) {
    return Number(typed);
  }
  if (schema.type === 'array') {
    return typed.split(',').map((part) => part.trim()).filter((part) => part !== '');
  }
  if (schema.anyOf?.some((each) => each.type === 'boolean') && /^(true|all)$/i.test(typed)) {
    return true;
  }
  return typed;
}

function shown(value) {
  if (value === undefined || value === null) {
    return '';
  }
  return Array.isArray(value) ? value.join(', ') : typeof value === 'object' ? JSON.stringify(value) : String(value);
}

let number = 0;

/** One field with its label, what it expects, and room for its faults. */
export function field(path, { label, live, className = '' } = {}) {
  const schema = schemaOf(path);
  const id = `f${number++}`;
  const value = get(path);
  const name = label ?? words(path[path.length - 1]);
  const about = hint(schema);
  const described = about ? `${id}h ${id}f` : `${id}f`;
  const common = { id, 'data-path': pathWords(path), 'aria-describedby': described };
  let control;
  if (schema.type === 'boolean') {
    control = h('input', { ...common, type: 'checkbox', onchange: (e) => set(path, e.target.checked === (schema.default ?? false) ? undefined : e.target.checked) });
    control.checked = value ?? schema.default ?? false;
    return h('div', { class: `field check ${className}` }, control, h('label', { for: id }, name), about ? h('p', { class: 'hint', id: `${id}h` }, about) : null, h('p', { class: 'fault', id: `${id}f`, 'data-fault': pathWords(path) }));
  }
  if (schema.enum) {
    control = h('select', { ...common, onchange: (e) => set(path, e.target.value || undefined) }, h('option', { value: '' }, schema.default ? `${schema.default} (usual)` : '–'));
    const choices = schema.enum.includes(value) || value === undefined ? schema.enum : [...schema.enum, shown(value)];
    choices.forEach((choice) => control.append(h('option', { value: choice }, choice)));
    control.value = shown(value);
  } else {
    control = h('input', {
      ...common,
      type: 'text',
      inputmode: schema.type === 'integer' ? 'numeric' : undefined,
      placeholder: example(schema),
      autocomplete: 'off',
      spellcheck: 'false',
      [live ? 'oninput' : 'onchange']: (e) => set(path, valueOf(schema, e.target.value)),
    });
    control.value = shown(value);
  }
  return h(
    'div',
    { class: `field ${className}` },
    h('label', { for: id }, name),
    control,
    about ? h('p', { class: 'hint', id: `${id}h` }, about) : null,
    h('p', { class: 'fault', id: `${id}f`, 'data-fault': pathWords(path) }),
  );
}

const MEASURE = /^\s*(\d*\.?\d+)\s*([a-zA-Z][a-zA-Z .]*)\s*$/;

/** A field for a measure, with a slider from half of what it was to half more. */
export function slider(path, label) {
  const whole = field(path, { live: true });
  const input = whole.querySelector('input');
  const read = () => MEASURE.exec(input.value);
  const begin = read();
  if (!begin) {
    return whole;
  }
  const middle = Number(begin[1]);
  const step = middle >= 20 ? 0.5 : 0.1;
  const range = h('input', {
    type: 'range',
    min: (middle / 2).toFixed(1),
    max: (middle * 1.5).toFixed(1),
    step,
    'aria-label': `${label}, slide`,
    oninput: (e) => {
      dispatchEvent(new CustomEvent('tried'));
      const unit = read()?.[2] ?? begin[2];
      input.value = `${Number(e.target.value)} ${unit.trim()}`;
      input.dispatchEvent(new Event('input'));
    },
  });
  range.value = middle;
  input.addEventListener('input', () => {
    const now = read();
    if (now) {
      range.value = now[1];
    }
  });
  input.after(range);
  return whole;
}

export function showFaults(all) {
  faults = all;
  placeFaults();
}

/** Each fault stands at its field; gives those that have none. */
export function placeFaults() {
  document.querySelectorAll('[data-fault]').forEach((slot) => {
    slot.textContent = '';
  });
  document.querySelectorAll('[data-path]').forEach((control) => control.removeAttribute('aria-invalid'));
  return faults.filter(({ path, message }) => {
    const slot = document.querySelector(`[data-fault="${CSS.escape(path)}"]`);
    if (!slot) {
      return true;
    }
    slot.textContent = slot.textContent ? `${slot.textContent}; ${message}` : message;
    document.querySelector(`[data-path="${CSS.escape(path)}"]`)?.setAttribute('aria-invalid', 'true');
    return false;
  });
}
