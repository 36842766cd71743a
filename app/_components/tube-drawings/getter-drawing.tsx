/** Getter holders from the side and slightly above, and where the mirror can be. */
import { Drawing } from './drawing'
import styles from './tube-drawings.module.css'

const HOLDERS: Readonly<Record<string, string>> = {
  cup: 'M 36 66 V 40 M 20 40 C 20 28 52 28 52 40 Z',
  square: 'M 36 66 V 46 M 18 46 H 54 V 22 H 18 Z',
  d: 'M 36 66 V 48 M 16 48 H 56 M 16 48 A 20 24 0 0 1 56 48',
  ring: 'M 36 66 V 46 M 10 34 A 26 12 0 1 0 62 34 A 26 12 0 1 0 10 34 Z',
  disc: 'M 36 66 V 44 M 24 38 A 12 6 0 1 0 48 38 A 12 6 0 1 0 24 38 Z M 31 38 A 5 2 0 1 0 41 38 A 5 2 0 1 0 31 38 Z',
}

export function GetterHolderDrawing({ choice, title }: { choice: string; title?: string }) {
  const path = HOLDERS[choice]
  if (!path) return null
  return (
    <Drawing viewBox="0 0 72 72" title={title}>
      <path d={path} />
    </Drawing>
  )
}

const BULB = 'M 20 66 V 22 A 16 16 0 0 1 52 22 V 66 Z'
const MIRRORS: Readonly<Record<string, readonly string[]>> = {
  top: ['M 20 26 V 22 A 16 16 0 0 1 52 22 V 26 Z'],
  side: ['M 20 32 H 29 V 54 H 20 Z'],
  bottom: ['M 20 52 H 52 V 66 H 20 Z'],
  two: ['M 20 26 V 22 A 16 16 0 0 1 52 22 V 26 Z', 'M 20 54 H 52 V 66 H 20 Z'],
  unseen: [],
}

export function GetterPlaceDrawing({ choice, title }: { choice: string; title?: string }) {
  const mirrors = MIRRORS[choice]
  if (!mirrors) return null
  return (
    <Drawing viewBox="0 0 72 72" title={title}>
      {mirrors.map((path) => (
        <path key={path} className={styles.shade} d={path} />
      ))}
      <path d={BULB} />
    </Drawing>
  )
}
