// Who may import whom. Real paths are seen, because workspaces are links into this tree.
const test = '(\\.test|/testing/[^/]+)\\.tsx?$';
const inside = (name) => `^(packages|apps)/${name}/`;

/** `name` may import from the other workspaces only what `may` lists (in full) and `types` lists (types only). */
function only(name, may, types = []) {
  const own = [name, ...may];
  const seen = [...own, ...types];
  const from = { path: inside(name), pathNot: test };
  const other = '^(packages|apps|tests)/';
  const list = (names) => `^(packages|apps)/(${names.join('|')})/`;
  return [
    { name: `${name}-reaches-too-far`, severity: 'error', from, to: { path: other, pathNot: list(seen) } },
    {
      name: `${name}-takes-more-than-types`,
      severity: 'error',
      from,
      to: { path: other, pathNot: list(own), dependencyTypesNot: ['type-only'] },
    },
  ];
}

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...only('carcass', []),
    ...only('plan', ['carcass']),
    ...only('kitchen', ['carcass']),
    ...only('books', ['carcass', 'plan']),
    ...only('solver', ['plan', 'carcass']),
    // Reading a day file takes exact units and the check of a day: docs/decisions/0003-day-file-in-contracts.md.
    ...only('contracts', ['carcass', 'plan'], ['books']),
    ...only('db', [], ['carcass', 'plan', 'books']),
    ...only('api', ['carcass', 'plan', 'books', 'kitchen', 'solver', 'contracts', 'db']),
    ...only('web', ['contracts', 'plan', 'books', 'carcass', 'kitchen', 'solver'], ['api']),
    ...only('cli', ['carcass', 'plan', 'kitchen', 'solver', 'contracts']),
    {
      name: 'only-through-the-door',
      comment: 'Another workspace is entered by its index.ts, or by an entry its package.json names.',
      severity: 'error',
      from: { path: '^(packages|apps)/([^/]+)/' },
      to: {
        path: '^(packages|apps)/[^/]+/src/',
        pathNot: [
          '^$1/$2/',
          '^(packages|apps)/[^/]+/src/index\\.ts$',
          '^packages/kitchen/src/curing\\.ts$',
          '^packages/db/src/testing/index\\.ts$',
        ],
      },
    },
    {
      name: 'testing-for-tests-only',
      severity: 'error',
      from: { path: '^(packages|apps|scripts)/', pathNot: test },
      to: { path: '^packages/[^/]+/src/testing/' },
    },
    {
      name: 'services-know-no-hono',
      severity: 'error',
      from: { path: '^apps/api/src/(services|jobs|solve)/', pathNot: test },
      to: { path: 'node_modules/(hono|@hono)/' },
    },
    {
      name: 'routes-know-no-sql',
      severity: 'error',
      from: { path: '^apps/api/src/http/', pathNot: test },
      to: {
        path: ['node_modules/(drizzle-orm|postgres|@electric-sql)/', '^packages/db/'],
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'sql-lives-in-db',
      severity: 'error',
      from: { path: '^(packages|apps)/', pathNot: ['^packages/db/', test] },
      to: { path: 'node_modules/(drizzle-orm|postgres|@electric-sql)/' },
    },
    {
      name: 'harness-for-tests-only',
      severity: 'error',
      from: { path: '^(packages|apps|scripts)/', pathNot: [test, '/testing/'] },
      to: { path: '^tests/' },
    },
    {
      name: 'no-cycles',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    { name: 'resolvable', severity: 'error', from: {}, to: { couldNotResolve: true } },
    {
      name: 'product-code-imports-no-dev-dependency',
      severity: 'error',
      from: { path: '^(packages|apps)/[^/]+/src/', pathNot: [test, '/testing/', '^apps/web/'] },
      to: { dependencyTypes: ['npm-dev'], dependencyTypesNot: ['type-only'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(apps|packages)/[^/]+/dist/' },
    tsPreCompilationDeps: true,
    combinedDependencies: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
      mainFields: ['module', 'main', 'types'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.cjs', '.json', '.d.ts'],
    },
  },
};
