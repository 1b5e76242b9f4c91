import type { Server } from 'node:http';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { getRequestListener } from '@hono/node-server';
import { Refusal } from '../contract/refusal.ts';
import type { Store } from './events.ts';
import { Keys } from './keys.ts';
import { buildRoutes } from './routes.ts';

const ADDRESS = '127.0.0.1';

export interface HostOptions {
  store: Store;
  /** Folder of the built pages. */
  pages: string;
  /** 0, the default, takes any free port. */
  port?: number;
  /** Milliseconds a client may take for its headers, and for a whole request. */
  headersMs?: number;
  requestMs?: number;
  /** Called once when no browser has held a connection for `ms`; left out, the host runs until it is stopped. */
  idle?: { ms: number; stop: () => void };
}

/** A running loopback host. */
export interface Host {
  /** `http://127.0.0.1:PORT` */
  origin: string;
  port: number;
  /** A new address that lets one browser in, once. */
  newStartUrl(): string;
  /** Stops listening, ends event streams and waits for answers under way. The store is the caller's to close. */
  close(): Promise<void>;
}

/** Calls `stop` when no connection has stood for `ms`; a window's event stream counts as one. */
function watchIdle(server: Server, { ms, stop }: { ms: number; stop: () => void }): void {
  let open = 0;
  let timer = setTimeout(stop, ms);
  server.on('connection', (socket) => {
    open += 1;
    clearTimeout(timer);
    socket.once('close', () => {
      open -= 1;
      if (open === 0 && server.listening) timer = setTimeout(stop, ms);
    });
  });
  server.once('close', () => clearTimeout(timer));
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      const why =
        error.code === 'EADDRINUSE'
          ? `Port ${port} is taken; choose another with --port, or leave it out.`
          : `Cannot listen on ${ADDRESS}:${port} (${error.code ?? error.message}); choose another with --port.`;
      reject(new Refusal('BAD_INPUT', why, 'port'));
    });
    server.listen(port, ADDRESS, () => resolve((server.address() as AddressInfo).port));
  });
}

/** Serves the pages and the contract on 127.0.0.1. Rejects with BAD_INPUT when the port cannot be had. */
export async function startHost(options: HostOptions): Promise<Host> {
  const { headersMs = 10_000, requestMs = 30_000 } = options;
  const stopped = new AbortController();
  const server = createServer({
    headersTimeout: headersMs,
    requestTimeout: requestMs,
    connectionsCheckingInterval: Math.min(5_000, headersMs / 2),
    keepAliveTimeout: 5_000,
    maxHeaderSize: 16 * 1024,
  });
  const port = await listen(server, options.port ?? 0);
  if (options.idle) watchIdle(server, options.idle);
  const origin = `http://${ADDRESS}:${port}`;
  const keys = new Keys(port);
  const { store, pages } = options;
  const routes = buildRoutes({ store, pages, keys, origin, stopped: stopped.signal });
  server.on('request', getRequestListener(routes.fetch, { hostname: ADDRESS }));
  return {
    origin,
    port,
    newStartUrl: () => `${origin}/start/${keys.newStartKey()}`,
    close: () =>
      new Promise((resolve) => {
        // Lines of ended event streams become idle a moment later; whatever still stands then is cut.
        const sweep = setInterval(() => server.closeIdleConnections(), 20);
        const cut = setTimeout(() => server.closeAllConnections(), 2_000);
        server.close(() => {
          clearInterval(sweep);
          clearTimeout(cut);
          resolve();
        });
        stopped.abort();
      }),
  };
}
