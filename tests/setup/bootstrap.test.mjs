import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { hashOf, installFits, isFresh, markFresh } from '@/lib/setup/freshness.mjs'
import { countsOfPlaywright, countsOfVitest, sum } from '@/lib/setup/test-counts.mjs'
import { installTrouble, nodeTrouble } from '@/lib/setup/trouble.mjs'
import { inTurn } from '@/lib/setup/turn.mjs'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'benchglow-setup-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

function write(path, content) {
  mkdirSync(join(folder, path, '..'), { recursive: true })
  writeFileSync(join(folder, path), typeof content === 'string' ? content : JSON.stringify(content))
}

describe('the hash of the sources', () => {
  test('changes with a content, a new file and a new name, and not with the time of a file', () => {
    write('app/page.tsx', 'one')
    const before = hashOf(['app'], folder)
    write('app/page.tsx', 'one')
    expect(hashOf(['app'], folder)).toBe(before)
    write('app/page.tsx', 'two')
    const edited = hashOf(['app'], folder)
    write('app/more.tsx', '')
    const added = hashOf(['app'], folder)
    expect(new Set([before, edited, added]).size).toBe(3)
  })

  test('is what a stamp must hold to be fresh', () => {
    const stamp = join(folder, 'made/.stamp')
    expect(isFresh(stamp, 'a')).toBe(false)
    markFresh(stamp, 'a')
    expect(isFresh(stamp, 'a')).toBe(true)
    expect(isFresh(stamp, 'b')).toBe(false)
  })
})

describe('an install fits', () => {
  const driver = 'node_modules/better-sqlite3/build/Release/better_sqlite3.node'
  const lock = {
    packages: {
      '': {},
      'node_modules/a': { version: '1.0.0' },
      'node_modules/b': { version: '1.0.0', optional: true },
      'node_modules/c': { version: '1.0.0', extraneous: true },
    },
  }

  test('when every package that npm would put there is there in the locked version, and the driver is built', () => {
    write('package-lock.json', lock)
    write('node_modules/.package-lock.json', { packages: { 'node_modules/a': { version: '1.0.0' } } })
    expect(installFits(folder)).toBe(false)
    write(driver, '')
    expect(installFits(folder)).toBe(true)
  })

  test('not when a version differs, a package is missing, or nothing was installed', () => {
    write('package-lock.json', lock)
    write(driver, '')
    expect(installFits(folder)).toBe(false)
    write('node_modules/.package-lock.json', { packages: { 'node_modules/a': { version: '1.0.1' } } })
    expect(installFits(folder)).toBe(false)
    write('node_modules/.package-lock.json', { packages: {} })
    expect(installFits(folder)).toBe(false)
  })
})

describe('what is missing is said', () => {
  test.each([
    ['npm error code ENOTFOUND\nnpm error network request to failed', 'the package registry does not answer'],
    ['npm error gyp ERR! find Python', 'Python 3, make and a C++ compiler'],
    ['prebuild-install warn ECONNREFUSED\nnpm error gyp ERR! not found: make', 'Python 3, make and a C++ compiler'],
    ['npm error gyp ERR! stack FetchError: request to the headers failed, ECONNREFUSED', 'npm_config_nodedir'],
    ['npm error gyp ERR! stack Error: not found: make', 'apt-get install -y python3 make g++'],
    ['npm error code ENOSPC', 'The disk is full'],
    ['npm error code EACCES', 'cannot be written to'],
    ['something else', 'the lines above say why'],
  ])('%s', (output, sentence) => {
    expect(installTrouble(output)).toContain(sentence)
  })

  test('Node 20.18 is too old for 20.19, and 20.19, 20.20 and 22.0 are not', () => {
    expect(nodeTrouble('v20.18.3', '>=20.19')).toBe('Node v20.18.3 is too old: Benchglow needs 20.19 or newer.')
    for (const version of ['v20.19.0', 'v20.20.2', 'v22.0.0']) expect(nodeTrouble(version, '>=20.19')).toBeNull()
  })
})

describe('one bootstrap at a time', () => {
  test('the second begins when the first has ended, also when it failed', async () => {
    const file = join(folder, 'turn')
    const said = []
    const slow = inTurn(async () => {
      said.push('first begins')
      await new Promise((resolve) => setTimeout(resolve, 100))
      said.push('first ends')
      throw new Error('failed')
    }, file)
    const next = inTurn(async () => said.push('second begins'), `${file}`)
    await expect(slow).rejects.toThrow('failed')
    await next
    expect(said).toEqual(['first begins', 'first ends', 'second begins'])
  })

  test('a turn left by a process that is gone is taken over', async () => {
    const file = join(folder, 'turn')
    writeFileSync(file, '999999999')
    expect(await inTurn(async () => 'ran', file)).toBe('ran')
  })
})

describe('the last line of the tests', () => {
  test('adds up the runs', () => {
    const runs = [
      countsOfVitest({ numPassedTests: 10, numFailedTests: 0 }, 0),
      countsOfPlaywright({ stats: { expected: 3, flaky: 1, unexpected: 2, skipped: 1 } }, 1),
    ]
    expect(sum(runs)).toEqual({ passed: 14, failed: 2 })
  })

  test('a red run without a failed test counts as one failed, and so does an empty one', () => {
    expect(countsOfVitest({ numPassedTests: 10, numFailedTests: 0 }, 1)).toEqual({ passed: 10, failed: 1 })
    expect(countsOfVitest({ numPassedTests: 0, numFailedTests: 0 }, 0)).toEqual({ passed: 0, failed: 1 })
  })
})
