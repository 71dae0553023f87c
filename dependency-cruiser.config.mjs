import { existsSync, readdirSync } from 'node:fs';

/**
 * The law of directions: what a folder may import besides itself. A folder without a row fails.
 * `packages` are npm packages; `node` says whether Node's own modules are allowed (they are I/O, clock and environment).
 */
const core = {
  kernel: [],
  units: ['kernel'],
  money: ['kernel'],
  solver: ['kernel'],
  milp: ['kernel'],
  engineering: ['kernel', 'units'],
  equipment: ['kernel', 'units', 'money'],
  duty: ['kernel', 'units', 'engineering'],
  rules: ['kernel', 'units', 'engineering', 'equipment', 'duty'],
  kits: ['kernel', 'units', 'money', 'solver', 'engineering', 'equipment', 'duty', 'rules'],
  fleet: ['kernel', 'money', 'milp', 'equipment', 'units'],
  pricing: ['kernel', 'money', 'units', 'equipment'],
  stock: ['kernel', 'equipment'],
  packing: ['kernel', 'units', 'equipment'],
  checking: ['kernel', 'units', 'money', 'engineering', 'equipment', 'duty', 'rules'],
  intake: ['kernel', 'units', 'duty'],
  found: ['kernel', 'units', 'duty', 'intake'],
  schedule: ['kernel', 'units', 'intake'],
  // The one pure function that joins the decisions, so that a worker thread can run the whole chain without services.
  planning:
    'kernel units money engineering equipment duty rules kits fleet checking pricing stock packing contracts'.split(
      ' ',
    ),
  // What is worth asking about a line: looks at the whole chain of one line, knows no storage and no words.
  questions: 'kernel units money engineering equipment duty intake rules kits pricing'.split(' '),
  documents: ['kernel', 'units', 'money', 'equipment', 'duty', 'rules', 'wording'],
  alike: [],
  wording: ['kernel', 'money'],
  enquiry: ['kernel'],
};
const corePackages = { milp: ['highs'], intake: ['papaparse', 'read-excel-file'], documents: ['fast-xml-builder'] };
const coreFolders = Object.keys(core);

const table = [
  ...coreFolders.map((name) => ({
    folder: `lib/${name}`,
    may: core[name].map((other) => `lib/${other}`),
    packages: corePackages[name] ?? [],
    node: false,
  })),
  {
    folder: 'lib/contracts',
    may: ['kernel', 'units', 'money', 'equipment', 'duty', 'rules', 'pricing', 'enquiry', 'stock'].map(
      (name) => `lib/${name}`,
    ),
    packages: ['zod'],
    node: false,
  },
  {
    folder: 'lib/pdf',
    may: ['lib/documents', 'lib/kernel'],
    packages: ['pdfkit', 'bwip-js', 'dejavu-fonts-ttf'],
    node: true,
  },
  {
    folder: 'lib/workers',
    may: [...coreFolders, 'contracts', 'pdf'].map((name) => `lib/${name}`),
    packages: [],
    node: true,
  },
  { folder: 'lib/services', may: ['lib/(?!cli|launch)[^/]+', 'db', 'seeds'], packages: 'any', node: true },
  { folder: 'lib/cli', may: ['lib/(?!launch)[^/]+'], packages: [], node: true },
  { folder: 'lib/launch', may: ['lib/services'], packages: [], node: true },
  {
    folder: 'db',
    may: ['kernel', 'units', 'money', 'equipment', 'duty', 'rules', 'stock'].map((name) => `lib/${name}`),
    packages: ['drizzle-orm', 'better-sqlite3'],
    node: true,
  },
  {
    folder: 'seeds',
    may: [...'kernel units money equipment duty rules stock contracts'.split(' ').map((name) => `lib/${name}`), 'db'],
    packages: ['drizzle-orm'],
    node: true,
  },
  {
    folder: 'app',
    /** Services, and the pure words and types that screens show. */
    may: 'services contracts documents schedule kernel units money alike enquiry equipment kits pricing stock wording'
      .split(' ')
      .map((name) => `lib/${name}`),
    packages: ['next', 'react', 'react-dom', '@tanstack/react-virtual', '@fontsource/noto-sans', 'zod'],
    node: true,
  },
  { folder: 'tests', may: ['lib', 'db', 'seeds', 'app'], packages: 'any', node: true },
];

requireRows();

/** Every folder on disk that holds source must have its row. */
function requireRows() {
  const rows = new Set(table.map((row) => row.folder));
  const onDisk = readdirSync('lib', { withFileTypes: true }).filter((entry) => entry.isDirectory());
  const folders = [
    ...onDisk.map((entry) => `lib/${entry.name}`),
    ...['app', 'db', 'seeds', 'tests'].filter(existsSync),
  ];
  const without = folders.filter((folder) => !rows.has(folder));
  if (without.length > 0) throw new Error(`No row in the table of directions for ${without.join(', ')}`);
}

const own = ['app', 'lib', 'db', 'seeds', 'tests'];

function rulesOf({ folder, may, packages, node }) {
  const from = { path: `^${folder}/` };
  const rules = [
    {
      name: `${folder} may import only ${may.join(', ') || 'itself'}`,
      severity: 'error',
      from,
      to: { path: `^(${own.join('|')})/`, pathNot: [folder, ...may].map((target) => `^${target}/`) },
    },
  ];
  if (packages !== 'any') {
    rules.push({
      name: `${folder} may use only the packages ${packages.join(', ') || '(none)'}`,
      severity: 'error',
      from,
      to: {
        path: 'node_modules/',
        ...(packages.length > 0 ? { pathNot: `node_modules/(@types/)?(${packages.join('|')})/` } : {}),
      },
    });
  }
  if (!node) {
    rules.push({ name: `${folder} knows no Node module`, severity: 'error', from, to: { dependencyTypes: ['core'] } });
  }
  return rules;
}

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    ...table.flatMap(rulesOf),
    { name: 'no circles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'nothing but tests imports app',
      severity: 'error',
      from: { pathNot: '^(app|tests)/' },
      to: { path: '^app/' },
    },
    { name: 'tests are not imported', severity: 'error', from: { pathNot: '^tests/' }, to: { path: '^tests/' } },
    {
      name: 'a screen reaches services for types only, when it runs in the browser',
      severity: 'error',
      from: { path: '\\.client\\.tsx$' },
      to: { path: '^lib/(services|contracts)/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'planning takes only types from contracts',
      severity: 'error',
      from: { path: '^lib/planning/' },
      to: { path: '^lib/contracts/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'building blocks know no router',
      severity: 'error',
      from: { path: '^app/_ui/' },
      to: { path: 'node_modules/next/' },
    },
    {
      name: 'only packages that package.json names',
      severity: 'error',
      from: {},
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    },
    {
      name: 'the running house needs no development package',
      severity: 'error',
      from: { path: '^(app|lib|db|seeds)/' },
      to: { dependencyTypes: ['npm-dev'], dependencyTypesNot: ['type-only'], pathNot: 'node_modules/@types/' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json', '.css'],
    },
  },
};
