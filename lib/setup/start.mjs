/**
 * `npm start`: makes the clone ready, serves the shop and says where it is.
 *   PORT            3000 unless set
 *   HOST            localhost only unless set; 0.0.0.0 lets the tablets of the shop in
 *   BENCHGLOW_DATA  where the records lie; ./data unless set
 *   BENCHGLOW_EMPTY 1 begins with an empty shop instead of the demo
 * `--dev` serves from the sources and follows their changes, without a build.
 */
import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join, resolve } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { bootstrap } from './bootstrap.mjs'
import { root } from './freshness.mjs'
import { runCommand, Trouble } from './trouble.mjs'

const readySeconds = 60
/** How long an open page may hold the server up when it is told to stop. */
const stopSeconds = 8
const mode = process.argv.includes('--dev') ? 'dev' : 'start'

async function start() {
  const port = portFrom(process.env.PORT)
  const host = process.env.HOST || '127.0.0.1'
  const data = resolve(process.env.BENCHGLOW_DATA || join(root, 'data'))
  process.env.BENCHGLOW_DATA = data
  await refuseTakenPort(port, host)
  await bootstrap(mode === 'dev' ? ['shop'] : ['shop', 'build'])
  const { child, ended } = serve(port, host)
  const reachable = `http://${host === '127.0.0.1' || host === '0.0.0.0' ? 'localhost' : host}:${port}`
  const health = `http://${host === '0.0.0.0' ? '127.0.0.1' : host}:${port}/api/health`
  if (await answers(health, child)) console.log(greeting(reachable, data))
  else if (child.exitCode === null && child.signalCode === null) {
    child.kill('SIGTERM')
    throw new Trouble(`The shop did not answer within ${readySeconds} seconds; the lines above say why.`)
  }
  return ended
}

function portFrom(text) {
  const port = text ? Number(text) : 3000
  if (Number.isInteger(port) && port > 0 && port < 65_536) return port
  throw new Trouble(`PORT is "${text}": it must be a whole number from 1 to 65535.`)
}

/** Asked first, so that nobody waits for a build to learn it. */
function refuseTakenPort(port, host) {
  return new Promise((settle, fail) => {
    const probe = createServer()
    probe.once('error', (error) => fail(new Trouble(portTrouble(error, port, host))))
    probe.listen(port, host, () => probe.close(settle))
  })
}

function portTrouble(error, port, host) {
  if (error.code === 'EADDRINUSE')
    return `Port ${port} is taken by another program. Choose another: PORT=${port + 1} npm start`
  if (error.code === 'EACCES')
    return `Port ${port} needs more rights than this user has. Choose one above 1023: PORT=3000 npm start`
  return `Cannot listen on ${host}:${port} (${error.code ?? error.message}).`
}

/** `ended` settles with the exit code: 0 when the server was asked to stop. */
function serve(port, host) {
  const next = join(root, 'node_modules/next/dist/bin/next')
  const child = spawn(process.execPath, [next, mode, '--port', String(port), '--hostname', host], {
    cwd: root,
    env: { ...process.env, NODE_ENV: mode === 'dev' ? 'development' : 'production', NEXT_TELEMETRY_DISABLED: '1' },
    stdio: ['ignore', mode === 'dev' ? 'inherit' : 'ignore', 'inherit'],
  })
  let asked = false
  const stop = () => {
    asked = true
    child.kill('SIGTERM')
    setTimeout(() => child.kill('SIGKILL'), stopSeconds * 1000).unref()
  }
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, stop)
  const ended = new Promise((settle) => {
    child.on('exit', (code) => settle(asked ? 0 : (code ?? 1)))
  })
  return { child, ended }
}

async function answers(url, child) {
  const deadline = Date.now() + readySeconds * 1000
  while (Date.now() < deadline && child.exitCode === null && child.signalCode === null) {
    const response = await fetch(url).catch(() => null)
    if (response?.ok) return true
    await sleep(100)
  }
  return false
}

function greeting(address, data) {
  const signIn = join(data, 'demo-sign-in.txt')
  const lines = [`Benchglow is open at ${address}`, `Records lie in ${data}`]
  if (existsSync(signIn)) lines.push('', readFileSync(signIn, 'utf8').trim())
  return ['', ...lines, '', 'Ctrl-C closes it.', ''].join('\n')
}

await runCommand(start)
