// Everything the page asks the program. What is asked travels in the body, so that no name of a pet
// or owner stands in an address.

/** An answer that is no success: `message` is for people, `conflicts` may be there. */
export class Refusal extends Error {
  constructor(status, body) {
    super(body?.error ?? '');
    this.status = status;
    this.code = body?.code;
    this.about = body?.about; // whom it is about
    this.conflicts = body?.conflicts;
  }
}

async function answer(response) {
  const body = response.headers.get('Content-Type')?.startsWith('application/json') ? await response.json() : null;
  if (!response.ok) throw new Refusal(response.status, body);
  return body;
}

/** @throws Refusal; TypeError where the program is not there any more */
export async function ask(name, question = {}, {last = false} = {}) {
  return answer(await fetch(`api/${name}`, {
    method: 'POST', body: JSON.stringify(question), keepalive: last,
    headers: {'Content-Type': 'application/json'},
  }));
}

/** A picture for a visit; the answer's path goes into its file. */
export async function sendPhoto(visit, file) {
  const id = btoa(String.fromCharCode(...new TextEncoder().encode(visit)))
    .replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
  return answer(await fetch('api/photo', {
    method: 'POST', body: file, headers: {'Content-Type': file.type, 'X-Furnish-For': id},
  }));
}

/** Tells of files that others changed, and whether the program can be reached. */
export function listen(changed, reached) {
  const events = new EventSource('api/events');
  events.addEventListener('changed', event => changed(JSON.parse(event.data)));
  events.addEventListener('open', () => reached(true));
  events.addEventListener('error', () => reached(false));
}

/** Opens the PDF in a tab of its own. The tab is made before the answer comes: browsers allow one only
 *  while a click is being handled. */
export async function print(what) {
  const tab = window.open('about:blank', '_blank');
  try {
    const {url} = await ask('print', {what});
    if (tab) tab.location.href = new URL(url, location.href).href;
    return url;
  } catch (problem) {
    tab?.close();
    throw problem;
  }
}
