/**
 * What goes into the packaged program: the bundles, the built pages, the migrations and better-sqlite3 with the
 * native part of its own system and processor. The whole list stands under each system, since a list of only exclusions packs
 * everything and a common exclusion beats a system's inclusion.
 */
const files = (system) => [
  'out/electron/**',
  'dist/renderer/**',
  'migrations/**',
  // A dragged file's picture and the fonts of documents; the rest of resources/ is in the bundles or for installers.
  'resources/icons/64x64.png',
  'resources/fonts/**',
  'package.json',
  // Everything else is in the bundles; an inclusion after an exclusion would not bring a package back.
  '!node_modules/!(better-sqlite3)/**',
  '!node_modules/better-sqlite3/{deps,src}/**',
  '!node_modules/better-sqlite3/binding.gyp',
  `!node_modules/better-sqlite3/prebuilds/!(${system}-\${arch}*)`,
  '!**/*.{map,md,ts,mts,cts}',
];

/** Signing and notarisation of the macOS package happen only where the environment brings the means. */
const env = process.env;
const canNotarise = Boolean(
  (env.APPLE_API_KEY && env.APPLE_API_KEY_ID && env.APPLE_API_ISSUER) ||
    (env.APPLE_ID && env.APPLE_APP_SPECIFIC_PASSWORD && env.APPLE_TEAM_ID),
);

module.exports = {
  appId: 'org.edition-ledger.app',
  productName: 'Edition Ledger',
  copyright: 'Edition Ledger contributors',
  directories: { output: 'dist/packages', buildResources: 'resources' },
  asarUnpack: ['**/*.node'],
  npmRebuild: false,
  // New versions are fetched by hand: nothing here knows an address to ask, so nothing is asked.
  publish: null,
  fileAssociations: [
    {
      ext: 'ledger',
      name: 'Edition Ledger catalogue',
      description: 'Catalogue of Edition Ledger',
      mimeType: 'application/x-edition-ledger',
      role: 'Editor',
      icon: 'icons/icon',
    },
  ],
  extraFiles: [
    { from: 'out/licences.txt', to: 'LICENSES.packages.txt' },
    { from: 'LICENSE', to: 'LICENSE.edition-ledger.txt' },
  ],
  linux: {
    target: ['AppImage', 'deb'],
    category: 'Office',
    maintainer: 'Edition Ledger contributors',
    synopsis: 'ISBNs, editions, formats and channels of a small press',
    icon: 'resources/icons',
    files: files('linux'),
  },
  win: { target: ['nsis'], icon: 'resources/icons/icon.ico', files: files('win32') },
  nsis: {
    oneClick: false,
    perMachine: false,
    allowToChangeInstallationDirectory: true,
    // The catalogues are the user's own and stay when the program goes.
    deleteAppDataOnUninstall: false,
  },
  mac: {
    target: ['dmg', 'zip'],
    category: 'public.app-category.business',
    icon: 'resources/icons/icon.icns',
    hardenedRuntime: true,
    notarize: canNotarise,
    files: files('darwin'),
  },
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    loadBrowserProcessSpecificV8Snapshot: false,
    grantFileProtocolExtraPrivileges: false,
  },
};
