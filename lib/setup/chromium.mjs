import { existsSync } from 'node:fs'
import { run } from './child.mjs'
import { Trouble } from './trouble.mjs'

const installCommand = 'apt-get install -y --no-install-recommends -o DPkg::Lock::Timeout=120 chromium'

/** The browser of the system, or the one named by CHROMIUM_PATH; null when there is none. */
export function chromiumPath() {
  const candidates = [process.env.CHROMIUM_PATH, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/snap/bin/chromium']
  return candidates.find((path) => path && existsSync(path)) ?? null
}

/** Installs it where this user may; otherwise says what to do. */
export async function ensureChromium() {
  const present = chromiumPath()
  if (present) return present
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('Installing Chromium for the browser tests …')
    const { code, output } = await run('sh', ['-c', `apt-get update && ${installCommand}`], { quiet: true })
    if (code !== 0) console.log(output)
  }
  const installed = chromiumPath()
  if (installed) return installed
  throw new Trouble(
    `The browser tests need Chromium. Install it with: sudo ${installCommand}\nor name one that is already there: CHROMIUM_PATH=/path/to/chromium npm test`,
  )
}
