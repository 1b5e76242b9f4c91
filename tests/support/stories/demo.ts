import type { Story } from '../electron-module.ts';

/** The demo press through the page's own door: filled in, numbers looked at, a channel added, audited, read back. */
const story: Story = async ({ bridge, load, menu }) => {
  const seen: unknown[] = [];
  const stop = bridge.subscribe('changed', (data) => seen.push(data));
  const ask = async (name: string, input: object) => {
    const answer = await bridge.call(name, input);
    if (!answer.ok) throw new Error(`${name}: ${answer.error.message}`);
    return answer.value as Record<string, unknown>;
  };
  const start = await load('/');
  const named = [...start.text.matchAll(/(?:src|href)="([^"]+)"/g)].map((match) => match[1] ?? '');
  const files = await Promise.all(named.map((path) => load(path)));
  const demo = await ask('catalogue.demo', {});
  const info = await ask('catalogue.info', {});
  const status = await ask('catalogue.status', {});
  const audit = await ask('audit.run', {});
  const check = await ask('catalogue.check', {});
  const backup = await bridge.call('backups.make', {});
  const refused = await bridge.call('works.get', { workId: 'seven' });
  const unknown = await bridge.call('works.burn', {});
  const licences = JSON.parse((await load('/licences.json')).text) as { name: string }[];
  stop();
  return {
    start: { status: start.status, policy: start.policy },
    files: files.map(({ status, type, bytes }) => ({ status, type, some: bytes > 0 })),
    outside: (await load('/../package.json')).status,
    demo,
    name: info.name,
    formats: status.formats,
    audited: audit.demo,
    sound: check.ok,
    backup: backup.ok,
    refused,
    unknown,
    licences: licences.length,
    seen,
    menu: menu().map((item) => item.label ?? item.role),
  };
};

export default story;
