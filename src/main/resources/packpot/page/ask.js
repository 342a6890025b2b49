// Questions to the server: whole answers, or answers that come in lines while the work goes on.

const address = new URLSearchParams(location.search);
export const token = address.get('token') ?? '';
export const wanted = address.get('file');

// A page keeps its name over reloads, so that its unsaved work is found again.
export const page = sessionStorage.getItem('page') ?? newName();
sessionStorage.setItem('page', page);

function newName() {
  return Array.from(crypto.getRandomValues(new Uint8Array(8)), (b) => b.toString(16).padStart(2, '0')).join('');
}

export class Refused extends Error {
  constructor(data, status) {
    super(data.message ?? 'the server refused');
    this.data = data;
    this.status = status;
  }
}

function query(fields) {
  return new URLSearchParams(Object.entries(fields).filter(([, value]) => value != null)).toString();
}

async function send(method, path, fields, body, more = {}) {
  let response;
  try {
    response = await fetch(`${path}?${query(fields)}`, {
      method,
      body,
      headers: { 'X-Packpot-Token': token },
      ...more,
    });
  } catch (e) {
    if (e.name === 'AbortError') {
      throw e;
    }
    throw new Refused({ message: 'Packpot does not answer; start "packpot page" again. What you typed stays here.' }, 0);
  }
  if (!response.ok) {
    throw new Refused(await response.json(), response.status);
  }
  return response;
}

export async function json(method, path, fields = {}, body = undefined, more = {}) {
  return (await send(method, path, { page, ...fields }, body, more)).json();
}

export function link(path, fields) {
  return `${path}?${query({ ...fields, token })}`;
}

const running = new Map();

export function stop(kind) {
  running.get(kind)?.abort();
  running.delete(kind);
}

/** Asks; the newest question of a kind takes the place of the one before. Gives false when it was itself replaced. */
export async function ask(kind, body, onLine) {
  stop(kind);
  const control = new AbortController();
  running.set(kind, control);
  try {
    const response = await send('POST', `api/${kind}`, { page: `${page}-${kind}` }, JSON.stringify(body), {
      signal: control.signal,
    });
    await lines(response, (line) => {
      if (line.refused) {
        throw new Refused(line.refused, 500);
      }
      if (running.get(kind) === control) {
        onLine(line);
      }
    });
    return running.get(kind) === control;
  } catch (e) {
    if (e.name === 'AbortError' || running.get(kind) !== control) {
      return false;
    }
    throw e instanceof Refused
      ? e
      : new Refused({ message: 'Packpot stopped in the middle; start "packpot page" again. What you typed stays here.' }, 0);
  } finally {
    if (running.get(kind) === control) {
      running.delete(kind);
    }
  }
}

async function lines(response, onLine) {
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    rest += value ?? '';
    const parts = rest.split('\n');
    rest = parts.pop();
    parts.filter((part) => part !== '').forEach((part) => onLine(JSON.parse(part)));
    if (done) {
      return;
    }
  }
}
