/**
 * Who may import whom. The table stands in DEVELOPERS.md; each rule is shown to fire in
 * tests/setup/import-rules.test.ts. Paths are resolved ones, so `@/` and `../` are the same.
 */
const { readdirSync, readFileSync, existsSync } = require('node:fs')
const { join } = require('node:path')

const folders = (...names) => names.map((name) => `^lib/${name}/`)
const packages = (...names) => names.map((name) => `^node_modules/${name}/`)
const exactly = (file) => `^${file.replaceAll(/[.[\]()]/g, '\\$&')}$`
/** Node's own modules carry no path; a rule on paths must let them through by name. */
const nodeModules =
  '^(node:)?(fs|path|url|module|crypto|stream|buffer|util|os|async_hooks|zlib|worker_threads|perf_hooks|timers|v8)(/promises)?$'

const database = [...packages('@prisma/[^/]+', 'prisma', 'better-sqlite3'), '^generated/']
/** Packages that only run in a test, and the runner itself. */
const development = packages(
  'vitest',
  '@playwright/test',
  'fast-check',
  'smtp-server',
  'mailparser',
  'pdfjs-dist',
  'eecircuit-engine',
  'edmonds-blossom',
  'ml-levenberg-marquardt',
)

const only = (name, from, allowed, comment) => ({
  name,
  severity: 'error',
  comment,
  from: { path: from },
  to: { pathNot: [from, ...allowed] },
})

const never = (name, from, to, comment) => ({ name, severity: 'error', comment, from, to })

/** Files whose first statement is 'use client': they are sent to the browser. */
function clientFiles(folder) {
  if (!existsSync(folder)) return []
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .filter((file) => /^(\s|\/\/.*\n|\/\*[\s\S]*?\*\/)*['"]use client['"]/.test(readFileSync(file, 'utf8')))
    .map((file) => exactly(file.replaceAll('\\', '/')))
}

const client = clientFiles('app')

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    never('no-cycle', {}, { circular: true }, 'Two files that need each other are one file, or need a third.'),
    never(
      'resolvable',
      { pathNot: '^next-env\\.d\\.ts$' },
      {
        couldNotResolve: true,
        pathNot: '^(next|vitest|react|react-dom|better-sqlite3|@prisma|@swc|dependency-cruiser)(/|$)',
      },
      'An import that leads nowhere.',
    ),
    only('domain', '^lib/domain/', [], 'The domain is pure: it imports itself only.'),
    only(
      'documents',
      '^lib/documents/',
      [...folders('domain'), ...packages('pdfkit', '@types/pdfkit', 'uqr', 'dejavu-fonts-ttf'), nodeModules],
      'Documents draw what the domain says.',
    ),
    only(
      'store',
      '^lib/store/',
      [...folders('domain'), ...database, ...packages('@types/better-sqlite3'), nodeModules],
      'The store turns rows into domain values.',
    ),
    only(
      'mail',
      '^lib/mail/',
      [...folders('domain'), ...packages('nodemailer', '@types/nodemailer'), nodeModules],
      'Mail carries what it is given.',
    ),
    only(
      'workflow',
      '^lib/workflow/',
      [...folders('domain', 'store', 'documents', 'mail', 'planning', 'exchange'), nodeModules],
      'A step loads, decides, saves and sends.',
    ),
    only(
      'planning',
      '^lib/planning/',
      [...folders('domain'), ...packages('highs', 'tsx'), nodeModules],
      'Planning over the whole stock asks the domain and an integer solver, off the request.',
    ),
    only(
      'exchange',
      '^lib/exchange/',
      [...folders('domain'), ...packages('papaparse', '@types/papaparse'), nodeModules],
      'Tables of other programs are read and written as plain text.',
    ),
    only(
      'fit',
      '^lib/fit/',
      [...folders('domain'), ...packages('ml-levenberg-marquardt'), nodeModules],
      'The fit reads handbook rows and writes parameters.',
    ),
    never(
      'fit-is-a-tool',
      { path: '^(app|seed|lib)/', pathNot: '^lib/fit/' },
      { path: '^lib/fit/' },
      'Curves are fitted by hand, beside the program.',
    ),
    only(
      'calc',
      '^lib/calc/',
      [...folders('domain', 'planning'), ...packages('zod'), nodeModules],
      'A calculator reads, asks the domain and prints.',
    ),
    never(
      'calc-is-a-tool',
      { path: '^(app|seed|lib)/', pathNot: '^lib/calc/' },
      { path: '^lib/calc/' },
      'Calculators are run by hand, beside the program.',
    ),
    only(
      'session',
      '^lib/session\\.ts$',
      [...folders('domain', 'store', 'workflow'), ...packages('next', 'react', 'server-only'), nodeModules],
      'The session knows who is asking.',
    ),
    never(
      'app',
      { path: '^app/' },
      { path: ['^lib/(mail|setup)/', '^(seed|tests|prisma)/', ...packages('nodemailer', 'pdfkit'), ...development] },
      'Screens write through the workflow and read through the store.',
    ),
    never(
      'seed',
      { path: '^seed/' },
      { path: ['^lib/(mail|setup|documents)/', '^(app|tests)/', '^lib/session\\.ts$'] },
      'The demo shop is made by the same steps as a real one.',
    ),
    never(
      'database-only-in-store',
      { path: '^(app|seed|lib)/', pathNot: ['^lib/store/', '^lib/setup/'] },
      { path: database },
      'Only the store knows the database.',
    ),
    never(
      'client-not-in-setup',
      { path: '^lib/setup/' },
      { path: '^generated/' },
      'Setup opens the database through the store.',
    ),
    never('lib-below-app', { path: '^lib/' }, { path: '^(app|seed|tests)/' }, 'Nothing in lib knows the screens.'),
    never(
      'setup-is-a-tool',
      { path: '^(app|seed|lib)/', pathNot: '^lib/setup/' },
      { path: '^lib/setup/' },
      'Setup runs before or beside the program.',
    ),
    ...(client.length === 0
      ? []
      : [
          never(
            'client-takes-types',
            { path: client },
            {
              path: ['^lib/(store|workflow|mail|setup)/', '^lib/session\\.ts$', '^generated/', ...database],
              dependencyTypesNot: ['type-only'],
            },
            'A component for the browser takes only types from the server side.',
          ),
        ]),
  ],
  options: {
    parser: 'swc',
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: ['^node_modules/', '^generated/'] },
    exclude: { path: ['^\\.next/'] },
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json', '.css'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
}
