import { createRequire } from 'node:module';
import { FuseV1Options } from '@electron/fuses';
import { expect, test } from 'vitest';

const packing = createRequire(import.meta.url)('../../electron-builder.cjs') as {
  electronFuses: Record<string, boolean>;
  publish: unknown;
  mac: { notarize: boolean; hardenedRuntime: boolean };
  fileAssociations: { ext: string }[];
};

/** Electron's own name of a fuse for the packer's: `runAsNode` is RunAsNode. */
const nameOf = (option: string) => option.charAt(0).toUpperCase() + option.slice(1);

test('every fuse that is set is one Electron has, and each is set the safe way', () => {
  const known = Object.keys(FuseV1Options).filter((name) => Number.isNaN(Number(name)));
  for (const option of Object.keys(packing.electronFuses)) expect(known).toContain(nameOf(option));
  expect(packing.electronFuses).toEqual({
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
  });
  // The one left as Electron has it: traps of WebAssembly make its checks quicker and grant nothing.
  const decided = new Set(Object.keys(packing.electronFuses).map(nameOf));
  expect(known.filter((name) => !decided.has(name))).toEqual(['WasmTrapHandlers']);
});

test('nothing is published or asked for, catalogues belong to the program, and notarising needs the environment', () => {
  expect(packing.publish).toBeNull();
  expect(packing.fileAssociations.map(({ ext }) => ext)).toEqual(['ledger']);
  expect(packing.mac).toMatchObject({ notarize: false, hardenedRuntime: true });
});
