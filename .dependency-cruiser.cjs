/**
 * The arrows of the map in DEVELOPERS.md. Each folder names what it may import inside the program; whatever else it
 * reaches for is an error. TypeScript 7 cannot be used as the parser here: nothing would be read and everything
 * would pass, so swc reads the files, and tests/host/arrows.test.ts plants wrong imports and sees them caught.
 */
const MAY_IMPORT = {
  'src/contract': [],
  'src/rules': ['src/contract', 'resources'],
  'src/store': ['src/contract'],
  'src/exchange': ['src/contract', 'src/rules', 'resources'],
  'src/records': ['src/contract', 'src/rules', 'src/store'],
  'src/commands': ['src/contract', 'src/rules', 'src/store', 'src/records', 'src/exchange', 'resources'],
  'src/queries': ['src/contract', 'src/rules', 'src/store', 'src/records', 'src/exchange', 'package.json'],
  'src/errands': ['src/contract', 'src/rules', 'src/store', 'src/exchange'],
  'src/readings': ['src/contract', 'src/store/staging[.]ts', 'src/exchange'],
  'src/(app|dispatch)[.]ts': [
    'src/(app|dispatch)[.]ts',
    'src/contract',
    'src/commands',
    'src/queries',
    'src/errands',
    'src/readings',
    'src/records',
    'src/store',
  ],
  'src/thread': ['src/app[.]ts', 'src/contract'],
  'src/host': ['src/app[.]ts', 'src/contract', 'src/exchange', 'src/thread'],
  'src/cli': [
    'src/app[.]ts',
    'src/contract',
    'src/exchange',
    'src/host/(home|run-with-node)[.]',
    'package.json',
  ],
  electron: [
    'src/app[.]ts',
    'src/contract',
    'src/exchange',
    'src/readings',
    'src/thread',
    'src/host/(home|log|body|pages/)',
  ],
  renderer: ['src/contract', 'src/rules/isbn'],
};

/** Everything inside the program; packages and Node's own modules are ruled separately below. */
const INSIDE = '^(src|electron|renderer|tests|resources|migrations|out|dist|[^/]+$)';

const arrows = Object.entries(MAY_IMPORT).map(([folder, allowed]) => ({
  name: `arrows of ${folder.replace(/\W+/g, ' ')}`,
  comment: `${folder} may import: itself, ${allowed.join(', ') || 'nothing else'}`,
  severity: 'error',
  from: { path: `^${folder}(/|$)` },
  to: {
    path: INSIDE,
    pathNot: [folder, ...allowed].map((path) => `^${path}`),
    dependencyTypesNot: ['core', 'npm', 'npm-dev', 'npm-optional'],
  },
}));

module.exports = {
  forbidden: [
    ...arrows,
    {
      name: 'no Node in what the pages share',
      severity: 'error',
      from: { path: '^(src/contract|src/rules|renderer)/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'the contract needs zod alone',
      severity: 'error',
      from: { path: '^src/contract/' },
      to: { path: 'node_modules', pathNot: 'node_modules/zod/' },
    },
    {
      name: 'SQLite only in the store and what opens it',
      severity: 'error',
      from: { pathNot: '^src/(store/|errands/|app[.]ts)' },
      to: { path: 'node_modules/better-sqlite3/' },
    },
    {
      name: 'SQL only behind the contract',
      severity: 'error',
      from: { pathNot: '^src/(store|commands|queries)/' },
      to: { path: 'node_modules/drizzle-orm/' },
    },
    {
      name: 'Electron only at its seam',
      severity: 'error',
      from: { path: '^(src|renderer)/' },
      to: { path: 'node_modules/electron/' },
    },
    {
      name: 'no test code in the program',
      severity: 'error',
      from: { path: '^(src|electron|renderer)/' },
      to: { path: '^tests/' },
    },
    {
      // Screens are loaded late and may look back at the list that loads them.
      name: 'no circles',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['dynamic-import'] } },
    },
    {
      name: 'every import leads somewhere',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    parser: 'swc',
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.js', '.json'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default'],
    },
  },
};
