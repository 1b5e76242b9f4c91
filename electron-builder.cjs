/**
 * What goes into the packaged program: the bundles, the built pages, the migrations and better-sqlite3 with the
 * native part of its own system. The whole list stands under each system, since a list of only exclusions packs
 * everything and a common exclusion beats a system's inclusion.
 */
const files = (system) => [
  'out/**',
  'dist/renderer/**',
  'migrations/**',
  'resources/**',
  'package.json',
  'LICENSE',
  // Everything else is in the bundles; an inclusion after an exclusion would not bring a package back.
  '!node_modules/!(better-sqlite3)/**',
  '!node_modules/better-sqlite3/{deps,src}/**',
  '!node_modules/better-sqlite3/binding.gyp',
  `!node_modules/better-sqlite3/prebuilds/!(${system}-*)`,
];

module.exports = {
  appId: 'org.edition-ledger.app',
  productName: 'Edition Ledger',
  copyright: 'Edition Ledger contributors',
  directories: { output: 'dist/packages', buildResources: 'resources' },
  asarUnpack: ['**/*.node'],
  npmRebuild: false,
  publish: null,
  linux: {
    target: ['AppImage', 'deb'],
    category: 'Office',
    maintainer: 'Edition Ledger contributors',
    files: files('linux'),
  },
  win: { target: ['nsis'], files: files('win32') },
  mac: { target: ['dmg'], category: 'public.app-category.business', files: files('darwin') },
  electronFuses: {
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableCookieEncryption: true,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    grantFileProtocolExtraPrivileges: false,
    loadBrowserProcessSpecificV8Snapshot: false,
  },
};
