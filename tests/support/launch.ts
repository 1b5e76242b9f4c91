import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { InputOf, OperationName, OutputOf } from '../../src/contract/index.ts';
import { ensurePages } from '../../src/host/build-pages.ts';
import { PAGES } from '../../src/host/home.ts';
import { startHost } from '../../src/host/server.ts';
import { startStore } from '../../src/thread/start.ts';

export interface LaunchOptions {
  /** An existing or new catalogue file; otherwise a new one in a folder that `stop` removes. */
  file?: string;
  /** A day that stands still, YYYY-MM-DD; otherwise the clock's. */
  today?: string;
  /** Fill the catalogue with the demo press first. */
  demo?: boolean;
}

export interface Launched {
  /** The address that lets one browser in, once. */
  startUrl: string;
  newStartUrl(): string;
  origin: string;
  file: string;
  /** Calls past the browser, to arrange or to look; throws on a refusal. */
  call<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>>;
  stop(): Promise<void>;
}

/** Starts the loopback host on a real catalogue file, with the pages built first when they are older than their sources. */
export async function launch(options: LaunchOptions = {}): Promise<Launched> {
  await ensurePages(() => {});
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-launch-'));
  const file = options.file ?? join(folder, 'catalogue.ledger');
  const store = await startStore({ file, ...(options.today === undefined ? {} : { today: options.today }) });
  const host = await startHost({ store, pages: PAGES });
  const call: Launched['call'] = async (name, input) => {
    const answer = await store.call(name, input);
    if (!answer.ok) throw new Error(`${name}: ${answer.error.code} ${answer.error.message}`);
    return answer.value as OutputOf<typeof name>;
  };
  if (options.demo) await call('catalogue.demo', {});
  return {
    startUrl: host.newStartUrl(),
    newStartUrl: host.newStartUrl,
    origin: host.origin,
    file,
    call,
    stop: async () => {
      await host.close();
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
