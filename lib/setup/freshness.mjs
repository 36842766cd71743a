/** Whether what was made from the sources still fits them. */
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'

export const root = resolve(import.meta.dirname, '../..')

/** One hash over names and contents of files and folders; absent ones count as absent. */
export function hashOf(paths, base = root) {
  const hash = createHash('sha256')
  for (const path of paths) {
    for (const file of filesUnder(join(base, path))) {
      hash.update(relative(base, file)).update('\0').update(readFileSync(file)).update('\0')
    }
  }
  return hash.digest('hex')
}

function filesUnder(path) {
  if (!existsSync(path)) return []
  if (!statSync(path).isDirectory()) return [path]
  return readdirSync(path, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort()
}

export function isFresh(stampFile, hash) {
  return existsSync(stampFile) && readFileSync(stampFile, 'utf8') === hash
}

export function markFresh(stampFile, hash) {
  mkdirSync(dirname(stampFile), { recursive: true })
  writeFileSync(stampFile, hash)
}

/**
 * True when node_modules holds just the versions of the lock. npm keeps its own record of
 * what it put there, so an install by hand counts, and one cut short does not.
 */
export function installFits(base = root) {
  const wanted = packagesOf(join(base, 'package-lock.json'))
  const present = packagesOf(join(base, 'node_modules/.package-lock.json'))
  if (!wanted || !present) return false
  if (!existsSync(join(base, 'node_modules/better-sqlite3/build/Release/better_sqlite3.node'))) return false
  return Object.entries(wanted).every(
    ([path, entry]) =>
      path === '' ||
      (present[path] ? present[path].version === entry.version : entry.optional === true || entry.extraneous === true),
  )
}

function packagesOf(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).packages : undefined
}
