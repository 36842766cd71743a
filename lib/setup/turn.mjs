/** One bootstrap at a time in this folder: two at once would install and build over each other. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { root } from './freshness.mjs'
import { Trouble } from './trouble.mjs'

const waitMinutes = 20

export async function inTurn(work, file = join(root, '.bootstrap/turn')) {
  mkdirSync(join(file, '..'), { recursive: true })
  await takeTurn(file)
  try {
    return await work()
  } finally {
    rmSync(file, { force: true })
  }
}

async function takeTurn(file) {
  const deadline = Date.now() + waitMinutes * 60_000
  let told = false
  while (!tryTurn(file)) {
    if (Date.now() > deadline)
      throw new Trouble(`Another start has been preparing this folder for ${waitMinutes} minutes (${file}).`)
    if (!told) console.log('Waiting for another start that is preparing this folder …')
    told = true
    await sleep(250)
  }
}

function tryTurn(file) {
  try {
    writeFileSync(file, String(process.pid), { flag: 'wx' })
    return true
  } catch (error) {
    if (error.code !== 'EEXIST') throw error
    if (holderIsGone(file)) rmSync(file, { force: true })
    return false
  }
}

function holderIsGone(file) {
  try {
    const holder = Number(readFileSync(file, 'utf8'))
    if (holder === process.pid) return true
    // An empty file is one that is being written at this moment.
    if (holder > 0) process.kill(holder, 0)
    return false
  } catch (error) {
    return error.code === 'ESRCH'
  }
}
