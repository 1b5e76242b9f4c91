import { EventEmitter } from 'node:events';
import { expect, test, vi } from 'vitest';
import {
  type GuardedContents,
  type GuardedSession,
  guardContents,
  guardSession,
} from '../../electron/guards.ts';
import { START_PAGE } from '../../electron/policy.ts';
import { windowOptions } from '../../electron/window.ts';

const writeMail = vi.fn();

function guarded() {
  const contents = Object.assign(new EventEmitter(), { setWindowOpenHandler: vi.fn() });
  guardContents(contents as unknown as GuardedContents, writeMail);
  return contents;
}

function prevented(event: string, details: object): boolean {
  const preventDefault = vi.fn();
  guarded().emit(event, { ...details, preventDefault });
  return preventDefault.mock.calls.length > 0;
}

test('a page stays where it is', () => {
  const to = (url: string, isMainFrame = true) => prevented('will-frame-navigate', { url, isMainFrame });
  expect(to(START_PAGE)).toBe(false);
  expect(to('https://site.example/')).toBe(true);
  expect(to('https://site.example/?app://edition-ledger/')).toBe(true);
  expect(to('file:///etc/passwd')).toBe(true);
  expect(to(START_PAGE, false)).toBe(true);
});

test('a mail link goes to the mail program while the page stays, and nothing else goes there', () => {
  const to = (url: string, isMainFrame = true) => prevented('will-frame-navigate', { url, isMainFrame });
  expect(to('mailto:data@broadside-wholesale.example?subject=x')).toBe(true);
  expect(to('mailto:data@broadside-wholesale.example', false)).toBe(true);
  expect(to('https://site.example/mailto:')).toBe(true);
  expect(writeMail.mock.calls).toEqual([['mailto:data@broadside-wholesale.example?subject=x']]);
});

test('redirects and webviews are prevented and no window is opened', () => {
  expect(prevented('will-redirect', { url: START_PAGE })).toBe(true);
  expect(prevented('will-attach-webview', {})).toBe(true);
  const contents = guarded();
  const [handler] = contents.setWindowOpenHandler.mock.calls[0] as [(details: object) => object];
  expect(handler({ url: START_PAGE })).toEqual({ action: 'deny' });
});

test('permissions and devices are refused, whoever asks', () => {
  const session = {
    setPermissionRequestHandler: vi.fn(),
    setPermissionCheckHandler: vi.fn(),
    setDevicePermissionHandler: vi.fn(),
  };
  guardSession(session as unknown as GuardedSession);
  const request = session.setPermissionRequestHandler.mock.calls[0]?.[0];
  const answers: boolean[] = [];
  const from = (url: string) => ({ getURL: () => url });
  request(from(START_PAGE), 'media', (granted: boolean) => answers.push(granted));
  request(from(START_PAGE), 'clipboard-sanitized-write', (granted: boolean) => answers.push(granted));
  request(from('https://site.example/'), 'clipboard-sanitized-write', (granted: boolean) =>
    answers.push(granted),
  );
  expect(answers).toEqual([false, true, false]);
  const check = session.setPermissionCheckHandler.mock.calls[0]?.[0];
  expect(check(null, 'usb', START_PAGE)).toBe(false);
  expect(check(null, 'clipboard-sanitized-write', START_PAGE)).toBe(true);
  expect(session.setDevicePermissionHandler.mock.calls[0]?.[0]({})).toBe(false);
});

test('the window switches on nothing that Electron warns of: no insecure content, no experiments, no Blink features', () => {
  const { preload: _, ...preferences } = windowOptions('/preload.cjs').webPreferences ?? {};
  const on = Object.entries(preferences).flatMap(([name, value]) => (value ? [name] : []));
  expect(on).toEqual(['contextIsolation', 'sandbox', 'webSecurity']);
});

test('the window keeps isolation and sandbox and gives the page no Node', () => {
  expect(windowOptions('/preload.cjs').webPreferences).toMatchObject({
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webviewTag: false,
    webSecurity: true,
  });
});
