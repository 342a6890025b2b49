// The scenario on the page: its document, what can be undone, and the unsaved work that the server keeps.

import { json, Refused } from './ask.js';

const KEEP_AFTER_MS = 250;
const SAME_EDIT_MS = 1200;
const MOST_STEPS = 200;

const listeners = new Set();
let undone = [];
let done = [];
let lastEdit = { path: '', at: 0 };
let keeping = null;

export const store = {
  name: '',
  /** Hash of the file that this work began from; empty for a new file. */
  version: '',
  /** The file's text as it was opened. */
  opened: '',
  /** The text as it stands. */
  text: '',
  /** The same read as JSON; null where it is none. */
  doc: null,
  /** Where it is no JSON, why. */
  broken: '',
};

export function onChange(listener) {
  listeners.add(listener);
}

function tell(what) {
  listeners.forEach((listener) => listener(what));
}

function read(text) {
  store.text = text;
  try {
    const doc = JSON.parse(text);
    store.doc = doc !== null && typeof doc === 'object' && !Array.isArray(doc) ? doc : null;
    store.broken = store.doc ? '' : 'a scenario is an object in braces';
  } catch (e) {
    store.doc = null;
    store.broken = e.message;
  }
}

export function open(name, text, version) {
  Object.assign(store, { name, version, opened: text });
  read(text);
  done = [];
  undone = [];
  lastEdit = { path: '', at: 0 };
  tell('opened');
}

/** Unsaved work takes the place of what the file holds. */
export function resume(text, base) {
  store.version = base;
  replace(text, 'opened');
}

export function isDirty() {
  return store.text !== store.opened;
}

export function get(path) {
  return path.reduce((node, key) => (node === undefined || node === null ? undefined : node[key]), store.doc);
}

function holder(path) {
  let node = store.doc;
  path.slice(0, -1).forEach((key, i) => {
    if (node[key] === undefined || node[key] === null || typeof node[key] !== 'object') {
      node[key] = typeof path[i + 1] === 'number' ? [] : {};
    }
    node = node[key];
  });
  return node;
}

function remember(path) {
  const now = Date.now();
  const same = lastEdit.path === path && path !== '' && now - lastEdit.at < SAME_EDIT_MS;
  if (!same) {
    done.push(store.text);
    done = done.slice(-MOST_STEPS);
  }
  undone = [];
  lastEdit = { path, at: now };
}

function written() {
  store.text = `${JSON.stringify(store.doc, null, 2)}\n`;
  keep();
}

/** Sets one field; undefined takes it away. */
export function set(path, value) {
  remember(JSON.stringify(path));
  const node = holder(path);
  const key = path[path.length - 1];
  if (value === undefined) {
    delete node[key];
  } else {
    node[key] = value;
  }
  tidy(path.slice(0, -1));
  written();
  tell('edited');
}

/** An object that holds nothing any more is left out, so that the file says what the person says. */
function tidy(path) {
  const node = get(path);
  const empty = path.length > 0 && node && !Array.isArray(node) && Object.keys(node).length === 0;
  if (empty && typeof path[path.length - 1] !== 'number') {
    delete holder(path)[path[path.length - 1]];
    tidy(path.slice(0, -1));
  }
}

export function add(path, value) {
  remember('');
  const list = get(path);
  if (Array.isArray(list)) {
    list.push(value);
  } else {
    holder(path)[path[path.length - 1]] = [value];
  }
  written();
  tell('shaped');
}

export function remove(path, index) {
  remember('');
  get(path).splice(index, 1);
  if (get(path).length === 0 && path.length > 1) {
    delete holder(path)[path[path.length - 1]];
    tidy(path.slice(0, -1));
  }
  written();
  tell('shaped');
}

/** Operations of JSON Patch (RFC 6902): add, replace and remove. */
export function patch(operations) {
  remember('');
  operations.forEach(({ op, path, value }) => {
    const keys = path.split('/').slice(1).map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
    let node = store.doc;
    keys.slice(0, -1).forEach((key) => {
      node = node[key];
    });
    const key = keys[keys.length - 1];
    if (Array.isArray(node)) {
      const at = key === '-' ? node.length : Number(key);
      node.splice(at, op === 'add' ? 0 : 1, ...(op === 'remove' ? [] : [value]));
    } else if (op === 'remove') {
      delete node[key];
    } else {
      node[key] = value;
    }
  });
  written();
  tell('shaped');
}

/** The whole text anew. */
export function replace(text, what = 'shaped') {
  if (text === store.text && what !== 'opened') {
    return;
  }
  if (what !== 'opened') {
    remember('');
  }
  read(text);
  keep();
  tell(what);
}

export const canUndo = () => done.length > 0;
export const canRedo = () => undone.length > 0;

function step(from, to) {
  const text = from.pop();
  if (text !== undefined) {
    to.push(store.text);
    lastEdit = { path: '', at: 0 };
    read(text);
    keep();
    tell('shaped');
  }
}

export const undo = () => step(done, undone);
export const redo = () => step(undone, done);

function keep() {
  clearTimeout(keeping);
  keeping = setTimeout(keepNow, KEEP_AFTER_MS);
}

/** Unsaved work goes to the server at once; it lies there when the page or the server is started again. */
export async function keepNow() {
  clearTimeout(keeping);
  keeping = null;
  if (store.name === '') {
    return;
  }
  try {
    if (isDirty()) {
      await json('PUT', 'api/draft', { name: store.name }, JSON.stringify({ base: store.version, text: store.text }), {
        keepalive: store.text.length < 60000,
      });
    } else {
      await json('DELETE', 'api/draft', { name: store.name });
    }
    tell('kept');
  } catch (e) {
    tell(e instanceof Refused ? e : 'kept');
  }
}

addEventListener('pagehide', () => {
  if (keeping !== null) {
    keepNow();
  }
});

/** Saves; the base is another than the version that was read where a later one is to be overwritten. */
export async function save(name = store.name, base = store.version) {
  const text = store.text;
  const { version } = await json('PUT', 'api/file', { name, base }, text);
  if (name !== store.name) {
    await json('DELETE', 'api/draft', { name: store.name });
  }
  Object.assign(store, { name, version, opened: text });
  if (store.text !== text) {
    keep();
  }
  tell('saved');
}
