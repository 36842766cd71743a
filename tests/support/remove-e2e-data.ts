import { rmSync } from 'node:fs'
import { tmpdir } from 'node:os'

export default function removeData() {
  const folder = process.env.E2E_DATA
  if (folder?.startsWith(tmpdir())) rmSync(folder, { recursive: true, force: true })
}
