import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { ensurePages } from '../../src/host/build-pages.ts';
import { PROGRAM } from '../../src/host/home.ts';
import { readStartOptions } from '../../src/host/options.ts';
import { ask, enter, windowHeaders } from '../support/ask.ts';
import { noBrowser } from '../support/browser.ts';
import { startStandIn } from '../support/stand-in-host.ts';

const sockets: Socket[] = [];
const running: ChildProcess[] = [];
afterAll(() => {
  for (const socket of sockets) socket.destroy();
  for (const child of running) child.kill('SIGKILL');
});

function open(port: number, text: string): { socket: Socket; ended: Promise<string> } {
  const socket = connect(port, '127.0.0.1');
  sockets.push(socket);
  let told = '';
  socket.on('data', (part) => (told += part.toString()));
  socket.on('error', () => {});
  socket.write(text);
  return { socket, ended: new Promise((resolve) => socket.on('close', () => resolve(told))) };
}

describe('slow clients', () => {
  test('a body that comes byte by byte is cut off, and never reaches the store', async () => {
    const { host, store } = await startStandIn({ headersMs: 400, requestMs: 900 });
    const cookie = await enter(host);
    const headers = { ...windowHeaders(host, cookie), host: `127.0.0.1:${host.port}` };
    const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`);
    const { socket, ended } = open(
      host.port,
      `POST /call/works.list HTTP/1.1\r\n${lines.join('')}content-length: 1000\r\n\r\n`,
    );
    const drip = setInterval(() => socket.write('x'), 100);
    const told = await ended;
    clearInterval(drip);
    expect(told).toMatch(/^(HTTP\/1\.1 408 |$)/);
    expect(store.calls).toEqual([]);
    await host.close();
  });

  test('200 connections that say half a word keep nobody else from being answered', async () => {
    const { host } = await startStandIn({ headersMs: 5_000 });
    const cookie = await enter(host);
    const half = Array.from({ length: 200 }, () => open(host.port, 'GET / HTTP/1.1\r\nho'));
    const reply = await ask(host, { path: '/', headers: { cookie } });
    expect(reply.status).toBe(200);
    for (const { socket } of half) socket.destroy();
    await host.close();
  });
});

describe('a name that is turned to this computer', () => {
  test('finds nothing here, not even with the start key, and does not use the key up', async () => {
    const { host } = await startStandIn();
    const start = new URL(host.newStartUrl());
    const foreign = { host: `rebound.example:${host.port}` };
    const reply = await ask(host, { path: start.pathname, headers: foreign });
    expect(reply.status).toBe(403);
    expect(reply.headers['set-cookie']).toBeUndefined();
    expect((await ask(host, { path: start.pathname })).status).toBe(303);
    await host.close();
  });

  test.skipIf(noBrowser)('and a real browser that was misled reads no page and makes no call', async () => {
    const { host, store } = await startStandIn();
    const browser = await chromium.launch({
      executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
      args: ['--no-sandbox', '--host-resolver-rules=MAP rebound.example 127.0.0.1'],
    });
    const page = await browser.newPage();
    const reply = await page.goto(
      `http://rebound.example:${host.port}${new URL(host.newStartUrl()).pathname}`,
    );
    expect(reply?.status()).toBe(403);
    const status = await page.evaluate(async () => {
      const headers = { 'content-type': 'application/json' };
      return (await fetch('/call/catalogue.info', { method: 'POST', headers, body: '{}' })).status;
    });
    expect(status).toBe(403);
    expect(store.calls).toEqual([]);
    await browser.close();
    await host.close();
  });
});

describe('idle shutdown', () => {
  test('comes when no connection has stood for the time, and not while one stands', async () => {
    const stop = vi.fn();
    const { host } = await startStandIn({ idle: { ms: 300, stop } });
    const cookie = await enter(host);
    const away = new AbortController();
    await fetch(`${host.origin}/events`, { headers: { cookie }, signal: away.signal });
    await new Promise((resolve) => setTimeout(resolve, 600));
    expect(stop).not.toHaveBeenCalled();
    away.abort();
    await vi.waitFor(() => expect(stop).toHaveBeenCalledTimes(1), { timeout: 15_000 });
    await host.close();
  });

  test('is asked for in minutes, and never happens otherwise', () => {
    expect(readStartOptions(['--idle', '30']).idle).toBe(30);
    expect(readStartOptions([]).idle).toBeUndefined();
    for (const minutes of ['0', '-1', 'soon', '1.5'])
      expect(() => readStartOptions([`--idle=${minutes}`])).toThrow('from 1 to 9999');
  });
});

describe('a signal in the middle of work', () => {
  beforeAll(() => ensurePages(() => {}));

  test('loses nothing that was acknowledged', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'edition-ledger-signal-')), 'a.ledger');
    const start = async () => {
      const env = { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: '/none', CI: 'true' };
      const entry = join(PROGRAM, 'src/host/start.ts');
      const child = spawn(process.execPath, [entry, '--no-open', '--catalogue', file], { env });
      running.push(child);
      const url = await new Promise<URL>((resolve) => {
        let told = '';
        child.stdout.on('data', (part: Buffer) => {
          told += part.toString();
          const found = /ready at (\S+)/.exec(told)?.[1];
          if (found) resolve(new URL(found));
        });
      });
      const entered = await fetch(url, { redirect: 'manual' });
      const cookie = entered.headers.get('set-cookie')?.split(';')[0] ?? '';
      const call = async (name: string, input: object) => {
        const headers = { cookie, origin: url.origin, 'content-type': 'application/json' };
        const body = JSON.stringify(input);
        const reply = await fetch(`${url.origin}/call/${name}`, { method: 'POST', headers, body });
        return (await reply.json()) as { ok: boolean; value: { tasks: { title: string }[] } };
      };
      const ended = new Promise<number | null>((resolve) => child.on('exit', resolve));
      return { child, call, ended };
    };
    const first = await start();
    const acknowledged: string[] = [];
    const calls = Array.from({ length: 120 }, async (_, n) => {
      const title = `Task ${n}`;
      const answer = await first.call('tasks.create', { title, dueOn: '2026-12-01' }).catch(() => undefined);
      if (answer?.ok) acknowledged.push(title);
      if (acknowledged.length === 20) first.child.kill('SIGTERM');
    });
    await Promise.all(calls);
    expect(await first.ended).toBe(0);
    expect(acknowledged.length).toBeGreaterThanOrEqual(20);
    expect(existsSync(`${file}-wal`)).toBe(false);
    const second = await start();
    const { value } = await second.call('tasks.list', { count: 500 });
    const kept = new Set(value.tasks.map(({ title }) => title));
    expect(acknowledged.filter((title) => !kept.has(title))).toEqual([]);
    second.child.kill('SIGTERM');
    expect(await second.ended).toBe(0);
  });
});
