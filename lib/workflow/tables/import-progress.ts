/**
 * Imports that are under way in this process: how far each is, and whether it was asked
 * to stop. Kept on globalThis, as the server's bundles may hold this module more than once.
 */
export type Progress = {
  readonly phase: 'reading' | 'writing' | 'taking back'
  readonly done: number
  readonly total: number
  readonly isToStop: boolean
}

const shared = globalThis as typeof globalThis & { benchglowImports?: Map<string, Progress> }

const running = (): Map<string, Progress> => {
  shared.benchglowImports ??= new Map()
  return shared.benchglowImports
}

/** Null: not under way here. */
export const importProgress = (id: string): Progress | null => running().get(id) ?? null

export function noteProgress(id: string, progress: Omit<Progress, 'isToStop'>): void {
  running().set(id, { ...progress, isToStop: running().get(id)?.isToStop ?? false })
}

export const endProgress = (id: string): boolean => running().delete(id)

export function askToStop(id: string): void {
  const progress = running().get(id)
  if (progress) running().set(id, { ...progress, isToStop: true })
}

export const isToStop = (id: string): boolean => running().get(id)?.isToStop ?? false

/** Lets the server answer others before the next piece of the work. */
export const breathe = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))
