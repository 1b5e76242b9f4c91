import { type Context, Hono } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { Refusal } from '../contract/refusal.ts';
import { readJson } from './body.ts';
import { type Store, sendEvents } from './events.ts';
import { turnAway } from './guard.ts';
import type { Keys } from './keys.ts';
import { SECURITY_HEADERS } from './pages/headers.ts';
import { readPage } from './pages/page-file.ts';

/** What the routes stand on. */
export interface RoutesOptions {
  store: Store;
  keys: Keys;
  /** `http://127.0.0.1:PORT` */
  origin: string;
  /** Folder of the built pages. */
  pages: string;
  stopped: AbortSignal;
}

/** One sentence: as a refusal-shaped JSON for calls, as a bare page for people. */
function say(context: Context, status: ContentfulStatusCode, sentence: string): Response {
  // What is left of a refused body is not read on, so the line cannot be used again.
  if (context.req.method === 'POST') context.header('connection', 'close');
  if (context.req.path.startsWith('/call/')) {
    const code = status >= 500 ? 'INTERNAL' : 'BAD_INPUT';
    return context.json({ ok: false, error: { code, message: sentence } }, status);
  }
  if (context.req.header('accept')?.includes('text/html')) {
    const page = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Edition Ledger</title><p>${sentence}</p></html>`;
    return context.html(page, status);
  }
  return context.text(sentence, status);
}

function guardRoutes(routes: Hono, { keys, origin }: RoutesOptions): void {
  routes.use(async (context, next) => {
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) context.header(name, value);
    context.header('cache-control', 'no-store');
    const asked = {
      method: context.req.method,
      path: context.req.path,
      header: (name: string) => context.req.header(name),
    };
    const refused = turnAway(asked, origin, keys.knows(context.req.header('cookie')));
    return refused ? say(context, refused.status, refused.sentence) : next();
  });
}

/** Exchanges the start key for the window's cookie; the redirect takes the key out of the address bar. */
function startRoute(routes: Hono, { keys }: RoutesOptions): void {
  routes.get('/start/:key', (context) => {
    const windowKey = keys.exchange(context.req.param('key'));
    if (windowKey !== undefined) context.header('set-cookie', keys.cookie(windowKey));
    else if (!keys.knows(context.req.header('cookie'))) {
      return say(
        context,
        401,
        'This start address was used already or belongs to an earlier start; press Enter where Edition Ledger runs for a new one, or start it again.',
      );
    }
    return context.redirect('/', 303);
  });
}

/** Builds the host's routes: start, calls, events and the pages. */
export function buildRoutes(options: RoutesOptions): Hono {
  const { store, pages, stopped } = options;
  const routes = new Hono();
  guardRoutes(routes, options);
  startRoute(routes, options);
  routes.post('/call/:name', async (context) => {
    const body = await readJson(context.req.raw);
    if (!body.ok) return say(context, body.status, body.sentence);
    return context.json(await store.call(context.req.param('name'), body.value));
  });
  // The store is busy with the work that is called off, so this is no call of the contract.
  routes.post('/cancel/:job', (context) =>
    context.json({ ok: true, value: { cancelled: store.cancel(context.req.param('job')) } }),
  );
  routes.get('/events', (context) => sendEvents(context, store, stopped));
  routes.get('*', async (context) => {
    const page = await readPage(pages, context.req.path);
    if (page === undefined) return say(context, 404, 'There is nothing at this address.');
    return context.body(page.body, 200, { 'content-type': page.type });
  });
  routes.all('*', (context) => say(context, 405, 'Only GET is answered at this address.'));
  routes.onError((error, context) => {
    if (error instanceof Refusal) return context.json({ ok: false, error: error.body() }, 500);
    console.error(error);
    return say(context, 500, 'Edition Ledger could not answer; the terminal it runs in says why.');
  });
  return routes;
}
