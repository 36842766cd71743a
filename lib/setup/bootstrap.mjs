/**
 * Makes a clone ready: packages, database client, build, shop. Each step is skipped when
 * what it would make is already there and fits. Node built-ins only, since it runs before
 * anything is installed. Usage: node lib/setup/bootstrap.mjs [client] [build] [shop]
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { run, runNode, runTypeScript } from './child.mjs'
import { hashOf, installFits, isFresh, markFresh, root } from './freshness.mjs'
import { installTrouble, nodeTrouble, runCommand, Trouble } from './trouble.mjs'
import { inTurn } from './turn.mjs'

const clientStamp = join(root, 'generated/.stamp')
const buildStamp = join(root, '.next/benchglow-stamp')
/** Everything the build reads. lib/setup is not in it: it runs before the build or beside it. */
const buildSources = [
  ...['app', 'public', 'prisma/schema.prisma', 'package-lock.json', 'next.config.ts', 'tsconfig.json'],
  ...['proxy.ts', 'instrumentation.ts'],
  ...readdirSync(join(root, 'lib'))
    .filter((name) => name !== 'setup')
    .map((name) => `lib/${name}`),
]

export async function bootstrap(steps) {
  const { engines } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
  const tooOld = nodeTrouble(process.version, engines.node)
  if (tooOld) throw new Trouble(tooOld)
  await inTurn(async () => {
    await install()
    await generateClient()
    if (steps.includes('shop')) await prepareShop()
    if (steps.includes('build')) await build()
  })
}

async function install() {
  if (installFits()) return
  const locked = existsSync(join(root, 'package-lock.json'))
  console.log('Installing packages (the first time takes a few minutes) …')
  const args = [locked ? 'ci' : 'install', '--include=dev', '--no-audit', '--no-fund']
  const { code, output } = await run('npm', args, { shell: process.platform === 'win32' })
  if (code !== 0) throw new Trouble(installTrouble(output))
}

async function generateClient() {
  const hash = hashOf(['prisma/schema.prisma', 'node_modules/prisma/package.json'])
  if (isFresh(clientStamp, hash)) return
  console.log('Generating the database client …')
  // The generator insists on a native schema engine, which it would download, and then does
  // not run it to generate. Any existing program satisfies it.
  const env = { PRISMA_SCHEMA_ENGINE_BINARY: process.env.PRISMA_SCHEMA_ENGINE_BINARY ?? process.execPath }
  const generator = ['node_modules/prisma/build/index.js', 'generate', '--schema', 'prisma/schema.prisma']
  const { code, output } = await runNode(generator, { env, quiet: true })
  if (code !== 0) throw new Trouble(`The database client could not be generated:\n${output}`)
  markFresh(clientStamp, hash)
}

async function prepareShop() {
  const { code, output } = await runTypeScript('lib/setup/prepare-shop.ts')
  if (code !== 0)
    throw new Trouble(`The shop's data could not be made ready.${output.trim() ? ' The lines above say why.' : ''}`)
}

async function build() {
  const hash = hashOf(buildSources)
  if (isFresh(buildStamp, hash)) return
  console.log('Building (about a minute) …')
  const env = { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' }
  const { code, output } = await runNode(['node_modules/next/dist/bin/next', 'build'], { env, quiet: true })
  if (code !== 0) throw new Trouble(`The build failed:\n${output}`)
  markFresh(buildStamp, hash)
}

if (process.argv[1] === import.meta.filename) await runCommand(() => bootstrap(process.argv.slice(2)))
