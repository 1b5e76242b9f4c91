import { describe, expect, test } from 'vitest';
import { isOwnBlob, isOwnPage, isPermitted, isTrustedSender, START_PAGE } from '../../electron/policy.ts';

describe('own pages', () => {
  test.each([
    START_PAGE,
    'app://edition-ledger',
    'app://edition-ledger/#/works/3',
    `${START_PAGE}assets/a.js`,
  ])('%s is one', (address) => expect(isOwnPage(address)).toBe(true));

  test.each([
    'https://edition-ledger/',
    'http://127.0.0.1:8000/',
    'file:///etc/passwd',
    'app://edition-ledger.example/',
    'app://other/',
    'app://user@edition-ledger/',
    'app://edition-ledger:80/',
    'app:edition-ledger',
    'https://site.example/?app://edition-ledger/',
    'https://app://edition-ledger/',
    'javascript:app://edition-ledger/',
    'data:text/html,app://edition-ledger/',
    'blob:app://edition-ledger/1',
    'about:blank',
    'devtools://devtools/bundled/inspector.html',
    '',
    'no address',
  ])('%s is none', (address) => expect(isOwnPage(address)).toBe(false));
});

describe('senders', () => {
  test('the main frame of an own page is heeded', () => {
    expect(isTrustedSender({ url: START_PAGE, parent: null })).toBe(true);
  });

  test('a frame that is gone, a frame inside a page and a foreign page are not', () => {
    expect(isTrustedSender(null)).toBe(false);
    expect(isTrustedSender({ url: START_PAGE, parent: { url: START_PAGE } })).toBe(false);
    expect(isTrustedSender({ url: 'https://site.example/', parent: null })).toBe(false);
  });
});

test('a file made in memory is an own page’s or not', () => {
  expect(isOwnBlob('blob:app://edition-ledger/3f0c')).toBe(true);
  for (const address of [
    'blob:https://site.example/3f0c',
    'blob:app://other/3f0c',
    'app://edition-ledger/a.csv',
    'blob:',
    'data:text/csv,a',
    'https://site.example/blob:app://edition-ledger/1',
  ])
    expect([address, isOwnBlob(address)]).toEqual([address, false]);
});

test('writing text to the clipboard and telling of due tasks are permitted, to own pages alone', () => {
  expect(isPermitted('notifications', START_PAGE)).toBe(true);
  expect(isPermitted('notifications', 'https://site.example/')).toBe(false);
  expect(isPermitted('clipboard-sanitized-write', START_PAGE)).toBe(true);
  expect(isPermitted('clipboard-sanitized-write', 'https://site.example/')).toBe(false);
  for (const permission of ['clipboard-read', 'media', 'geolocation', 'openExternal', 'unknown']) {
    expect(isPermitted(permission, START_PAGE)).toBe(false);
  }
});
