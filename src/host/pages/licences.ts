import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

/** What somebody else made and this program carries. */
export interface Licence {
  name: string;
  version: string;
  /** SPDX expression, such as `MIT`. */
  licence: string;
  /** The licence's own words with its copyright line, as the package brings them. */
  text: string;
}

interface Manifest {
  name: string;
  version: string;
  license?: string;
  author?: string | { name?: string };
  dependencies?: Record<string, string>;
}

/** How the MIT licence begins; some packages bring its words and do not name it. */
const MIT_WORDS =
  /permission is hereby granted, free of charge, to any person obtaining a copy\s+of this software/i;

/** Brought along to run the program from its sources; a packaged program has Electron's own. */
const NOT_CARRIED = /^node(-|$)/;

function manifestOf(folder: string): Manifest {
  return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Manifest;
}

/** The folder in which a package finds another: its own node_modules, or one further out. */
function folderOf(name: string, from: string, program: string): string | undefined {
  for (let at = from; at.startsWith(program); at = join(at, '..')) {
    const folder = join(at, 'node_modules', name);
    if (existsSync(join(folder, 'package.json'))) return folder;
  }
  return undefined;
}

/**
 * Where the words of a licence stand when a package names it and brings no text; its copyright line is put in place
 * of the lender's. The Unlicense asks for none.
 */
const LENDERS: Record<string, string> = {
  MIT: 'LICENSE',
  ISC: 'node_modules/semver/LICENSE',
  'Apache-2.0': 'node_modules/typescript/LICENSE',
};

function lentText(program: string, { name, license, author }: Manifest): string {
  const lender = LENDERS[license ?? ''];
  const holder = (typeof author === 'string' ? author : author?.name) ?? `the authors of ${name}`;
  const claim = `Copyright (c) ${holder}`;
  if (lender === undefined) return `${license}. ${claim}. The package brings no text of its own.`;
  const words = readFileSync(join(program, lender), 'utf8').replaceAll('\r\n', '\n').trim();
  return `${claim}\n\n${words.replaceAll(/^copyright \(c\).*$/gim, '').trim()}`;
}

function textOf(folder: string, manifest: Manifest, program: string): string {
  const names = readdirSync(folder).filter((name) => /^(licen[cs]e|copying|notice)([.-]|$)/i.test(name));
  const texts = names
    .sort()
    .map((name) => readFileSync(join(folder, name), 'utf8').replaceAll('\r\n', '\n').trim());
  if (texts.length > 0) return texts.join('\n\n');
  return lentText(program, manifest);
}

/** The fonts that documents are set in are no package; their licence lies beside them. */
function fontsOf(program: string): Licence[] {
  const text = join(program, 'resources/fonts/OFL.txt');
  if (!existsSync(text)) return [];
  const words = readFileSync(text, 'utf8').replaceAll('\r\n', '\n').trim();
  return [{ name: 'Noto Sans and Noto Serif', version: 'fonts', licence: 'OFL-1.1', text: words }];
}

/**
 * Every package the program carries, found by following `dependencies` from the program's own package.json, in
 * order of name. Throws when one of them is not installed.
 */
export function collectLicences(program: string): Licence[] {
  const found = new Map<string, Licence>();
  const home = resolve(program);
  const visit = (folder: string) => {
    for (const name of Object.keys(manifestOf(folder).dependencies ?? {})) {
      if (NOT_CARRIED.test(name)) continue;
      const at = folderOf(name, folder, home);
      if (at === undefined) throw new Error(`${name} is not installed; run npm ci.`);
      const manifest = manifestOf(at);
      const key = `${manifest.name}@${manifest.version}`;
      if (found.has(key)) continue;
      const text = textOf(at, manifest, home);
      const licence = manifest.license ?? (MIT_WORDS.test(text) ? 'MIT' : 'not named');
      found.set(key, { name: manifest.name, version: manifest.version, licence, text });
      visit(at);
    }
  };
  visit(home);
  return [...found.values(), ...fontsOf(home)].toSorted((a, b) => a.name.localeCompare(b.name));
}

/** The licences as one text, for a file beside the packaged program. */
export function licencesText(licences: readonly Licence[]): string {
  const parts = licences.map(
    ({ name, version, licence, text }) => `${name} ${version} (${licence})\n\n${text}\n`,
  );
  return [
    'Edition Ledger carries these packages. Electron, Chromium and Node.js have files of their own beside this one.\n',
    ...parts,
  ].join(`\n${'-'.repeat(72)}\n\n`);
}
