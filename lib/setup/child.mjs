import { spawn } from 'node:child_process'
import { root } from './freshness.mjs'

const rememberedCharacters = 20_000

/**
 * Runs a program to its end. Answers its exit code and the last of what it printed.
 * `quiet` keeps the output back, for the caller to show when it failed.
 */
export function run(command, args, { env = {}, quiet = false, shell = false } = {}) {
  return new Promise((settle, fail) => {
    const child = spawn(command, args, {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
      shell,
    })
    let output = ''
    const keep = (stream) => (chunk) => {
      output = (output + chunk).slice(-rememberedCharacters)
      if (!quiet) stream.write(chunk)
    }
    child.stdout.on('data', keep(process.stdout))
    child.stderr.on('data', keep(process.stderr))
    child.on('error', fail)
    child.on('close', (code) => settle({ code: code ?? 1, output }))
  })
}

/** Node with the arguments given; TypeScript files run as they are. */
export function runNode(args, options) {
  return run(process.execPath, args, options)
}

export function runTypeScript(file, args = [], options = {}) {
  // `react-server` is the condition under which `server-only` lets itself be imported.
  return runNode(['--conditions=react-server', '--import', 'tsx', file, ...args], options)
}
