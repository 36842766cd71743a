/** Something the person at the keyboard can put right: printed as a sentence, without a stack. */
export class Trouble extends Error {}

/** Runs the work of a command line and turns its end into an exit code. */
export async function runCommand(work) {
  try {
    process.exitCode = (await work()) ?? 0
  } catch (error) {
    console.error(error instanceof Trouble ? `\n${error.message}\n` : error)
    process.exitCode = 1
  }
}

const unreachable = /ENOTFOUND|ECONNREFUSED|ECONNRESET|ETIMEDOUT|EAI_AGAIN|ENETUNREACH/

/** Why `npm ci` failed, read from the end of what it printed. */
export function installTrouble(output) {
  // First, because a driver that must be compiled has usually failed to be downloaded before.
  if (/gyp ERR!/.test(output)) return compileTrouble(output)
  if (unreachable.test(output)) {
    return 'The packages could not be fetched: the package registry does not answer. Check the network (and any proxy), then run the command again.'
  }
  if (/ENOSPC/.test(output))
    return 'The disk is full: the packages need about 1 GB. Make room, then run the command again.'
  if (/EACCES|EPERM/.test(output))
    return 'The folder of the program cannot be written to. Check who owns it, then run the command again.'
  return 'The packages could not be installed; the lines above say why.'
}

function compileTrouble(output) {
  const begin = 'The database driver has no ready-made binary for this machine and could not be compiled. '
  if (/gyp ERR!.*(FetchError|headers)/.test(output)) {
    return `${begin}The headers of Node could not be fetched. If they are installed, name their folder: npm_config_nodedir=/usr npm start`
  }
  return `${begin}It needs Python 3, make and a C++ compiler; on Debian or Ubuntu: apt-get install -y python3 make g++. Then run the command again.`
}

/** Null when this Node is new enough. `wanted` is the lowest version, as package.json states it: ">=20.19". */
export function nodeTrouble(version, wanted) {
  const numbers = (text) => text.replace(/^\D+/, '').split('.').map(Number)
  const [major = 0, minor = 0] = numbers(version)
  const [lowestMajor = 0, lowestMinor = 0] = numbers(wanted)
  if (major > lowestMajor || (major === lowestMajor && minor >= lowestMinor)) return null
  return `Node ${version} is too old: Benchglow needs ${lowestMajor}.${lowestMinor} or newer.`
}
