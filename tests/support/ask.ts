import { request } from 'node:http';
import type { Host } from '../../src/host/server.ts';

export interface Asked {
  method?: string;
  path: string;
  headers?: Record<string, string>;
  body?: string | Uint8Array;
}

export interface Reply {
  status: number;
  headers: NodeJS.Dict<string | string[]>;
  text: string;
}

/** Sends a request exactly as written: no header is added but Host (unless given) and the body's length. */
export function ask(host: Host, { method = 'GET', path, headers = {}, body }: Asked): Promise<Reply> {
  return new Promise((resolve, reject) => {
    const sent = request(
      { host: '127.0.0.1', port: host.port, method, path, headers, agent: false },
      (reply) => {
        const parts: Buffer[] = [];
        reply.on('data', (part: Buffer) => parts.push(part));
        reply.on('error', reject);
        reply.on('end', () =>
          resolve({
            status: reply.statusCode ?? 0,
            headers: reply.headers,
            text: Buffer.concat(parts).toString('utf8'),
          }),
        );
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });
}

/** Opens the start address as a browser does and gives the cookie pair it was handed. */
export async function enter(host: Host): Promise<string> {
  const reply = await ask(host, { path: new URL(host.newStartUrl()).pathname });
  const cookie = reply.headers['set-cookie']?.[0]?.split(';')[0];
  if (cookie === undefined) throw new Error(`The start address answered ${reply.status} without a cookie.`);
  return cookie;
}

/** Headers that the window itself sends with a call. */
export function windowHeaders(host: Host, cookie: string): Record<string, string> {
  return { cookie, origin: host.origin, 'content-type': 'application/json', 'sec-fetch-site': 'same-origin' };
}
